package org.mottle.export.read;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/** The rows of one survey out of a table that holds several. */
final class SurveyFilter {

  private SurveyFilter() {}

  /**
   * @param id of the survey, as it stands in {@code surv_id}
   * @throws InputRefused when no row is of that survey
   */
  static FeatureTable of(FeatureTable table, InputOptions options, String id) {
    Columns columns = new Columns(table, options, new Problems());
    if (columns.find("surv_id").isEmpty()) {
      throw new InputRefused(
          "%s has no column surv_id to find survey '%s' by; its columns are %s: leave out --survey, or map it in the settings, like columns: {surv_id: Visit}"
              .formatted(table.name(), id, columns.named()));
    }
    String[] surveys = columns.texts("surv_id");
    List<FeatureTable.Row> rows = new ArrayList<>();
    Set<String> known = new LinkedHashSet<>();
    for (int i = 0; i < surveys.length; i++) {
      known.add(surveys[i]);
      if (surveys[i].equals(id)) {
        rows.add(table.rows().get(i));
      }
    }
    if (rows.isEmpty()) {
      throw new InputRefused(
          "%s has no survey '%s'; it has %s"
              .formatted(table.name(), id, Problems.listed(List.copyOf(known))));
    }
    return new FeatureTable(table.origin(), table.columns(), rows, table.crs(), table.notes());
  }
}
