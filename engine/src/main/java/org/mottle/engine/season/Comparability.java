package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.WaterHistory;

/** Whether the values of two visits of a green can be subtracted, and what to know if they can. */
final class Comparability {
  /** Rods that differ by less are of one make, mm. */
  private static final double ROD_MM = 1;

  /** Share of the ground that may differ between two drawings of one outline. */
  private static final double OUTLINE_SHARE = 0.01;

  private final VisitedGreen before;
  private final VisitedGreen after;
  private final double operatorSdPct;

  Comparability(VisitedGreen before, VisitedGreen after, double operatorSdPct) {
    this.before = before;
    this.after = after;
    this.operatorSdPct = operatorSdPct;
  }

  private String pair() {
    return "green " + before.greenId() + ", " + before.surveyId() + " and " + after.surveyId();
  }

  Optional<Refusal> refusal() {
    return Stream.of(outlines(), rods(), calibrations(), crews())
        .flatMap(Optional::stream)
        .findFirst();
  }

  private Optional<Refusal> outlines() {
    Geometry a = before.map().subject().green().outline();
    Geometry b = after.map().subject().green().outline();
    double apart = a.equalsExact(b) ? 0 : a.symDifference(b).getArea();
    return apart > OUTLINE_SHARE * Math.max(a.getArea(), b.getArea())
        ? refused(
            String.format(Locale.ROOT, "the outlines differ by %.0f m²", apart),
            "map both surveys with one outline")
        : Optional.empty();
  }

  private Optional<Refusal> rods() {
    SortedSet<Double> all = new TreeSet<>(before.rodsMm());
    all.addAll(after.rodsMm());
    return !all.isEmpty() && all.last() - all.first() > ROD_MM
        ? refused(
            "rods of "
                + all.stream()
                    .map(mm -> String.format(Locale.ROOT, "%.0f", mm))
                    .collect(Collectors.joining(" and "))
                + " mm see different depths",
            "compare surveys read with rods of one length")
        : Optional.empty();
  }

  private Optional<Refusal> calibrations() {
    SortedSet<String> all = new TreeSet<>(before.calibrations());
    all.addAll(after.calibrations());
    return all.size() > 1
        ? refused(
            "calibrations " + String.join(" and ", all) + " do not give the same moisture",
            "convert the raw values of both with one calibration")
        : Optional.empty();
  }

  private Optional<Refusal> crews() {
    SortedSet<String> unknown = new TreeSet<>();
    for (VisitedGreen visit : List.of(before, after)) {
      visit.crews().stream().filter(c -> !visit.knowsOffset(c)).forEach(unknown::add);
    }
    return unknown.size() > 1 && operatorSdPct == 0
        ? refused(
            "read by "
                + String.join(" and ", unknown)
                + ", and what one reads higher than the other is not known",
            "let both read the same 12 stations, or give the standard error of an operator")
        : Optional.empty();
  }

  private Optional<Refusal> refused(String reason, String remedy) {
    return Optional.of(new Refusal(pair() + ": " + reason, remedy));
  }

  List<String> remarks() {
    List<String> told = new ArrayList<>();
    told(told, "rod length", VisitedGreen::rodsMm);
    told(told, "who read with which probe", VisitedGreen::crews);
    for (VisitedGreen visit : List.of(before, after)) {
      if (visit.history() == WaterHistory.UNKNOWN) {
        told.add(
            "the water before "
                + visit.surveyId()
                + " is not recorded: what made the change is open");
      }
      if (visit.readings().observations().positionError().exact()) {
        told.add("positions of " + visit.surveyId() + " are taken for exact");
      }
      int low = visit.map().stations().stations().size() - visit.readings().observations().size();
      if (low > 0 && visit.map().basis().kriging().map(k -> !k.low().isEmpty()).orElse(false)) {
        told.add(
            low
                + " stations of a drier population in "
                + visit.surveyId()
                + " are left out: the change is that of the other ground");
      }
    }
    if (before.history() != after.history()
        && before.history() != WaterHistory.UNKNOWN
        && after.history() != WaterHistory.UNKNOWN) {
      told.add(
          before.surveyId()
              + " was read "
              + words(before.history())
              + ", "
              + after.surveyId()
              + " "
              + words(after.history())
              + ": the change holds the weather too");
    }
    if (before.variogram() != after.variogram()) {
      told.add("the two surveys have variograms of their own; that of more stations serves both");
    }
    return told;
  }

  private static String words(WaterHistory history) {
    return history == WaterHistory.DRYING ? "in dry days" : history.label();
  }

  private void told(
      List<String> told, String what, java.util.function.Function<VisitedGreen, SortedSet<?>> of) {
    String missing =
        Stream.of(before, after)
            .filter(v -> of.apply(v).isEmpty())
            .map(VisitedGreen::surveyId)
            .collect(Collectors.joining(" and "));
    if (!missing.isEmpty()) {
      told.add(what + " is not recorded in " + missing + ": taken to be the same");
    }
  }
}
