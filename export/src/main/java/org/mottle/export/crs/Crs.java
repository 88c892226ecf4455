package org.mottle.export.crs;

import java.util.Objects;
import java.util.function.Supplier;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.mottle.export.problem.InputRefused;

/**
 * A reference system with an EPSG code, x east and y north. Two are equal when their codes are.
 * Immutable and safe to share; the GeoTools object behind it is made when first asked for, which
 * takes up to half a second for the zones known here and two for the rest.
 */
public final class Crs {
  private static final Crs WGS_84 = of(GeoDatum.WGS_84);

  /** What is known of a system, by whichever way. */
  record Facts(
      int epsg, String name, boolean projected, double metresPerUnit, AreaOfUse area, String wkt) {}

  private final Facts facts;
  private final GeoDatum datum;
  private final TransverseMercator projection;
  private final Supplier<CoordinateReferenceSystem> geotools;

  private Crs(
      Facts facts,
      GeoDatum datum,
      TransverseMercator projection,
      Supplier<CoordinateReferenceSystem> geotools) {
    this.facts = facts;
    this.datum = datum;
    this.projection = projection;
    this.geotools = geotools;
  }

  /** Longitude, latitude of WGS 84 in degrees: EPSG:4326 with x east. */
  public static Crs wgs84() {
    return WGS_84;
  }

  /** WGS 84 / UTM. */
  public static Crs utm(int zone, boolean north) {
    if (zone < 1 || zone > 60) {
      throw new IllegalArgumentException("a UTM zone is from 1 to 60, was " + zone);
    }
    return of((north ? Zones.WGS_84_NORTH : Zones.WGS_84_SOUTH).grid(zone));
  }

  /**
   * The WGS 84 / UTM zone a place lies in: plain zones of six degrees, as EPSG's areas of use are;
   * the equator belongs to the north.
   */
  public static Crs utmFor(double lon, double lat) {
    if (!(lon >= -180 && lon <= 180) || !(lat >= -80 && lat <= 84)) {
      throw new InputRefused(
          "no UTM zone for longitude %s, latitude %s; UTM covers 80S to 84N: name a projected CRS with --working-crs"
              .formatted(lon, lat));
    }
    int zone = lon == 180 ? 1 : (int) Math.floor((lon + 180) / 6) + 1;
    return utm(zone, lat >= 0);
  }

  /**
   * From what people and files write: an EPSG code ("EPSG:32630", "32630"), a URN or OGC address,
   * "OGC:CRS84", "WGS84", or a well-known text, whose parameters are matched to an EPSG code.
   *
   * @throws InputRefused with one line that says what was not understood and what to write
   */
  public static Crs parse(String text) {
    return CrsText.parse(text);
  }

  /** By EPSG code; the EPSG data set is opened only when the code is not one known here. */
  public static Crs ofEpsg(int epsg) {
    return Zones.ofEpsg(epsg)
        .map(Crs::of)
        .or(() -> GeoDatum.ofCrs(epsg).map(Crs::of))
        .orElseGet(() -> EpsgDatabase.crs(epsg));
  }

  static Crs of(Zones.Grid grid) {
    Facts facts = new Facts(grid.epsg(), grid.name(), true, 1, grid.area(), grid.wkt());
    return new Crs(facts, grid.datum(), grid.projection(), new Parsed(grid.wkt()));
  }

  static Crs of(GeoDatum datum) {
    String wkt = datum.geogcs();
    Facts facts = new Facts(datum.crsEpsg, datum.crsName, false, Double.NaN, datum.area, wkt);
    return new Crs(facts, datum, null, new Parsed(wkt));
  }

  static Crs of(Facts facts, CoordinateReferenceSystem geotools) {
    return new Crs(facts, null, null, () -> geotools);
  }

  public int epsg() {
    return facts.epsg();
  }

  /** "EPSG:32630". */
  public String code() {
    return "EPSG:" + facts.epsg();
  }

  /** "WGS 84 / UTM zone 30N". */
  public String name() {
    return facts.name();
  }

  public boolean isProjected() {
    return facts.projected();
  }

  /** Metres a unit of the coordinates stands for; NaN where they are degrees. */
  public double metresPerUnit() {
    return facts.metresPerUnit();
  }

  public AreaOfUse areaOfUse() {
    return facts.area();
  }

  /** OGC well-known text, first generation, with EPSG authorities: for GeoPackage and GeoTIFF. */
  public String wkt() {
    return facts.wkt();
  }

  /** The spelling that belongs into a {@code .prj} beside a shapefile. */
  public String prj() {
    return PrjText.of(WktNode.parse(facts.wkt()));
  }

  public CoordinateReferenceSystem geotools() {
    return geotools.get();
  }

  /**
   * This system, if maps may be computed in it.
   *
   * @throws InputRefused for degrees, for units other than the metre, and for world Mercator maps,
   *     whose lengths grow with latitude
   */
  public Crs requireWorking() {
    String remedy = "name a projected CRS in metres with --working-crs, such as the UTM zone";
    if (!isProjected()) {
      throw new InputRefused(
          "the working CRS %s (%s) is in degrees; %s".formatted(code(), name(), remedy));
    }
    if (Math.abs(metresPerUnit() - 1) > 1e-9) {
      throw new InputRefused(
          "the working CRS %s (%s) is in units of %s m; %s"
              .formatted(code(), name(), plainNumber(metresPerUnit()), remedy));
    }
    String method =
        WktNode.parse(wkt()).find("PROJECTION").map(WktNode::name).orElse("").replace('_', ' ');
    if (method.matches("(?i)mercator.*|popular visualisation.*|.*pseudo.?mercator.*")) {
      throw new InputRefused(
          "the working CRS %s (%s) stretches lengths with latitude; %s"
              .formatted(code(), name(), remedy));
    }
    return this;
  }

  /** The datum, where it is one that goes over to WGS 84 unchanged; null otherwise. */
  GeoDatum datum() {
    return datum;
  }

  /** The projection, where it is one computed here; null otherwise. */
  TransverseMercator projection() {
    return projection;
  }

  /** Digits without exponent and without a needless ".0". */
  static String plainNumber(double value) {
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? Long.toString((long) value)
        : Double.toString(value);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Crs crs && crs.epsg() == epsg();
  }

  @Override
  public int hashCode() {
    return Objects.hash(epsg());
  }

  @Override
  public String toString() {
    return code() + " (" + name() + ")";
  }

  /**
   * Parsed when first asked for. A class rather than a lambda: linking a lambda of this type would
   * load the library.
   */
  private static final class Parsed implements Supplier<CoordinateReferenceSystem> {
    private final String wkt;
    private CoordinateReferenceSystem value;

    Parsed(String wkt) {
      this.wkt = wkt;
    }

    @Override
    public synchronized CoordinateReferenceSystem get() {
      if (value == null) {
        value = EpsgDatabase.parse(wkt);
      }
      return value;
    }
  }
}
