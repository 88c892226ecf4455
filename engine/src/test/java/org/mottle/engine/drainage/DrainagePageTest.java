package org.mottle.engine.drainage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The table that docs/drainage.md publishes is the one in use. */
class DrainagePageTest {
  private static final Path PAGE = Path.of("..", "docs", "drainage.md");

  private static String row(Sign sign) {
    StringBuilder row = new StringBuilder("| " + sign.statement() + " |");
    for (Hypothesis h : Hypothesis.values()) {
      row.append(String.format(Locale.ROOT, " %.2f |", EvidenceTable.proposal().chance(sign, h)));
    }
    return row.toString();
  }

  @Test
  void the_published_table_is_the_one_in_use() throws IOException {
    List<String> page = Files.readAllLines(PAGE);
    for (Sign sign : Sign.values()) {
      assertThat(page).contains(row(sign));
    }
    assertThat(page.stream().filter(l -> l.matches("\\|.*\\| 0\\.\\d\\d \\|$")))
        .hasSize(Sign.values().length);
  }

  @Test
  void the_page_names_every_hypothesis_and_its_test() throws IOException {
    List<String> page = Files.readAllLines(PAGE);
    for (Hypothesis h : Hypothesis.values()) {
      if (h != Hypothesis.NONE) {
        assertThat(page).contains("| " + h.label() + " | " + h.test() + " |");
      }
    }
  }
}
