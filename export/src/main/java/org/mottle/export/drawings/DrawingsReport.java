package org.mottle.export.drawings;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.mottle.export.record.Json;
import org.mottle.export.write.Delivered;

/**
 * What was drawn.
 *
 * @param delivered files
 * @param figures shapes a layer of the drawings, overlays, points, and how all is placed
 * @param told what the user should know
 */
public record DrawingsReport(Delivered delivered, Map<String, Object> figures, List<String> told) {
  public DrawingsReport {
    told = List.copyOf(told);
  }

  public String text() {
    StringBuilder text = new StringBuilder();
    told.forEach(line -> text.append(line).append('\n'));
    text.append(figures.get("points")).append(" points, ");
    text.append(figures.get("overlays")).append(" overlays, ");
    text.append(delivered.files().size()).append(" files in ");
    return text.append(delivered.folder()).append('\n').toString();
  }

  public String json() {
    Map<String, Object> all = new LinkedHashMap<>(figures);
    all.put("told", told);
    return Json.text(all);
  }
}
