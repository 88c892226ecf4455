package org.mottle.export.crs;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * What a well-known text says of a reference system, in one vocabulary: whichever generation of the
 * notation and whichever spelling it came in. A {@code .prj} carries no code; this is what it is
 * matched by.
 *
 * @param name of the system
 * @param method EPSG codes of the projection methods it may mean, joined by commas; empty for
 *     geographic systems and for methods not known here
 * @param parameters name to degrees or metres or a factor; parameters left out have their defaults
 * @param datum name of the datum
 * @param semiMajorM equatorial radius, m
 * @param inverseFlattening 1/f, 0 for a sphere
 * @param primeMeridian degrees east of Greenwich
 * @param metresPerUnit of the projected coordinates; NaN for geographic systems
 */
record CrsDescription(
    String name,
    String method,
    Map<String, Double> parameters,
    String datum,
    double semiMajorM,
    double inverseFlattening,
    double primeMeridian,
    double metresPerUnit) {

  static final String TRANSVERSE_MERCATOR = "9807";

  /** Spelling of a method without signs, to its EPSG codes. */
  private static final Map<String, String> METHODS =
      Map.ofEntries(
          Map.entry("transversemercator", TRANSVERSE_MERCATOR),
          Map.entry("gausskruger", TRANSVERSE_MERCATOR),
          Map.entry("lambertconformalconic", "9801,9802"),
          Map.entry("lambertconformalconic1sp", "9801"),
          Map.entry("lambertconformalconic2sp", "9802"),
          Map.entry("lambertconicconformal1sp", "9801"),
          Map.entry("lambertconicconformal2sp", "9802"),
          Map.entry("doublestereographic", "9809"),
          Map.entry("obliquestereographic", "9809"),
          Map.entry("albers", "9822"),
          Map.entry("albersconicequalarea", "9822"),
          Map.entry("albersequalarea", "9822"),
          Map.entry("lambertazimuthalequalarea", "9820"),
          Map.entry("hotineobliquemercator", "9812"),
          Map.entry("hotineobliquemercatorvarianta", "9812"),
          Map.entry("hotineobliquemercatorazimuthnaturalorigin", "9812"),
          Map.entry("rectifiedskeworthomorphicnaturalorigin", "9812"),
          Map.entry("hotineobliquemercatorvariantb", "9815"),
          Map.entry("hotineobliquemercatorazimuthcenter", "9815"),
          Map.entry("rectifiedskeworthomorphiccenter", "9815"),
          Map.entry("obliquemercator", "9815"),
          Map.entry("cassinisoldner", "9806"),
          Map.entry("cassini", "9806"));

  /** Spelling of a parameter without signs, or its EPSG code, to the name used here. */
  private static final Map<String, String> PARAMETERS =
      Map.ofEntries(
          Map.entry("latitudeoforigin", "lat0"),
          Map.entry("latitudeofcenter", "lat0"),
          Map.entry("latitudeofcentre", "lat0"),
          Map.entry("latitudeofnaturalorigin", "lat0"),
          Map.entry("latitudeoffalseorigin", "lat0"),
          Map.entry("latitudeofprojectioncentre", "lat0"),
          Map.entry("centralmeridian", "lon0"),
          Map.entry("longitudeoforigin", "lon0"),
          Map.entry("longitudeofcenter", "lon0"),
          Map.entry("longitudeofcentre", "lon0"),
          Map.entry("longitudeofnaturalorigin", "lon0"),
          Map.entry("longitudeoffalseorigin", "lon0"),
          Map.entry("longitudeofprojectioncentre", "lon0"),
          Map.entry("scalefactor", "k0"),
          Map.entry("scalefactoratnaturalorigin", "k0"),
          Map.entry("scalefactoratprojectioncentre", "k0"),
          Map.entry("falseeasting", "fe"),
          Map.entry("eastingatfalseorigin", "fe"),
          Map.entry("eastingatprojectioncentre", "fe"),
          Map.entry("falsenorthing", "fn"),
          Map.entry("northingatfalseorigin", "fn"),
          Map.entry("northingatprojectioncentre", "fn"),
          Map.entry("standardparallel1", "sp1"),
          Map.entry("latitudeof1ststandardparallel", "sp1"),
          Map.entry("standardparallel2", "sp2"),
          Map.entry("latitudeof2ndstandardparallel", "sp2"),
          Map.entry("azimuth", "azimuth"),
          Map.entry("azimuthofinitialline", "azimuth"),
          Map.entry("azimuthatprojectioncentre", "azimuth"),
          Map.entry("rectifiedgridangle", "grid"),
          Map.entry("xyplanerotation", "grid"),
          Map.entry("anglefromrectifiedtoskewgrid", "grid"));

  static CrsDescription of(WktNode crs) {
    boolean projected = crs.keyword().startsWith("PROJ");
    WktNode base =
        projected
            ? crs.child("GEOGCS", "BASEGEOGCRS", "BASEGEODCRS").orElseThrow(() -> lacks("GEOGCS"))
            : crs;
    WktNode datum =
        base.child("DATUM", "ENSEMBLE", "GEODETICDATUM", "TRF").orElseThrow(() -> lacks("DATUM"));
    WktNode spheroid = datum.child("SPHEROID", "ELLIPSOID").orElseThrow(() -> lacks("SPHEROID"));
    double degree = unit(base, 180 / Math.PI, 1);
    double metre = projected ? lengthUnit(crs) : Double.NaN;
    WktNode conversion = crs.child("CONVERSION").orElse(crs);
    String method =
        conversion
            .child("PROJECTION", "METHOD")
            .map(m -> METHODS.getOrDefault(WktNode.plain(m.name()), ""))
            .orElse("");
    return new CrsDescription(
        crs.name(),
        method,
        projected ? parameters(conversion, degree, metre) : Map.of(),
        datum.name(),
        spheroid.number(1),
        spheroid.number(2),
        base.child("PRIMEM").map(p -> p.number(1) * unit(p, 180 / Math.PI, degree)).orElse(0.0),
        metre);
  }

  private static Map<String, Double> parameters(WktNode node, double degree, double metre) {
    Map<String, Double> found = new TreeMap<>();
    for (WktNode p : node.children("PARAMETER")) {
      String name = PARAMETERS.getOrDefault(WktNode.plain(p.name()), WktNode.plain(p.name()));
      double own = p.number(1);
      double value =
          switch (name) {
            case "fe", "fn" -> own * unit(p, 1, metre);
            case "k0" -> own;
            default -> own * unit(p, 180 / Math.PI, degree);
          };
      found.put(name, value);
    }
    if (found.containsKey("azimuth")) {
      found.putIfAbsent("grid", found.get("azimuth"));
    }
    // the conic with one parallel writes it twice in one of the spellings
    if (found.containsKey("sp1") && !found.containsKey("sp2")) {
      found.remove("sp1");
    }
    defaults().forEach(found::putIfAbsent);
    return found;
  }

  /** Of the system, or of its first axis in the second generation of the notation. */
  private static double lengthUnit(WktNode crs) {
    double own = unit(crs, 1, Double.NaN);
    double axis = crs.child("AXIS").map(a -> unit(a, 1, Double.NaN)).orElse(Double.NaN);
    if (Double.isNaN(own) && Double.isNaN(axis)) {
      throw lacks("UNIT");
    }
    return Double.isNaN(own) ? axis : own;
  }

  static Map<String, Double> defaults() {
    return Map.of("lat0", 0.0, "lon0", 0.0, "k0", 1.0, "fe", 0.0, "fn", 0.0);
  }

  /** Degrees or metres of the unit a node names itself; a fallback where it names none. */
  private static double unit(WktNode node, double scale, double fallback) {
    return node.child("UNIT", "ANGLEUNIT", "LENGTHUNIT")
        .map(u -> u.number(1) * scale)
        .orElse(fallback);
  }

  private static IllegalArgumentException lacks(String keyword) {
    return new IllegalArgumentException("it lacks " + keyword.toUpperCase(Locale.ROOT));
  }

  boolean isProjected() {
    return !Double.isNaN(metresPerUnit);
  }

  /** Same ellipsoid within what the spellings round to. */
  boolean hasEllipsoid(double otherSemiMajorM, double otherInverseFlattening) {
    return Math.abs(semiMajorM - otherSemiMajorM) < 0.01
        && Math.abs(inverseFlattening - otherInverseFlattening) < 5e-7;
  }

  /** Same parameters within a centimetre or so on the ground. */
  boolean hasParameters(Map<String, Double> others) {
    if (!parameters.keySet().equals(others.keySet())) {
      return false;
    }
    return parameters.entrySet().stream()
        .allMatch(
            p -> {
              double tolerance =
                  switch (p.getKey()) {
                    case "fe", "fn" -> 0.01;
                    case "k0" -> 1e-10;
                    default -> 2e-8;
                  };
              return Math.abs(p.getValue() - others.get(p.getKey())) <= tolerance;
            });
  }
}
