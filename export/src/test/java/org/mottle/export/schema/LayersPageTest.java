package org.mottle.export.schema;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The page of layers and fields is what the code writes; -Dmottle.rewrite=true brings it up. */
class LayersPageTest {

  @Test
  void thePageIsTheSchema() throws IOException {
    Path page = Path.of("..", "docs", "layers.md");
    String wanted =
        "# Layers and fields\n\nThe same names in every format. Written from the code by a test; do not"
            + " edit by hand.\n\n"
            + DataDictionary.markdown(Layers.ALL).strip()
            + "\n";
    if (Boolean.getBoolean("mottle.rewrite")) {
      Files.writeString(page, wanted);
    }
    assertThat(Files.readString(page)).isEqualTo(wanted);
  }
}
