package org.mottle.engine.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.mottle.engine.survey.Reading;

/** Where a finding says that it is. */
class FindingTest {
  private static Reading row(int row, String file) {
    Reading r = Reading.of("G1", "A", 0, 0, 20);
    return r.withLabel(new Reading.Label("G1", "S1", "A", 0, 1, row, file));
  }

  private static String line(Reading... readings) {
    return new Finding(Rule.RANGE, Severity.REJECT, "S1", "G1", List.of(readings), "odd", "look")
        .line();
  }

  @Test
  void oneFileNeedsNoName() {
    assertThat(line(row(7, ""))).isEqualTo("S1, green G1: Q01 reject: odd; look");
    assertThat(line()).isEqualTo("S1, green G1: Q01 reject: odd; look");
  }

  @Test
  void ofSeveralFilesEachIsNamedWithItsRows() {
    assertThat(line(row(7, "a.csv"))).isEqualTo("S1, green G1, a.csv row 7: Q01 reject: odd; look");
    assertThat(line(row(7, "a.csv"), row(2, "b.csv"), row(9, "a.csv")))
        .isEqualTo("S1, green G1, a.csv rows 7, 9, b.csv row 2: Q01 reject: odd; look");
    Reading[] many = IntStream.range(2, 23).mapToObj(i -> row(i, "a.csv")).toArray(Reading[]::new);
    assertThat(line(many))
        .isEqualTo("S1, green G1, a.csv rows 2, 3, 4, 5 and 17 more: Q01 reject: odd; look");
    assertThat(
            new Finding(Rule.RANGE, Severity.WARN, "", "", List.of(row(7, "a.csv")), "odd", "")
                .line())
        .isEqualTo("a.csv row 7: Q01 warn: odd");
  }

  @Test
  void thePlaceOfAReading() {
    assertThat(row(7, "").label().at()).isEqualTo("row 7");
    assertThat(row(7, "a.csv").label().withGreen("G2").withStation("B").at())
        .isEqualTo("a.csv row 7");
  }
}
