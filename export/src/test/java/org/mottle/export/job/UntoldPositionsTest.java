package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.PositionSettings;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;

/** What is told of positions of which nothing is known. */
class UntoldPositionsTest {

  private static List<String> told(PositionSettings settings, Reading... readings) {
    Green green = Green.of("G1", new GeometryFactory().toGeometry(new Envelope(0, 20, 0, 20)));
    return UntoldPositions.of(
        List.of(new GreenSurvey(green, "S1", List.of(readings), Optional.empty())), settings);
  }

  private static Reading reading(String source, double sdM) {
    Reading plain = Reading.of("G1", "1", 5, 5, 20);
    return new Reading(
        plain.label(),
        new Reading.Position(plain.x(), plain.y(), Double.NaN, source, sdM),
        plain.moisture(),
        plain.protocol(),
        plain.role(),
        plain.quality());
  }

  @Test
  void nothingIsKnownOfAny() {
    assertThat(told(PositionSettings.RECORDED, reading("", Double.NaN)))
        .containsExactly(
            "positions are taken as exact, since nothing says how exact they are; say pos_sd_m or"
                + " pos_src in the readings, or positions.jitter_m (--position-sd)");
  }

  @Test
  void nothingIsKnownOfSome() {
    assertThat(told(PositionSettings.RECORDED, reading("rtk", Double.NaN), reading("", Double.NaN)))
        .singleElement()
        .asString()
        .startsWith("the positions of 1 of 2 readings are taken as exact");
  }

  @Test
  void aSourceThatIsNotKnownIsNamedWithThoseThatAre() {
    assertThat(told(PositionSettings.RECORDED, reading("sextant", Double.NaN)))
        .hasSize(2)
        .first()
        .asString()
        .startsWith("pos_src sextant is not known, known are ")
        .contains("rtk", "track");
  }

  @Test
  void whatIsSaidIsNotAskedFor() {
    assertThat(told(PositionSettings.RECORDED, reading("sextant", 0.4))).isEmpty();
    assertThat(told(PositionSettings.RECORDED, reading("Phone", Double.NaN))).isEmpty();
    assertThat(told(new PositionSettings(0, Double.NaN), reading("", Double.NaN))).isEmpty();
  }
}
