package org.mottle.engine.population;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.mottle.engine.interval.Interval;

/** Writes a {@link Finding}; the classes of penetration time are Dekker & Jungerius (1990). */
final class FindingText {
  static final String DECISION =
      "Decision support. Measurements and estimates with stated uncertainty; the site's"
          + " agronomist/course manager decides.";

  private static final String CLASSES =
      "time how long drops of water stay on the soil of the core, every 10 mm of depth (water drop"
          + " penetration time): < 5 s wettable, 5-60 s slight, 60-600 s strong, 600-3600 s severe,"
          + " > 3600 s extreme repellency (Dekker & Jungerius 1990); let the core dry in air and"
          + " repeat, since repellency may appear only below a moisture that differs from site to"
          + " site";
  private static final int LOW_CORES = 3;
  private static final int OTHER_CORES = 2;

  private final TwoFound found;
  private final SpotPattern pattern;

  /** The survey whose stations are named: the last with a low reading. */
  private final int survey;

  FindingText(TwoFound found, SpotPattern pattern) {
    this.found = found;
    this.pattern = pattern;
    this.survey =
        IntStream.range(0, found.surveys().size())
            .filter(s -> found.lowStations(s).length > 0)
            .max()
            .orElse(0);
  }

  Finding finding() {
    Finding.Advice advice = advice();
    return advice == Finding.Advice.MAP_AS_ONE
        ? new Finding(advice, seen(), why(), plainSteps(), List.of(DECISION), List.of())
        : new Finding(advice, seen(), why(), testSteps(), testCautions(), cores());
  }

  private Finding.Advice advice() {
    if (!found.lowIsException() || pattern.verdict() == SpotPattern.Verdict.TOGETHER) {
      return Finding.Advice.MAP_AS_ONE;
    }
    return pattern.spotLike()
        ? Finding.Advice.MAP_APART_AND_TEST
        : Finding.Advice.MAP_AS_ONE_AND_TEST;
  }

  private String seen() {
    List<String> parts = new ArrayList<>();
    for (int s = 0; s < found.surveys().size(); s++) {
      String name = found.surveys().get(s).survey();
      parts.add((name.isEmpty() ? "" : name + ": ") + seenIn(s));
    }
    return String.join("; ", parts) + ". " + shareOfGround();
  }

  private String seenIn(int s) {
    int low = found.lowStations(s).length;
    int stations = found.surveys().get(s).size();
    if (low == 0) {
      return format("none of %d stations reads low", stations);
    }
    Interval depth = found.depth(s);
    return format(
        "%d of %d stations read low, about %.1f %% by volume below the others (90 %% interval %.1f"
            + " to %.1f)",
        low, stations, depth.best(), depth.low(), depth.high());
  }

  private String shareOfGround() {
    GroundShare share = found.groundShare();
    if (share.fromChosen()) {
      return "Every station was a point of interest, so how much of the green is low is not known.";
    }
    return format(
        "Stations not chosen for what was seen there suggest that about %.0f %% of the green is"
            + " low (90 %% interval %.0f to %.0f %%).",
        100 * share.share().best(), 100 * share.share().low(), 100 * share.share().high());
  }

  private String why() {
    if (!found.lowIsException()) {
      return "Most of the ground belongs to the lower population: the exception is wet. That is"
          + " consistent with a leak, a hollow or a drain that does not run, not with"
          + " water-repellent spots.";
    }
    return switch (pattern.verdict()) {
      case SCATTERED ->
          format(
              "The low readings lie scattered among the others; a patch of as many stations would"
                  + " look so scattered in %.1f %% of draws. That is consistent with water-repellent"
                  + " spots, which are too small for these stations to outline.",
              100 * pattern.asPatch());
      case SMALL ->
          format(
              "%sonly %d of the %d stations not chosen for what was seen there read low, too few to"
                  + " outline anything: the low ground is small. That is consistent with"
                  + " water-repellent spots.",
              inSurvey(), pattern.lowPlanned(), pattern.planned());
      case TOGETHER ->
          format(
              "The low readings hang together; scattered ones would do so in %.1f %% of draws. That"
                  + " suggests one ordinary dry patch (water not reaching it, high ground, a dry"
                  + " edge) rather than water-repellent spots.",
              100 * pattern.asScattered());
      case CANNOT_TELL ->
          format(
              "%s%d low readings at the %d stations not chosen for what was seen there do not tell"
                  + " scattered spots from one dry patch.",
              inSurvey(), pattern.lowPlanned(), pattern.planned());
    };
  }

  private String inSurvey() {
    String name = found.surveys().get(pattern.survey()).survey();
    return name.isEmpty() ? "In this survey " : "In survey " + name + " ";
  }

  private List<String> plainSteps() {
    return found.lowIsException()
        ? List.of("check the sprinklers and the ground at the low stations: " + lowNames())
        : List.of("check the ground at the stations that read high");
  }

  private List<String> testSteps() {
    List<StationRef> cores = cores();
    long low = cores.stream().filter(c -> found.isLow(c.survey(), c.station())).count();
    List<String> steps = new ArrayList<>();
    steps.add(
        "consider a core from stations "
            + where(cores.subList(0, (int) low))
            + " (low)"
            + (low < cores.size()
                ? " and, to compare, " + where(cores.subList((int) low, cores.size()))
                : ""));
    steps.add(CLASSES);
    steps.add("consider reading round the low stations 1 m apart, to see how wide they are");
    if (!pattern.spotLike()) {
      steps.add("check the sprinklers that reach the low stations: " + lowNames());
    }
    return steps;
  }

  private static List<String> testCautions() {
    return List.of(
        "Adding water alone may not rewet a repellent spot; do not refill one by volume alone."
            + " Wetting agents: product label, trained applicator, local rules.",
        "Before a hole deeper than the probe check for buried services.",
        DECISION);
  }

  private List<StationRef> cores() {
    StationValues values = found.surveys().get(survey);
    List<StationRef> cores = new ArrayList<>();
    Arrays.stream(found.lowStations(survey))
        .boxed()
        .sorted(Comparator.comparingDouble(values::value))
        .limit(LOW_CORES)
        .forEach(i -> cores.add(ref(i)));
    if (cores.isEmpty()) {
      return cores;
    }
    int driest = cores.get(0).station();
    Arrays.stream(values.nearestFirst(driest))
        .filter(i -> !found.isLow(survey, i))
        .limit(OTHER_CORES)
        .forEach(i -> cores.add(ref(i)));
    return cores;
  }

  private StationRef ref(int station) {
    return new StationRef(survey, station, found.surveys().get(survey).name(station));
  }

  private String where(List<StationRef> stations) {
    StationValues values = found.surveys().get(survey);
    return stations.stream()
        .map(
            r ->
                format(
                    "%s (E %.1f N %.1f)", r.name(), values.x(r.station()), values.y(r.station())))
        .collect(Collectors.joining(", "));
  }

  private String lowNames() {
    StationValues values = found.surveys().get(survey);
    return Arrays.stream(found.lowStations(survey))
        .mapToObj(values::name)
        .collect(Collectors.joining(", "));
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern, values);
  }
}
