package org.mottle.export.audit;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mottle.engine.irrigation.AuditSettings;
import org.mottle.export.settings.SiteSettings;

/**
 * One audit.
 *
 * @param files what to read
 * @param site settings in force
 * @param settings how it is reckoned
 * @param folder where to write; empty: figures only
 * @param overwrite whether an earlier delivery may be replaced
 * @param threads at least 1
 */
public record AuditRequest(
    Files files,
    SiteSettings site,
    AuditSettings settings,
    Optional<Path> folder,
    boolean overwrite,
    int threads) {

  /**
   * @param cans catch cans
   * @param greens outlines; empty: no scheduling coefficients, no coverage
   * @param heads sprinkler heads; empty: no coverage, no pressure
   */
  public record Files(String cans, Optional<String> greens, Optional<String> heads) {
    List<String> all() {
      List<String> all = new ArrayList<>(List.of(cans));
      greens.ifPresent(all::add);
      heads.ifPresent(all::add);
      return all;
    }
  }
}
