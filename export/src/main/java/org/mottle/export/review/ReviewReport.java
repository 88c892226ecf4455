package org.mottle.export.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.review.Severity;
import org.mottle.export.field.FieldWork;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.write.Delivered;

/**
 * What a review has to say.
 *
 * @param work what was read and found
 * @param told on the way
 * @param figures of the summary
 * @param delivered the files
 */
public record ReviewReport(
    FieldWork work, List<String> told, Map<String, ?> figures, Delivered delivered) {

  /** Whether every reading could be placed and no visit is beyond use. */
  public boolean allUsable() {
    return work.left().isEmpty()
        && work.reviewed().visits().stream().allMatch(v -> v.obstacle().isEmpty());
  }

  /** One line a visit that is not to be mapped, and for readings that could not be placed. */
  public List<String> unusable() {
    List<String> lines = new ArrayList<>();
    for (ReviewedVisit v : work.reviewed().visits()) {
      v.obstacle()
          .ifPresent(
              o ->
                  lines.add(v.visit().surveyId() + ", green " + v.visit().green().id() + ": " + o));
    }
    if (!work.left().isEmpty()) {
      lines.add(work.left().size() + " readings could not be placed");
    }
    return lines;
  }

  public String json() {
    return Json.text(figures);
  }

  /** For the terminal: warnings and rejections, one line each, then a grade a visit. */
  public String text() {
    List<String> lines = new ArrayList<>(told);
    for (Finding f : work.reviewed().allFindings()) {
      if (f.severity() != Severity.NOTE) {
        lines.add(f.line());
      }
    }
    for (ReviewedVisit v : work.reviewed().visits()) {
      lines.add(
          "%s, green %s: grade %s, %s"
              .formatted(
                  v.visit().surveyId(),
                  v.visit().green().id(),
                  v.grade().letter(),
                  v.grade().letter().meaning()));
    }
    lines.addAll(delivered.notes());
    lines.add(delivered.files().size() + " files in " + delivered.folder());
    lines.add(Provenance.DISCLAIMER);
    return String.join("\n", lines) + "\n";
  }
}
