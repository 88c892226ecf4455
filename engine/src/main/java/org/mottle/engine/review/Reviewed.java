package org.mottle.engine.review;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.mottle.engine.adjust.Drying;
import org.mottle.engine.adjust.OperatorOffset;
import org.mottle.engine.survey.Reading;

/**
 * What the review came to.
 *
 * @param visits in the order given
 * @param controls readings of control stations, as they were
 * @param elsewhere readings that lie where their green is not, with their finding
 * @param findings about whole surveys or about readings that belong to no visit
 * @param drying by survey, where control stations were read
 * @param operators by survey, where several people or probes read
 */
public record Reviewed(
    List<ReviewedVisit> visits,
    List<Reading> controls,
    List<Reading> elsewhere,
    List<Finding> findings,
    Map<String, Drying> drying,
    Map<String, List<OperatorOffset>> operators) {
  public Reviewed {
    visits = List.copyOf(visits);
    controls = List.copyOf(controls);
    elsewhere = List.copyOf(elsewhere);
    findings = List.copyOf(findings);
  }

  /** Every finding, those of whole surveys first. */
  public List<Finding> allFindings() {
    return Stream.concat(findings.stream(), visits.stream().flatMap(v -> v.findings().stream()))
        .toList();
  }
}
