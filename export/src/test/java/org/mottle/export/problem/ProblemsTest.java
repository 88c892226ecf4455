package org.mottle.export.problem;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ProblemsTest {

  @Test
  void nothingWrongThrowsNothing() {
    assertThatCode(() -> new Problems().require(true, "never").throwIfAny())
        .doesNotThrowAnyException();
  }

  @Test
  void everyProblemIsToldAtOnceInOrder() {
    Problems problems =
        new Problems()
            .add("row %d: '%s' is not a number", 3, "x")
            .require(false, "need at least %d readings, found %d", 3, 1)
            .add(new InputRefused("from elsewhere"));
    assertThatThrownBy(problems::throwIfAny)
        .isInstanceOfSatisfying(
            InputRefused.class,
            e ->
                assertThat(e.lines())
                    .containsExactly(
                        "row 3: 'x' is not a number",
                        "need at least 3 readings, found 1",
                        "from elsewhere"));
  }

  @Test
  void aLineWithoutValuesIsTakenAsItStands() {
    assertThat(new Problems().add("100 % of it").lines()).containsExactly("100 % of it");
  }

  @Test
  void numbersLookTheSameInEveryLocale() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertThat(new Problems().add("%.2f m", 1.5).lines()).containsExactly("1.50 m");
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void longListsAreCut() {
    List<Integer> rows = IntStream.rangeClosed(1, 57).boxed().toList();
    assertThat(Problems.listed(rows, 3)).isEqualTo("1, 2, 3 and 54 more");
    assertThat(Problems.listed(rows)).endsWith("19, 20 and 37 more");
    assertThat(Problems.listed(rows.subList(0, 2))).isEqualTo("1, 2");
  }
}
