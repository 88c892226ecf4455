package org.mottle.engine.irrigation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.mottle.engine.survey.Refusal;

/**
 * Audits one area: every figure that the records allow, a reason for each that they do not. The
 * same numbers for the same seed, in whatever order the cans are given.
 */
public final class CanAudit {
  /** Shares of the area for which scheduling coefficients are usual. */
  private static final double[] SHARES = {0.01, 0.02, 0.05};

  private final AuditSettings settings;

  public CanAudit(AuditSettings settings) {
    this.settings = settings;
  }

  public AreaAudit of(AuditArea area) {
    CanValues values = CanValues.of(area.cans());
    List<Missing> missing = new ArrayList<>();
    Optional<UniformityEstimate> uniformity = Optional.empty();
    if (values.refusal().isPresent()) {
      for (String figure : List.of("du_lq", "cu", "cv_pct", "rtm")) {
        missing.add(new Missing(figure, values.refusal().get()));
      }
    } else {
      UniformityEstimate estimate =
          UniformityEstimate.of(
              values.values(), settings.rule(), settings.replicates(), settings.seed());
      uniformity = Optional.of(estimate);
      if (!estimate.hasIntervals()) {
        missing.add(
            Missing.of(
                "intervals", area.cans().size() + " cans are too few", "set out 20 or more"));
      }
    }
    Applied applied = applied(area.cans(), missing);
    RunTime runTime = runTime(uniformity, applied, missing);
    List<Scheduling> scheduling = scheduling(area, values, missing);
    List<Caution> cautions = AuditCautions.of(area, uniformity, applied, runTime, scheduling);
    return new AreaAudit(
        area,
        values,
        uniformity,
        applied,
        runTime,
        scheduling,
        new AreaAudit.Told(missing, cautions));
  }

  private static Applied applied(List<CatchCan> cans, List<Missing> missing) {
    int noMouth = CanValues.Recorded.of(cans, c -> c.measure().mouthCm2()).missing();
    CanValues.Recorded minutes = CanValues.Recorded.of(cans, c -> c.measure().minutes());
    Refusal mouths =
        new Refusal(
            "no mouth area for " + noMouth + " of " + cans.size() + " cans",
            "measure the mouths: depth is 10 ml / cm²");
    if (noMouth > 0) {
      missing.add(new Missing("mm", mouths));
      missing.add(new Missing("mm_h", mouths));
    }
    if (minutes.missing() > 0) {
      missing.add(
          Missing.of(
              noMouth > 0 ? "min_run" : "mm_h",
              "no run minutes for " + minutes.missing() + " of " + cans.size() + " cans",
              "record how long the water ran"));
    }
    boolean rate = noMouth == 0 && minutes.missing() == 0;
    boolean same = minutes.missing() == 0 && minutes.distinct().size() == 1;
    return new Applied(
        noMouth == 0 ? mean(cans, c -> c.measure().depthMm()) : Double.NaN,
        same ? minutes.distinct().get(0) : Double.NaN,
        rate ? mean(cans, c -> c.measure().rateMmH()) : Double.NaN,
        cans.stream()
            .mapToDouble(CatchCan::windMs)
            .filter(w -> !Double.isNaN(w))
            .max()
            .orElse(Double.NaN));
  }

  private static double mean(List<CatchCan> cans, ToDoubleFunction<CatchCan> figure) {
    return cans.stream().mapToDouble(figure).sorted().sum() / cans.size();
  }

  private RunTime runTime(
      Optional<UniformityEstimate> uniformity, Applied applied, List<Missing> missing) {
    RunTime plain =
        uniformity.map(u -> RunTime.of(u.figures().duLowQuarter())).orElse(RunTime.UNKNOWN);
    if (settings.need().isEmpty()) {
      return plain;
    }
    if (uniformity.isEmpty() || !(applied.rateMmH() > 0)) {
      missing.add(
          Missing.of(
              "run_min",
              uniformity.isEmpty() ? "no uniformity is known" : "no rate (mm_h) is known",
              "see above"));
      return plain;
    }
    return plain.with(settings.need().get(), applied.rateMmH());
  }

  private static List<Scheduling> scheduling(
      AuditArea area, CanValues values, List<Missing> missing) {
    List<Scheduling> all = new ArrayList<>();
    for (double share : SHARES) {
      Scheduling one;
      if (values.refusal().isPresent()) {
        Refusal why = values.refusal().get();
        one = Scheduling.refused(share, why.reason(), why.remedy());
      } else if (area.green().isEmpty()) {
        one =
            Scheduling.refused(
                share, "no outline is known of this ground", "give the outline of the green");
      } else {
        one =
            SchedulingCoefficient.of(
                area.green().get().outline(), area.cans(), values.values(), share);
      }
      all.add(one);
      one.refusal().ifPresent(r -> missing.add(new Missing("sc" + Math.round(100 * share), r)));
    }
    return all;
  }
}
