package org.mottle.export.crs;

import java.util.Map;
import java.util.Set;

/**
 * A reference system of the EPSG data set that a description may mean.
 *
 * @param names plain names and aliases of the system, of its geographic base and of its datum
 * @param parameters as in {@link CrsDescription}; empty for geographic systems
 * @param metresPerUnit NaN for geographic systems
 */
record EpsgCandidate(
    int epsg,
    String name,
    boolean deprecated,
    Set<String> names,
    Map<String, Double> parameters,
    double semiMajorM,
    double inverseFlattening,
    double primeMeridian,
    double metresPerUnit) {

  /** Spellings of datums in {@code .prj} files that no alias of the data set holds. */
  private static final Map<String, String> SPELLINGS =
      Map.ofEntries(
          Map.entry("northamerican1983", "northamericandatum1983"),
          Map.entry("northamerican1927", "northamericandatum1927"),
          Map.entry("rgf1993", "reseaugeodesiquefrancais1993"),
          Map.entry("etrs1989", "europeanterrestrialreferencesystem1989"),
          Map.entry("european1950", "europeandatum1950"),
          Map.entry("belge1972", "reseaunationalbelge1972"),
          Map.entry("sirgas2000", "sistemadereferenciageocentricoparalasamericas2000"),
          Map.entry("nad1983harn", "nad83highaccuracyreferencenetwork"),
          Map.entry("northamerican1983harn", "nad83highaccuracyreferencenetwork"),
          Map.entry("nad1983nsrs2007", "nad83nationalspatialreferencesystem2007"),
          Map.entry("nad19832011", "nad83nationalspatialreferencesystem2011"),
          Map.entry("ch1903", "ch1903"),
          Map.entry("tm65", "tm65"),
          Map.entry("wgs1984", "worldgeodeticsystem1984"));

  boolean fits(CrsDescription d) {
    return d.hasEllipsoid(semiMajorM, inverseFlattening)
        && Math.abs(d.primeMeridian() - primeMeridian) < 1e-6
        && (!d.isProjected()
            || (Math.abs(d.metresPerUnit() - metresPerUnit) < 1e-8 && d.hasParameters(parameters)));
  }

  boolean isNamedLike(CrsDescription d) {
    String datum = WktNode.plain(d.datum());
    return names.contains(datum)
        || names.contains(SPELLINGS.getOrDefault(datum, datum))
        || names.contains(WktNode.plain(d.name()));
  }
}
