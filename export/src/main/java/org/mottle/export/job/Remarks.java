package org.mottle.export.job;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.population.Finding;

/**
 * What a reader should know of a map, without the long words on two populations of readings: they
 * have fields of their own ({@code pop_seen}, {@code pop_why}, {@code pop_next}).
 */
final class Remarks {

  private Remarks() {}

  static List<String> of(Outcome outcome) {
    Optional<Finding> finding =
        outcome instanceof Outcome.Mapped map
            ? map.basis().kriging().flatMap(Outcome.KrigingBasis::populations)
            : Optional.empty();
    return finding
        .map(
            f ->
                outcome.remarks().stream()
                    .filter(r -> !r.equals(f.why()) && !f.next().contains(r))
                    .map(r -> withoutEnd(r, ": " + f.seen()))
                    .toList())
        .orElse(outcome.remarks());
  }

  private static String withoutEnd(String remark, String end) {
    return remark.endsWith(end)
        ? remark.substring(0, remark.length() - end.length()) + " (see pop_seen)"
        : remark;
  }
}
