package org.mottle.demo.truth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;

class FaultTest {

  /** Areas at half height as the scenario states them; G8 by its spots' circles, 18 m². */
  @ParameterizedTest
  @CsvSource({"G3,94", "G5,103", "G6,70", "G8,18"})
  void areasAtHalfHeight(String id, double areaM2) {
    GreenSite green = CoursePlace.green(id);
    double area = GreenTruth.halfHeightArea(green, Fault.of(id).get(0));
    assertThat(area).isCloseTo(areaM2, within(1.0));
  }

  @Test
  void soundGreensHaveNone() {
    for (String id : new String[] {"G1", "G2", "G4", "G7", "G9"}) {
      assertThat(Fault.of(id)).as(id).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource({"G3,7,10,5,4,8", "G5,0,0,-6,-7,-1", "G6,8,4,0,0,8", "G8,-2,-5,-7,-10,-8"})
  void amplitudesOfTheFiveSurveys(
      String id, double s1, double s2, double s3, double s4, double s5) {
    Fault fault = Fault.of(id).get(0);
    assertThat(fault.amplitudes().subList(0, 5)).containsExactly(s1, s2, s3, s4, s5);
    assertThat(fault.amplitudes()).hasSize(Survey.values().length);
  }

  @Test
  void theDeadHeadIsMadeGoodBySeptember() {
    assertThat(Fault.of("G5").get(0).addedPct(Survey.S6, 10, -4)).isEqualTo(0);
    assertThat(Fault.of("G5").get(0).addedPct(Survey.S4, 10, -4)).isCloseTo(-7, within(0.01));
  }
}
