package org.mottle.export.plan;

import java.util.Locale;
import org.mottle.engine.design.PlanOutcome.NotPlanned;

/** One green in one line of plain words. */
final class PlanLine {
  private PlanLine() {}

  static String of(GreenPlan plan) {
    StringBuilder line = new StringBuilder("green ").append(plan.label()).append(": ");
    line.append(Count.of(plan));
    line.append(
        String.format(
            Locale.ROOT,
            ", %.1f m apart; walk %.0f m, about %.0f min with %d insertions",
            plan.spacingM(),
            plan.plan().walkM(),
            Math.max(1, plan.plan().minutes()),
            plan.plan().insertions()));
    Prospect prospect = plan.prospect();
    if (!Double.isNaN(prospect.mapSdPct())) {
      line.append(
          String.format(
              Locale.ROOT,
              "; SD of the map about %.1f %% (%s variogram)",
              prospect.mapSdPct(),
              prospect.mapBy()));
    }
    if (!Double.isNaN(prospect.meanHalfPct())) {
      line.append(
          String.format(
              Locale.ROOT, "; mean to ±%.1f %% (%s)", prospect.meanHalfPct(), prospect.meanBy()));
    } else if (!prospect.meanBy().isEmpty()) {
      line.append("; ").append(prospect.meanBy());
    }
    prospect.foundInShort().ifPresent(words -> line.append("; ").append(words));
    if (!plan.note().isEmpty()) {
      line.append("; ").append(plan.note());
    }
    return line.toString();
  }

  static String of(NotPlanned without) {
    return "green " + without.green().id() + ": NO PLAN: " + without.why();
  }
}
