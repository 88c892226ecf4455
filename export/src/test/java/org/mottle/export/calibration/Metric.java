package org.mottle.export.calibration;

import java.util.List;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** The figures of a group of scored maps; NaN where a group has nothing to tell. */
enum Metric {
  GREENS("green-surveys", 0, s -> s.size()),
  RMSE("RMSE of the cells, %", 3, s -> Math.sqrt(perCell(s, g -> g.error().squares()))),
  BIAS("mean error, %", 3, s -> perCell(s, g -> g.error().sum())),
  RMSE_OF_MEANS("RMSE of the green's mean, %", 3, s -> Math.sqrt(mean(s, g -> square(g)))),
  CRPS("CRPS, %", 4, s -> perCell(s, g -> g.error().crps())),
  LOG_SCORE("log score", 4, s -> perCell(s, g -> g.error().log())),
  COVERAGE_50("coverage of 50 %", 3, s -> perCell(s, g -> g.error().in50())),
  COVERAGE_90("coverage of 90 %", 3, s -> perCell(s, g -> g.error().in90())),
  UNDER_75("greens with 90 % coverage < 75 %", 3, s -> mean(s, g -> g.coverage90() < 0.75 ? 1 : 0)),
  GAP_DRY("worst reliability gap, dry", 3, s -> dry(s).worstGap()),
  GAP_WET("worst reliability gap, wet", 3, s -> wet(s).worstGap()),
  CALLED("area at P ≥ 0.8", 4, s -> both(s).calledM2() / (both(s).areaM2() / 2)),
  PRECISION("of it so", 3, s -> both(s).calledSoM2() / both(s).calledM2()),
  CALLABLE_80("area callable at precision 0.80", 4, s -> callable(s, 0.80)),
  CALLABLE_90("area callable at precision 0.90", 4, s -> callable(s, 0.90)),
  DRY_RATIO("expected / true dry area", 3, s -> ratio(s, GreenScore::dry)),
  WET_RATIO("expected / true wet area", 3, s -> ratio(s, GreenScore::wet)),
  DRY_ERROR("mean error of dry area a green, m²", 1, s -> absolute(s, GreenScore::dry)),
  WET_ERROR("mean error of wet area a green, m²", 1, s -> absolute(s, GreenScore::wet)),
  AREA_COVERAGE("coverage of 5-95 % of areas", 3, Metric::areaCoverage),
  SOUND_CALLED("sound greens: area at P ≥ 0.8", 4, s -> sound(s, false)),
  SOUND_WRONG("sound greens: wrongly at P ≥ 0.8", 4, s -> sound(s, true)),
  PATCHES("patches", 0, s -> s.stream().mapToInt(g -> g.patches().drawn()).sum()),
  PATCH_SAID("mean P of existence", 3, s -> perPatch(s, g -> g.patches().existence())),
  PATCH_THERE("patches that exist", 3, s -> perPatch(s, g -> g.patches().there()));

  private final String label;
  private final int decimals;
  private final ToDoubleFunction<List<GreenScore>> figure;

  Metric(String label, int decimals, ToDoubleFunction<List<GreenScore>> figure) {
    this.label = label;
    this.decimals = decimals;
    this.figure = figure;
  }

  String label() {
    return label;
  }

  int decimals() {
    return decimals;
  }

  /** Whether more of it is better; otherwise less is. Asked of figures with a better side only. */
  boolean isGain() {
    return this == CALLABLE_80 || this == CALLABLE_90;
  }

  double of(List<GreenScore> scores) {
    return figure.applyAsDouble(scores);
  }

  static Histogram dry(List<GreenScore> scores) {
    return histogram(scores.stream().map(g -> g.dry().p()));
  }

  static Histogram wet(List<GreenScore> scores) {
    return histogram(scores.stream().map(g -> g.wet().p()));
  }

  /** Both limits in one: its area is twice that of the greens. */
  private static Histogram both(List<GreenScore> scores) {
    return histogram(scores.stream().flatMap(g -> Stream.of(g.dry().p(), g.wet().p())));
  }

  private static Histogram histogram(Stream<Histogram> parts) {
    Histogram sum = new Histogram();
    parts.forEach(sum::add);
    return sum;
  }

  private static double callable(List<GreenScore> scores, double precision) {
    Histogram both = both(scores);
    return both.callableM2(precision) / (both.areaM2() / 2);
  }

  private static double perCell(List<GreenScore> scores, ToDoubleFunction<GreenScore> sum) {
    return scores.stream().mapToDouble(sum).sum()
        / scores.stream().mapToDouble(GreenScore::cells).sum();
  }

  private static double perPatch(List<GreenScore> scores, ToDoubleFunction<GreenScore> sum) {
    return scores.stream().mapToDouble(sum).sum()
        / scores.stream().mapToDouble(g -> g.patches().drawn()).sum();
  }

  private static double mean(List<GreenScore> scores, ToDoubleFunction<GreenScore> of) {
    return scores.stream().mapToDouble(of).average().orElse(Double.NaN);
  }

  private static double square(GreenScore green) {
    return green.meanError() * green.meanError();
  }

  private static double ratio(List<GreenScore> scores, Function<GreenScore, GreenScore.Side> side) {
    return scores.stream().map(side).mapToDouble(s -> s.claim().expected()).sum()
        / scores.stream().map(side).mapToDouble(GreenScore.Side::trueM2).sum();
  }

  private static double absolute(
      List<GreenScore> scores, Function<GreenScore, GreenScore.Side> side) {
    return mean(scores, g -> Math.abs(side.apply(g).claim().expected() - side.apply(g).trueM2()));
  }

  private static double areaCoverage(List<GreenScore> scores) {
    return scores.stream()
        .flatMap(g -> Stream.of(g.dry(), g.wet()))
        .filter(side -> side.claim().interval().isPresent())
        .mapToDouble(side -> side.claim().interval().get().holds(side.trueM2()) ? 1 : 0)
        .average()
        .orElse(Double.NaN);
  }

  private static double sound(List<GreenScore> scores, boolean wrongly) {
    Predicate<GreenScore> isSound = GreenScore::sound;
    List<GreenScore> sound = scores.stream().filter(isSound).toList();
    Histogram both = both(sound);
    double m2 =
        wrongly
            ? sound.stream().mapToDouble(g -> g.dry().wrongM2() + g.wet().wrongM2()).sum()
            : both.calledM2();
    return m2 / (both.areaM2() / 2);
  }
}
