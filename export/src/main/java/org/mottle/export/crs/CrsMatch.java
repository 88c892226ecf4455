package org.mottle.export.crs;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Finds the EPSG code that a description without one means: same method, parameters and ellipsoid,
 * and a datum (or the whole system) of the same name. Reading the description as it stands would be
 * shorter, but the shift to WGS 84 that belongs to a datum is not in it, and a national grid
 * without its shift lies a hundred metres off.
 */
final class CrsMatch {
  private CrsMatch() {}

  static Crs of(WktNode crs) {
    CrsDescription description;
    try {
      description = CrsDescription.of(crs);
    } catch (IllegalArgumentException e) {
      throw new InputRefused(
          "the CRS description '%s' is broken: %s; name the CRS by its EPSG code with --crs"
              .formatted(CrsText.shortened(crs.name()), e.getMessage()));
    }
    return knownHere(description).orElseGet(() -> inDataSet(description));
  }

  private static Optional<Crs> knownHere(CrsDescription d) {
    for (GeoDatum datum : GeoDatum.values()) {
      if (d.primeMeridian() == 0
          && datum.isNamed(d.datum(), d.semiMajorM(), d.inverseFlattening())) {
        return d.isProjected() ? zone(d, datum) : Optional.of(Crs.of(datum));
      }
    }
    return Optional.empty();
  }

  private static Optional<Crs> zone(CrsDescription d, GeoDatum datum) {
    if (!d.method().equals(CrsDescription.TRANSVERSE_MERCATOR)
        || Math.abs(d.metresPerUnit() - 1) > 1e-9) {
      return Optional.empty();
    }
    return Zones.all().stream()
        .filter(z -> z.datum() == datum)
        .filter(
            z ->
                d.hasParameters(
                    Map.of(
                        "lat0",
                        0.0,
                        "lon0",
                        z.lon0(),
                        "k0",
                        Zones.Grid.SCALE,
                        "fe",
                        z.fe(),
                        "fn",
                        z.fn())))
        .map(Crs::of)
        .findFirst();
  }

  private static Crs inDataSet(CrsDescription d) {
    List<EpsgCandidate> fitting = EpsgTables.candidates(d).stream().filter(c -> c.fits(d)).toList();
    List<EpsgCandidate> named = fitting.stream().filter(c -> c.isNamedLike(d)).toList();
    Optional<EpsgCandidate> best =
        named.stream()
            .filter(c -> !c.deprecated())
            .findFirst()
            .or(() -> named.stream().findFirst());
    return best.map(c -> Crs.ofEpsg(c.epsg())).orElseThrow(() -> refused(d, fitting));
  }

  private static InputRefused refused(CrsDescription d, List<EpsgCandidate> fitting) {
    if (fitting.isEmpty()) {
      return new InputRefused(
          "the CRS '%s' on the datum '%s' is not one with an EPSG code; name one with --crs"
              .formatted(d.name(), d.datum()));
    }
    List<String> names =
        fitting.stream().map(c -> "EPSG:" + c.epsg() + " (" + c.name() + ")").toList();
    return new InputRefused(
        "the CRS '%s' does not say its datum ('%s'); it could be %s: name the right one with --crs"
            .formatted(d.name(), d.datum(), Problems.listed(names, 4)));
  }
}
