package org.mottle.export.write;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.mottle.export.verify.Verification;

class DeliveryTest {
  @Test
  void delivers() throws IOException {
    Path out = Path.of("target/cross-read/odd");
    Examples.deliver(out);
    assertThat(Verification.of(out).faults()).isEmpty();
  }
}
