package org.mottle.engine.water;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * Files of this project's catalogue, computed apart with numpy from the published formulas. The
 * first column is a name, in which a comma may stand.
 */
final class PublishedRows {
  private PublishedRows() {}

  /** The last {@code numbers} columns of every row. */
  static List<double[]> of(String file, int numbers) throws IOException {
    try (var in = PublishedRows.class.getResourceAsStream("/validation/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.split(","))
          .map(c -> Arrays.copyOfRange(c, c.length - numbers, c.length))
          .map(c -> Arrays.stream(c).mapToDouble(Double::parseDouble).toArray())
          .toList();
    }
  }
}
