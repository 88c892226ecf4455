package org.mottle.engine.population;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.mottle.engine.survey.Refusal;

/** Words for a refusal: which rule failed, by how much, and what would change it. */
final class Reasons {

  private Reasons() {}

  static Refusal why(Evidence evidence, List<CannotTell.Failure> failures) {
    String reason =
        failures.stream().map(f -> reason(evidence, f)).collect(Collectors.joining("; "));
    return new Refusal(
        "cannot tell one population of readings from two: " + reason,
        remedy(evidence, failures.get(0)));
  }

  private static String reason(Evidence evidence, CannotTell.Failure f) {
    return switch (f.rule()) {
      case STATIONS ->
          format("%.0f stations where at least %.0f are needed", f.figure(), f.limit());
      case SPREAD ->
          format("the values hardly differ within a population (SD %.2g %%)", f.figure());
      case DELTA_BIC ->
          format(
              "one population explains the %d stations about as well (BIC differs by %.1f, more"
                  + " than %.0f wanted)",
              evidence.stations(), f.figure(), f.limit());
      case SEPARATION ->
          format(
              "the two means are %.1f standard deviations apart, more than %.0f wanted",
              f.figure(), f.limit());
      case SHARE ->
          format(
              "the smaller population is %.0f %% of the stations, at least %.0f %% wanted",
              100 * f.figure(), 100 * f.limit());
    };
  }

  private static String remedy(Evidence evidence, CannotTell.Failure f) {
    return switch (f.rule()) {
      case STATIONS ->
          format(
              "pool surveys of the same green, or read %.0f more stations", f.limit() - f.figure());
      case SPREAD -> "check for a stuck probe or values that were not read";
      case DELTA_BIC -> moreStations(evidence, f.limit());
      case SEPARATION ->
          "pool a survey from a drier day, when repellent spots differ most, or read some of the"
              + " places that look dry as points of interest";
      case SHARE ->
          "read the low stations again, and some places that look dry as points of interest";
    };
  }

  /** The likelihood ratio grows in proportion to the stations, the penalty with their logarithm. */
  private static String moreStations(Evidence evidence, double limit) {
    String general =
        "pool surveys of the same green, or read some of the places that look dry as points of"
            + " interest";
    int parameters = evidence.mixture().map(m -> m.parameters() - m.surveys() - 1).orElseThrow();
    int n = evidence.stations();
    double ratio = evidence.deltaBic() + parameters * Math.log(n);
    for (int more = n + 1; more <= 3 * n; more++) {
      if (ratio * more / n - parameters * Math.log(more) > limit) {
        return general
            + format("; if the pattern held, about %d stations would be enough to tell", more);
      }
    }
    return general;
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
