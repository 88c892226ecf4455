package org.mottle.export.crs;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The transverse Mercator grids that need no data set: UTM and its likes on the datums of {@link
 * GeoDatum}. Codes and areas of use follow the EPSG data set: plain zones of six degrees, without
 * the exceptions that military grids make round Norway and Svalbard.
 */
enum Zones {
  WGS_84_NORTH(GeoDatum.WGS_84, 32600, 1, 60, true, "WGS 84 / UTM zone %dN"),
  WGS_84_SOUTH(GeoDatum.WGS_84, 32700, 1, 60, false, "WGS 84 / UTM zone %dS"),
  ETRS89(GeoDatum.ETRS89, 25800, 28, 38, true, "ETRS89 / UTM zone %dN"),
  NAD83(GeoDatum.NAD83, 26900, 1, 23, true, "NAD83 / UTM zone %dN"),
  GDA94(GeoDatum.GDA94, 28300, 48, 58, false, "GDA94 / MGA zone %d"),
  GDA2020(GeoDatum.GDA2020, 7800, 46, 59, false, "GDA2020 / MGA zone %d"),
  NEW_ZEALAND(
      GeoDatum.NZGD2000, 2193, 0, 0, false, "NZGD2000 / New Zealand Transverse Mercator 2000") {
    @Override
    Grid grid(int zone) {
      AreaOfUse area = new AreaOfUse(166.37, -47.33, 178.63, -34.1);
      return new Grid(datum, 2193, name, area, 173, 1_600_000, 10_000_000);
    }
  };

  /** One grid: latitude of origin 0 and scale factor 0.9996 in all of them. */
  record Grid(
      GeoDatum datum, int epsg, String name, AreaOfUse area, double lon0, double fe, double fn) {
    static final double SCALE = 0.9996;

    TransverseMercator projection() {
      return new TransverseMercator(datum.ellipsoid, 0, lon0, SCALE, fe, fn);
    }

    String wkt() {
      return "PROJCS[\"%s\",%s,PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",%s],"
              .formatted(name, datum.geogcs(), Crs.plainNumber(lon0))
          + "PARAMETER[\"scale_factor\",0.9996],PARAMETER[\"false_easting\",%s],PARAMETER[\"false_northing\",%s],"
              .formatted(Crs.plainNumber(fe), Crs.plainNumber(fn))
          + "UNIT[\"metre\",1,AUTHORITY[\"EPSG\",\"9001\"]],AXIS[\"Easting\",EAST],AXIS[\"Northing\",NORTH],AUTHORITY[\"EPSG\",\"%d\"]]"
              .formatted(epsg);
    }
  }

  final GeoDatum datum;
  final int base;
  final int first;
  final int last;
  final boolean north;
  final String name;

  Zones(GeoDatum datum, int base, int first, int last, boolean north, String name) {
    this.datum = datum;
    this.base = base;
    this.first = first;
    this.last = last;
    this.north = north;
    this.name = name;
  }

  Grid grid(int zone) {
    double lon0 = 6.0 * zone - 183;
    AreaOfUse area = new AreaOfUse(lon0 - 3, north ? 0 : -80, lon0 + 3, north ? 84 : 0);
    return new Grid(
        datum, base + zone, name.formatted(zone), area, lon0, 500_000, north ? 0 : 10_000_000);
  }

  static Optional<Grid> ofEpsg(int epsg) {
    for (Zones z : values()) {
      int zone = epsg - z.base;
      if (zone >= z.first && zone <= z.last) {
        return Optional.of(z.grid(zone));
      }
    }
    return Optional.empty();
  }

  static List<Grid> all() {
    List<Grid> grids = new ArrayList<>();
    for (Zones z : values()) {
      for (int zone = z.first; zone <= z.last; zone++) {
        grids.add(z.grid(zone));
      }
    }
    return grids;
  }
}
