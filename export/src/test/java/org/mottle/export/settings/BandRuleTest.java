package org.mottle.export.settings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.RootZone;
import org.mottle.engine.survey.TargetBand;
import org.mottle.engine.water.SoilTexture;

class BandRuleTest {
  private static final String SET = ", by: site agronomist, on: 2025-05-01";

  private static Green green(double fc, double wp) {
    return new Green(
        "G1",
        "",
        new GeometryFactory().toGeometry(new Envelope(0, 20, 0, 20)),
        new RootZone("", "", Double.NaN, fc, wp, Double.NaN),
        Green.Boundary.UNKNOWN);
  }

  private static BandOutcome outcome(String rule, Green green, List<Reading> readings)
      throws IOException {
    return SettingsReader.parse("s.yml", "bands: {default: {" + rule + "}}")
        .bands()
        .outcome(green, readings)
        .orElseThrow();
  }

  private static BandOutcome.Found found(String rule, Green green, List<Reading> readings)
      throws IOException {
    return (BandOutcome.Found) outcome(rule, green, readings);
  }

  private static Reading reading(int station, double pct, Reading.Role role, boolean used) {
    Reading r = Reading.of("G1", "" + station, station, 5, pct);
    return new Reading(
        r.label(),
        r.position(),
        r.moisture(),
        r.protocol(),
        role,
        new Reading.Quality("", "", used));
  }

  private static List<Reading> readings(double... pct) {
    return IntStream.range(0, pct.length)
        .mapToObj(i -> reading(i + 1, pct[i], Reading.Role.PLAN, true))
        .toList();
  }

  @Test
  void aBandWithAuthorAndDateIsNotProvisional() throws IOException {
    BandOutcome.Found found =
        found("purpose: ball roll, fc_pct: 26, wp_pct: 10" + SET, green(26, 10), List.of());
    assertThat(found.of().provisional()).isEmpty();
    assertThat(found.remarks()).isEmpty();
    assertThat(found.of().lowPct()).isCloseTo(15.6, within(1e-12));
    assertThat(found.of().highPct()).isCloseTo(20.4, within(1e-12));
  }

  @ParameterizedTest
  @CsvSource({
    "'purpose: ball roll, fc_pct: 26, wp_pct: 10', 'it is not recorded who set it, nor when'",
    "'lo_pct: 16, hi_pct: 22, on: 2025-05-01', it is not recorded who set it",
    "'purpose: saving water, by: site agronomist', it is not recorded when it was set",
    "purpose: evenness, 'it is not recorded who set it, nor when'"
  })
  void aBandOfNobodyOrOfNoDateIsProvisional(String rule, String why) throws IOException {
    assertThat(found(rule, green(26, 10), readings(20)).of().provisional()).isEqualTo(why);
  }

  /** Appearance takes 0.50 to 0.85 of what lies between the anchors. */
  @Test
  void fromTexture() throws IOException {
    String rule =
        "purpose: appearance, texture: {sand_pct: 62, clay_pct: 14, organic_pct: 3.5}" + SET;
    SoilTexture soil = new SoilTexture(62, 14, 3.5);
    double wp = soil.wiltingPointPct();
    double span = soil.fieldCapacityPct() - wp;
    BandOutcome.Found found = found(rule, green(Double.NaN, Double.NaN), List.of());
    assertThat(found.of().lowPct()).isCloseTo(wp + 0.50 * span, within(1e-12));
    assertThat(found.of().highPct()).isCloseTo(wp + 0.85 * span, within(1e-12));
    assertThat(found.of().provisional())
        .isEqualTo(
            String.format(
                java.util.Locale.ROOT,
                "its anchors (wilt %.1f, field capacity %.1f %%) are estimated from texture, not from"
                    + " readings of the site",
                wp,
                wp + span));
    assertThat(found.remarks()).isEmpty();
    assertThat(found(rule, green(26, 10), List.of()).remarks())
        .singleElement()
        .asString()
        .contains("consider leaving texture out");
  }

  /** A sand root zone over gravel holds far more at field capacity than sand does at 33 kPa. */
  @Test
  void fromTheTextureOfASandComesWithACaution() throws IOException {
    BandOutcome.Found found =
        found(
            "purpose: ball roll, texture: {sand_pct: 92, clay_pct: 2, organic_pct: 2}" + SET,
            green(Double.NaN, Double.NaN),
            List.of());
    assertThat(found.of().highPct()).isLessThan(10);
    assertThat(found.remarks()).singleElement().asString().contains("much too low", "check");
    assertThat(found.of().provisional().length()).isLessThan(254);
  }

  @Test
  void evennessLiesAboutTheMedianOfTheStations() throws IOException {
    String rule = "purpose: evenness" + SET;
    Green green = green(Double.NaN, Double.NaN);
    TargetBand low = found(rule, green, readings(10, 30, 14, 12, 16)).of();
    assertThat(low).isEqualTo(TargetBand.aroundMedian(14, "site agronomist", "2025-05-01"));
    assertThat(found(rule, green, readings(14)).remarks())
        .singleElement()
        .asString()
        .contains("drier and wetter than the rest", "more than it needs");
    TargetBand even = found(rule, green, readings(28, 40, 32, 20)).of();
    assertThat(even.lowPct()).isCloseTo(27, within(1e-12));
    assertThat(even.highPct()).isCloseTo(33, within(1e-12));
    // insertions at one station count once; what is not used, or was chosen, not at all
    List<Reading> mixed =
        List.of(
            reading(1, 9, Reading.Role.PLAN, true),
            reading(1, 11, Reading.Role.PLAN, true),
            reading(2, 20, Reading.Role.PLAN, true),
            reading(3, 14, Reading.Role.PLAN, true),
            reading(4, 60, Reading.Role.PLAN, false),
            reading(5, 5, Reading.Role.POINT_OF_INTEREST, true));
    assertThat(found(rule, green, mixed).of().lowPct()).isCloseTo(12, within(1e-12));
    assertThat(((BandOutcome.NotFound) outcome(rule, green, List.of())).why().reason())
        .isEqualTo("a band for evenness lies about the median of the readings, and none is used");
  }

  @Test
  void theFigureThatIsMissingIsNamed() throws IOException {
    String rule = "purpose: saving water";
    assertThat(
            ((BandOutcome.NotFound) outcome(rule, green(Double.NaN, 10), List.of()))
                .why()
                .toString())
        .isEqualTo(
            "a band for saving water needs field capacity (fc_pct), not recorded there; give fc_pct"
                + " in the outlines' file or under bands in the settings, or lo_pct and hi_pct");
    assertThat(
            ((BandOutcome.NotFound) outcome(rule, green(Double.NaN, Double.NaN), List.of()))
                .why()
                .reason())
        .contains("field capacity (fc_pct) and wilt onset (wp_pct)");
    assertThat(
            ((BandOutcome.NotFound) outcome(rule + ", fc_pct: 12", green(26, 15), List.of()))
                .why()
                .reason())
        .isEqualTo("field capacity (fc_pct 12.0) is not above wilt onset (wp_pct 15.0)");
  }

  @ParameterizedTest
  @CsvSource({
    "'purpose: play, lo_pct: 9, hi_pct: 27', 2",
    "'purpose: play, lo_pct: 10, hi_pct: 26', 0",
    "'purpose: drainage, lo_pct: 18, hi_pct: 27', 0",
    "'purpose: drainage, lo_pct: 8, hi_pct: 27', 1",
    "'purpose: ball roll, fc_pct: 40, wp_pct: 12', 1"
  })
  void limitsBeyondTheSoilAreRemarkedOnAndKept(String rule, int remarks) throws IOException {
    assertThat(found(rule, green(26, 10), List.of()).remarks()).hasSize(remarks);
    assertThat(found(rule, green(Double.NaN, Double.NaN), List.of()).remarks()).isEmpty();
  }
}
