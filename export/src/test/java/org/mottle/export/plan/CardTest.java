package org.mottle.export.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class CardTest {

  /** A page to be looked at, and to be printed by a browser. */
  @Test
  void leavesCardsToLookAt() throws IOException {
    Path folder = Files.createDirectories(Path.of("target", "cards"));
    for (int n : new int[] {4, 18, 24, 40, 80}) {
      String page = Card.page(List.of(HandMade.plan("G1", "Alder", n, 2)), HandMade.CRS);
      Files.writeString(folder.resolve("card" + n + ".html"), page);
      assertThat(page).contains("Green Alder (G1)");
    }
  }
}
