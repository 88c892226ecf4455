package org.mottle.export.review;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mottle.export.schema.FeatureRow;
import org.mottle.export.schema.Field;
import org.mottle.export.schema.LayerData;

/** Reviewed readings as CSV, under the names of the fields: what {@code map} reads. */
final class ReviewedTable {

  private static final Pattern PLAIN = Pattern.compile("[^,\"\\n]*");

  private ReviewedTable() {}

  static String csv(LayerData readings) {
    List<Field> fields = readings.layer().fields();
    StringBuilder text = new StringBuilder();
    text.append(fields.stream().map(Field::name).collect(Collectors.joining(","))).append('\n');
    for (FeatureRow row : readings.rows()) {
      text.append(
              Stream.iterate(0, i -> i + 1)
                  .limit(fields.size())
                  .map(i -> cell(row.value(i)))
                  .collect(Collectors.joining(",")))
          .append('\n');
    }
    return text.toString();
  }

  private static String cell(Object value) {
    if (value == null) {
      return "";
    }
    String text =
        value instanceof Double d
            ? java.math.BigDecimal.valueOf(Math.rint(d * 1e4) / 1e4)
                .stripTrailingZeros()
                .toPlainString()
            : value.toString();
    return PLAIN.matcher(text).matches() ? text : '"' + text.replace("\"", "\"\"") + '"';
  }
}
