package org.mottle.demo.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoursePlaceTest {

  /** The areas of the course's table. */
  @ParameterizedTest
  @CsvSource({
    "G1,448", "G2,516", "G3,531", "G4,576", "G5,398", "G6,604", "G7,450", "G8,601", "G9,525"
  })
  void areasAreThoseOfTheTable(String id, double areaM2) {
    assertThat(CoursePlace.green(id).ring().area()).isCloseTo(areaM2, within(1.0));
  }

  @Test
  void cellsFillTheGreen() {
    for (GreenSite green : CoursePlace.greens()) {
      double covered = green.cells(0.5).size() * 0.25;
      assertThat(covered).as(green.id()).isCloseTo(green.ring().area(), within(3.0));
    }
  }

  @Test
  void collarsAreOneMetreTwentyWide() {
    for (GreenSite green : CoursePlace.greens()) {
      Ring collar = green.collar();
      for (int i = 0; i < collar.size(); i++) {
        Point p = collar.vertex(i);
        assertThat(-green.ring().depth(p.x(), p.y()))
            .as(green.id() + " vertex " + i)
            .isCloseTo(1.2, within(0.05));
      }
    }
  }

  @Test
  void headsStandOneMetreFiftyOutsideAndWaterInwards() {
    for (GreenSite green : CoursePlace.greens()) {
      assertThat(Head.of(green)).as(green.id()).hasSizeBetween(4, 5);
      for (Head head : Head.of(green)) {
        Point p = head.place();
        assertThat(-green.ring().depth(p.x(), p.y())).as(head.id()).isCloseTo(1.5, within(0.12));
        assertThat(head.arc().sweep()).as(head.id()).isBetween(90, 180);
        assertThat(head.reaches(p.x() / 2, p.y() / 2)).as(head.id() + " inwards").isTrue();
        assertThat(head.reaches(1.3 * p.x(), 1.3 * p.y())).as(head.id() + " outwards").isFalse();
      }
    }
  }

  @Test
  void bunkerLipsLieOneMetreTwentyOutsideTheFourthGreen() {
    Ring green = CoursePlace.green("G4").ring();
    for (Bunker bunker : Bunker.of("G4")) {
      double x = bunker.centre().x();
      double lip = bunker.centre().y() + bunker.halfY();
      double edge = lip;
      while (!green.contains(x, edge)) {
        edge += 0.01;
      }
      assertThat(edge - lip).as(bunker.id() + ", along y").isCloseTo(1.2, within(0.03));
      assertThat(bunker.depth(bunker.centre().x(), bunker.centre().y())).isEqualTo(0.9);
    }
    assertThat(Bunker.of("G1")).isEmpty();
  }
}
