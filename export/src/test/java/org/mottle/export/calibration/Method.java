package org.mottle.export.calibration;

import java.util.List;

/** A way to map the greens of one course, all its surveys at once. Used by several threads. */
interface Method {

  String name();

  /** One map a case, in the order given; never fewer. */
  Mapping map(List<GreenCase> course);

  /**
   * @param greens one a case
   * @param variograms found on the way; may be empty
   */
  record Mapping(List<MappedGreen> greens, List<VariogramClaim> variograms) {
    public Mapping {
      greens = List.copyOf(greens);
      variograms = List.copyOf(variograms);
    }
  }
}
