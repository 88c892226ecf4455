package org.mottle.engine.irrigation;

import java.util.List;
import java.util.Optional;

/**
 * What the cans of one area and run say.
 *
 * @param area the cans
 * @param values their catches in one unit
 * @param uniformity empty when refused; {@code missing} says why
 * @param applied water on the average
 * @param runTime multiplier and minutes
 * @param scheduling coefficients of 1, 2 and 5 % of the area, or why there is none
 * @param told figures that are missing, and cautions
 */
public record AreaAudit(
    AuditArea area,
    CanValues values,
    Optional<UniformityEstimate> uniformity,
    Applied applied,
    RunTime runTime,
    List<Scheduling> scheduling,
    Told told) {

  /**
   * @param missing figures that could not be given, each with its reason
   * @param cautions to know before the figures are used
   */
  public record Told(List<Missing> missing, List<Caution> cautions) {
    public Told {
      missing = List.copyOf(missing);
      cautions = List.copyOf(cautions);
    }
  }

  public AreaAudit {
    scheduling = List.copyOf(scheduling);
  }
}
