package org.mottle.engine.population;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.mottle.engine.population.Finding.Advice;

/** What the user is told. */
class FindingTest {
  private static final TwoFound SPOTS = Spots.atPointsOfInterest();

  private static String all(Finding f) {
    return String.join(" ", f.seen(), f.why(), String.join(" ", f.next()))
        + String.join(" ", f.cautions());
  }

  @Test
  void spotsAskForCoresAtTheDriestStationsAndSomeToCompare() {
    Finding finding = Finding.of(SPOTS, SpotPattern.of(SPOTS, 1));
    assertThat(finding.advice()).isEqualTo(Advice.MAP_APART_AND_TEST);
    assertThat(finding.seen()).startsWith("S4: 7 of 24 stations read low");
    assertThat(finding.why()).contains("1 of the 18 stations").contains("water-repellent spots");
    assertThat(finding.cores()).hasSize(5);
    StationValues values = SPOTS.surveys().get(0);
    for (int c = 0; c < 5; c++) {
      StationRef core = finding.cores().get(c);
      assertThat(SPOTS.isLow(0, core.station())).isEqualTo(c < 3);
      assertThat(finding.next().get(0))
          .contains(
              String.format(Locale.ROOT, "%s (E %.1f", core.name(), values.x(core.station())));
    }
    assertThat(finding.next().get(1)).contains("5-60 s slight").contains("> 3600 s extreme");
    assertThat(all(finding)).contains("Adding water alone may not rewet").contains("agronomist");
  }

  @Test
  void aSurveyWithoutLowReadingsIsSaidToHaveNone() {
    InventedGreens greens = new InventedGreens(21);
    TwoFound found =
        (TwoFound) InventedGreens.test(greens.two(24, 8, 12, 1.2), greens.normal(18, 15, 1.2));
    Finding finding = Finding.of(found, SpotPattern.of(found, 1));
    assertThat(finding.seen()).contains("8 of 24 stations read low").contains("none of 18");
    assertThat(finding.cores()).allMatch(core -> core.survey() == 0);
  }

  @Test
  void aPatchIsMappedAsOnePopulationAndAsksForNoDrops() {
    SpotPattern together = new SpotPattern(SpotPattern.Verdict.TOGETHER, 0, 6, 18, 0.7, 0.002, 0.6);
    Finding finding = Finding.of(SPOTS, together);
    assertThat(finding.advice()).isEqualTo(Advice.MAP_AS_ONE);
    assertThat(finding.why()).contains("0.2 % of draws").contains("ordinary dry patch");
    assertThat(finding.cores()).isEmpty();
    assertThat(finding.next()).singleElement().asString().contains("check the sprinklers");
  }

  @Test
  void whereThePatternDoesNotTellADropTestWould() {
    SpotPattern open = new SpotPattern(SpotPattern.Verdict.CANNOT_TELL, 0, 3, 18, 0.4, 0.2, 0.2);
    Finding finding = Finding.of(SPOTS, open);
    assertThat(finding.advice()).isEqualTo(Advice.MAP_AS_ONE_AND_TEST);
    assertThat(all(finding)).contains("do not tell").contains("penetration");
  }

  @Test
  void aWetExceptionIsNotTakenForRepellency() {
    TwoFound found = (TwoFound) InventedGreens.test(new InventedGreens(21).two(30, 24, 10, 1.5));
    Finding finding = Finding.of(found, SpotPattern.of(found, 1));
    assertThat(finding.advice()).isEqualTo(Advice.MAP_AS_ONE);
    assertThat(finding.why()).contains("the exception is wet");
  }

  @Test
  void aRefusalSaysWhatWouldChangeIt() {
    CannotTell refused = (CannotTell) InventedGreens.test(new InventedGreens(21).normal(24, 20, 2));
    Finding finding = Finding.of(refused);
    assertThat(finding.advice()).isEqualTo(Advice.MAP_AS_ONE);
    assertThat(finding.seen()).startsWith("cannot tell one population of readings from two");
    assertThat(finding.next()).containsExactly(refused.why().remedy());
  }

  @Test
  void nothingIsDiagnosedOrOrdered() {
    for (SpotPattern.Verdict verdict : SpotPattern.Verdict.values()) {
      Finding finding = Finding.of(SPOTS, new SpotPattern(verdict, 0, 3, 18, 0.4, 0.2, 0.01));
      assertThat(all(finding)).doesNotContainPattern("\\b(must|will|faulty|is repellent)\\b");
    }
  }
}
