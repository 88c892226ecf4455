package org.mottle.export.read;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.mottle.engine.survey.Reading;
import org.mottle.export.problem.Problems;

/** Why stations are where they are, out of the column {@code role}; empty is {@code plan}. */
final class Roles {
  private static final int SHOWN = 8;

  private Roles() {}

  static Reading.Role[] of(Columns columns, FeatureTable table, Problems problems) {
    String[] texts = columns.texts("role");
    Reading.Role[] roles = new Reading.Role[texts.length];
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < texts.length; i++) {
      Optional<Reading.Role> role =
          texts[i].isEmpty() ? Optional.of(Reading.Role.PLAN) : named(texts[i]);
      roles[i] = role.orElse(Reading.Role.PLAN);
      if (role.isEmpty()) {
        wrong.add("%d ('%s')".formatted(table.rows().get(i).number(), texts[i]));
      }
    }
    problems.require(
        wrong.isEmpty(),
        "%s: role is none of %s in %s %s",
        table.name(),
        Arrays.stream(Reading.Role.values())
            .map(Reading.Role::code)
            .collect(Collectors.joining(", ")),
        table.unit(wrong.size()),
        Problems.listed(wrong, SHOWN));
    return roles;
  }

  private static Optional<Reading.Role> named(String text) {
    String wanted = text.toLowerCase(Locale.ROOT);
    return Arrays.stream(Reading.Role.values()).filter(r -> r.code().equals(wanted)).findFirst();
  }
}
