package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/** What to know of an audit before its figures are used. */
final class AuditCautions {
  /** 5 mph, of audit guidelines. */
  private static final double WIND_MS = 2.2;

  private static final int FEW_CANS = 20;

  /** Common practice, no source. */
  private static final double PRESSURE_SPREAD = 0.10;

  /** Common practice, no source: start, stop and reading weigh too much in shorter runs. */
  private static final double SHORT_MIN = 10;

  /** A can on the collar is still the green's, m. */
  private static final double OUTSIDE_M = 2;

  private static final GeometryFactory FACTORY = new GeometryFactory();

  private final AuditArea area;
  private final List<Caution> cautions = new ArrayList<>();

  private AuditCautions(AuditArea area) {
    this.area = area;
  }

  static List<Caution> of(
      AuditArea area,
      Optional<UniformityEstimate> uniformity,
      Applied applied,
      RunTime runTime,
      List<Scheduling> scheduling) {
    AuditCautions all = new AuditCautions(area);
    all.cans();
    all.wind(applied);
    all.pressure();
    all.outside();
    all.scheduling(scheduling);
    uniformity.ifPresent(u -> all.runTime(u, runTime));
    return all.cautions;
  }

  private void add(Caution.Kind kind, String format, Object... values) {
    cautions.add(new Caution(kind, String.format(Locale.ROOT, format, values)));
  }

  private void cans() {
    int n = area.cans().size();
    if (n < FEW_CANS) {
      add(
          Caution.Kind.FEW_CANS,
          "%d cans; guidelines ask for %d to 24 on an area, and the intervals are wide",
          n,
          FEW_CANS);
    }
    CanValues.Recorded mouths = CanValues.Recorded.of(area.cans(), c -> c.measure().mouthCm2());
    CanValues.Recorded minutes = CanValues.Recorded.of(area.cans(), c -> c.measure().minutes());
    if (mouths.distinct().size() > 1) {
      add(
          Caution.Kind.MOUTHS,
          "cans of different mouths (%s): narrow cans catch less surely; check that the areas are right",
          mouths.listed("cm²"));
    } else if (mouths.missing() > 0) {
      add(
          Caution.Kind.ALIKE,
          "the mouth area of %d of %d cans is not recorded: the ratios hold if all cans are alike",
          mouths.missing(),
          mouths.of());
    }
    if (minutes.distinct().size() > 1) {
      add(
          Caution.Kind.RUNS,
          "the cans stood for different times (%s): rates are compared, as if of one run",
          minutes.listed("min"));
    }
    if (!minutes.distinct().isEmpty() && minutes.distinct().get(0) < SHORT_MIN) {
      add(
          Caution.Kind.SHORT_RUN,
          "a run of %.1f min is short: start, stop and the reading of small catches weigh in it"
              + " (under %.0f min by common practice, no source)",
          minutes.distinct().get(0),
          SHORT_MIN);
    }
  }

  private void wind(Applied applied) {
    long without = area.cans().stream().filter(c -> Double.isNaN(c.windMs())).count();
    if (without == area.cans().size()) {
      add(Caution.Kind.WIND, "wind is not recorded; above %.1f m/s it makes the test", WIND_MS);
    } else if (applied.windMs() > WIND_MS) {
      add(
          Caution.Kind.WIND,
          "wind of %.1f m/s is above %.1f m/s: the figures show the wind as well as the heads;"
              + " consider a calm morning",
          applied.windMs(),
          WIND_MS);
    }
  }

  private void pressure() {
    if (area.heads().isEmpty()) {
      add(
          Caution.Kind.PRESSURE,
          "pressure at the heads is not recorded: low pressure shows as unevenness");
      return;
    }
    double[] known =
        area.heads().stream().mapToDouble(Head::pressureKpa).filter(p -> p > 0).toArray();
    if (known.length < area.heads().size()) {
      add(
          Caution.Kind.PRESSURE,
          "pressure is not recorded at %d of %d heads: low pressure shows as unevenness",
          area.heads().size() - known.length,
          area.heads().size());
    }
    double mean = java.util.Arrays.stream(known).average().orElse(Double.NaN);
    double most = 0;
    for (double p : known) {
      most = Math.max(most, Math.abs(p / mean - 1));
    }
    if (most > PRESSURE_SPREAD) {
      add(
          Caution.Kind.PRESSURE,
          "pressure at the heads is up to %.0f %% from its mean of %.0f kPa (10 %% by common"
              + " practice, no source); check it before nozzles or arcs",
          100 * most,
          mean);
    }
  }

  private void outside() {
    if (area.green().isEmpty()) {
      return;
    }
    Geometry outline = area.green().get().outline();
    List<String> far =
        area.cans().stream()
            .filter(CatchCan::hasPlace)
            .filter(
                c ->
                    outline.distance(FACTORY.createPoint(new Coordinate(c.x(), c.y()))) > OUTSIDE_M)
            .map(CatchCan::id)
            .toList();
    if (!far.isEmpty()) {
      add(
          Caution.Kind.OUTSIDE,
          "%d cans stood more than %.0f m outside the outline (%s) and count all the same; check"
              + " their green and their places",
          far.size(),
          OUTSIDE_M,
          String.join(", ", far.subList(0, Math.min(8, far.size()))));
    }
  }

  private void scheduling(List<Scheduling> scheduling) {
    List<Scheduling> known = scheduling.stream().filter(s -> s.refusal().isEmpty()).toList();
    if (known.isEmpty()) {
      return;
    }
    double spacing =
        Math.sqrt(area.green().orElseThrow().areaM2() / Math.max(1, area.cans().size()));
    List<String> narrow =
        known.stream()
            .filter(s -> s.sideM() < spacing)
            .map(s -> "sc" + Math.round(100 * s.share()))
            .toList();
    if (!narrow.isEmpty()) {
      add(
          Caution.Kind.WINDOW,
          "%s: the window is narrower than the spacing of the cans (%.1f m), so it hangs on a can or two",
          String.join(", ", narrow),
          spacing);
    }
    if (known.stream().anyMatch(s -> s.value() < 1)) {
      add(
          Caution.Kind.EDGE,
          "a scheduling coefficient below 1: the driest ground lies at the edge, where the window"
              + " does not fit");
    }
    add(
        Caution.Kind.HEAD_FIRST,
        "do not use the scheduling coefficient to drown the rest for one dry place: look at the"
            + " heads that should reach it first");
  }

  private void runTime(UniformityEstimate uniformity, RunTime runTime) {
    if (uniformity.figures().duLowQuarter() < 0.7 || !Double.isNaN(runTime.minutes())) {
      add(
          Caution.Kind.RUN_TIME,
          "a run lengthened by the multiplier (%.2f) over-waters the wetter half; consider mending"
              + " the coverage first; the site's agronomist decides",
          runTime.multiplier());
    }
  }
}
