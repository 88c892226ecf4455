package org.mottle.export.crs;

import java.util.Arrays;
import java.util.Optional;

/**
 * The datums whose latitudes and longitudes EPSG carries over to WGS 84 unchanged, with what that
 * costs in accuracy. Names, codes and accuracies are those of the EPSG data set (transformations
 * 1149, 1188, 1150, 8450, 1565); the other spelling is the one found in {@code .prj} files.
 */
enum GeoDatum {
  WGS_84("WGS 84", 4326, "WGS_1984", 6326, "WGS_1984", Ellipsoid.WGS_84, 0, AreaOfUse.WORLD),
  ETRS89(
      "ETRS89",
      4258,
      "European_Terrestrial_Reference_System_1989",
      6258,
      "ETRS_1989",
      Ellipsoid.GRS_1980,
      1,
      new AreaOfUse(-16.1, 32.88, 40.18, 84.73)),
  NAD83(
      "NAD83",
      4269,
      "North_American_Datum_1983",
      6269,
      "North_American_1983",
      Ellipsoid.GRS_1980,
      4,
      new AreaOfUse(167.65, 14.92, -40.73, 86.45)),
  GDA94(
      "GDA94",
      4283,
      "Geocentric_Datum_of_Australia_1994",
      6283,
      "GDA_1994",
      Ellipsoid.GRS_1980,
      3,
      new AreaOfUse(93.41, -60.55, 173.34, -8.47)),
  GDA2020(
      "GDA2020",
      7844,
      "Geocentric_Datum_of_Australia_2020",
      1168,
      "GDA2020",
      Ellipsoid.GRS_1980,
      3,
      new AreaOfUse(93.41, -60.55, 173.34, -8.47)),
  NZGD2000(
      "NZGD2000",
      4167,
      "New_Zealand_Geodetic_Datum_2000",
      6167,
      "NZGD_2000",
      Ellipsoid.GRS_1980,
      1,
      new AreaOfUse(160.6, -55.95, -171.2, -25.88));

  final String crsName;
  final int crsEpsg;
  final String datumName;
  final int datumEpsg;
  final String prjName;
  final Ellipsoid ellipsoid;

  /** Standard error of equating it with WGS 84, m. */
  final double accuracyM;

  final AreaOfUse area;

  GeoDatum(
      String crsName,
      int crsEpsg,
      String datumName,
      int datumEpsg,
      String prjName,
      Ellipsoid ellipsoid,
      double accuracyM,
      AreaOfUse area) {
    this.crsName = crsName;
    this.crsEpsg = crsEpsg;
    this.datumName = datumName;
    this.datumEpsg = datumEpsg;
    this.prjName = prjName;
    this.ellipsoid = ellipsoid;
    this.accuracyM = accuracyM;
    this.area = area;
  }

  static Optional<GeoDatum> ofCrs(int epsg) {
    return Arrays.stream(values()).filter(d -> d.crsEpsg == epsg).findFirst();
  }

  /** Whether a description means this datum: by either spelling of its name and its ellipsoid. */
  boolean isNamed(String name, double semiMajorM, double inverseFlattening) {
    String plain = WktNode.plain(name);
    boolean named =
        plain.equals(WktNode.plain(datumName))
            || plain.equals(WktNode.plain(crsName))
            || plain.equals(WktNode.plain(prjName))
            || (this == WGS_84 && plain.equals("worldgeodeticsystem1984"));
    return named
        && Math.abs(semiMajorM - ellipsoid.semiMajorM()) < 1e-3
        && Math.abs(inverseFlattening - ellipsoid.inverseFlattening()) < 5e-7;
  }

  String geogcs() {
    return "GEOGCS[\"%s\",DATUM[\"%s\",SPHEROID[\"%s\",%s,%s,AUTHORITY[\"EPSG\",\"%d\"]],AUTHORITY[\"EPSG\",\"%d\"]],"
            .formatted(
                crsName,
                datumName,
                ellipsoid.name(),
                Crs.plainNumber(ellipsoid.semiMajorM()),
                Crs.plainNumber(ellipsoid.inverseFlattening()),
                ellipsoid.epsg(),
                datumEpsg)
        + "PRIMEM[\"Greenwich\",0,AUTHORITY[\"EPSG\",\"8901\"]],UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],"
        // without axes: the notation's default is longitude first, the authority's is not
        + "AUTHORITY[\"EPSG\",\"%d\"]]".formatted(crsEpsg);
  }
}
