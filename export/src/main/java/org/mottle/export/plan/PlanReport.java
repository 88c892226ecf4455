package org.mottle.export.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.mottle.engine.design.PlanOutcome.NotPlanned;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.write.Delivered;

/**
 * What a planning run has to say.
 *
 * @param plans greens with stations
 * @param without greens without, each with its reason
 * @param told what was detected or decided on the way, for the user to see
 * @param figures of the summary
 * @param delivered the files
 */
public record PlanReport(
    List<GreenPlan> plans,
    List<NotPlanned> without,
    List<String> told,
    Map<String, ?> figures,
    Delivered delivered) {

  public PlanReport {
    plans = List.copyOf(plans);
    without = List.copyOf(without);
    told = List.copyOf(told);
  }

  /** Whether every green asked for has stations. */
  public boolean allPlanned() {
    return without.isEmpty();
  }

  /** One line a green without stations, with the reason. */
  public List<String> unplanned() {
    return without.stream().map(PlanLine::of).toList();
  }

  public String json() {
    return Json.text(figures);
  }

  /** For the terminal. */
  public String text() {
    List<String> lines = new ArrayList<>(told);
    plans.forEach(plan -> lines.add(PlanLine.of(plan)));
    lines.addAll(unplanned());
    lines.addAll(delivered.notes());
    lines.add(
        plans.size()
            + " of "
            + (plans.size() + without.size())
            + " planned; "
            + delivered.files().size()
            + " files in "
            + delivered.folder()
            + "; print cards.html, a page for each green");
    lines.add(Provenance.DISCLAIMER);
    return String.join("\n", lines) + "\n";
  }
}
