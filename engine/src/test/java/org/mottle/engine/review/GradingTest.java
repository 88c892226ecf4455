package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mottle.engine.review.InventedVisit.reviewed;
import static org.mottle.engine.review.Verdicts.FULL;
import static org.mottle.engine.review.Verdicts.alone;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mottle.engine.survey.Reading;

/** Grades by places, positions and what is not known or rejected. */
class GradingTest {
  private static Grade grade(InventedVisit invented) {
    return reviewed(invented.controls(-0.1), invented).visits().get(0).grade();
  }

  @Test
  void gradesFollowTheNumberOfPlaces() {
    assertThat(grade(new InventedVisit("G1", "S1", 20, 1)))
        .isEqualTo(new Grade(Grade.Letter.A, List.of(), List.of()));
    InventedVisit sixteen = spread(16);
    assertThat(grade(sixteen).letter()).isEqualTo(Grade.Letter.A);
    assertThat(grade(spread(15)).letter()).isEqualTo(Grade.Letter.B);
    assertThat(grade(spread(12)).letter()).isEqualTo(Grade.Letter.B);
    assertThat(grade(spread(11)).letter()).isEqualTo(Grade.Letter.C);
    assertThat(grade(spread(8)).letter()).isEqualTo(Grade.Letter.C);
    assertThat(grade(spread(7)).letter()).isEqualTo(Grade.Letter.D);
    assertThat(grade(spread(7)).raise()).contains("read 16 places or more");
  }

  /** Stations of the grid taken out evenly, so that no ground is left without. */
  private static InventedVisit spread(int stations) {
    InventedVisit invented = new InventedVisit("G1", "S1", stations, 1);
    int across = (int) Math.ceil(Math.sqrt(stations * 1.25));
    int up = (stations + across - 1) / across;
    for (int i = 0; i < stations; i++) {
      int row = i / across;
      int inRow = row < up - 1 ? across : stations - across * (up - 1);
      invented.x[i] = 25.0 * (i % across + 0.5) / inRow;
      invented.y[i] = 20 * (row + 0.5) / up;
    }
    return invented;
  }

  @Test
  void gradesFollowThePositions() {
    double[] sd = {1, 1.1, 2.5, 2.6, 4, 4.1, Double.NaN};
    Grade.Letter[] letters = {
      Grade.Letter.A,
      Grade.Letter.B,
      Grade.Letter.B,
      Grade.Letter.C,
      Grade.Letter.C,
      Grade.Letter.D,
      Grade.Letter.C
    };
    for (int k = 0; k < sd.length; k++) {
      InventedVisit invented = new InventedVisit("G1", "S1", FULL, 1);
      invented.positionSdM = sd[k];
      assertThat(grade(invented).letter()).as("%s m", sd[k]).isEqualTo(letters[k]);
    }
  }

  @Test
  void gradesFollowWhatIsNotKnownOrRejected() {
    InventedVisit sound = new InventedVisit("G1", "S1", FULL, 1);
    assertThat(alone(sound).grade().letter()).as("no control stations").isEqualTo(Grade.Letter.C);
    InventedVisit one = new InventedVisit("G1", "S1", FULL, 1);
    one.pct[7] = 0.5;
    assertThat(grade(one).letter()).as("5 %% rejected").isEqualTo(Grade.Letter.A);
    one.pct[12] = 0.6;
    assertThat(grade(one).letter()).as("10 %% rejected").isEqualTo(Grade.Letter.B);
    InventedVisit rain = new InventedVisit("G1", "S1", FULL, 1);
    rain.rainH = 5;
    assertThat(grade(rain).letter()).isEqualTo(Grade.Letter.B);
    InventedVisit chosen = new InventedVisit("G1", "S1", FULL, 1);
    Arrays.fill(chosen.role, Reading.Role.POINT_OF_INTEREST);
    assertThat(grade(chosen).letter()).isEqualTo(Grade.Letter.C);
    InventedVisit crews = new InventedVisit("G1", "S1", FULL, 1);
    Arrays.fill(crews.operator, 0, 5, "B");
    assertThat(grade(crews).letter()).as("operators share no station").isEqualTo(Grade.Letter.C);
  }
}
