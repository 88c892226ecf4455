package org.mottle.engine.irrigation;

import java.util.Optional;

/**
 * How an audit is reckoned.
 *
 * @param rule for counts that do not divide by four
 * @param replicates of the bootstrap
 * @param seed of the bootstrap
 * @param need what a day's run is to replace; empty: no run minutes
 */
public record AuditSettings(LowQuarter rule, int replicates, long seed, Optional<WaterNeed> need) {
  public static final AuditSettings DEFAULT =
      new AuditSettings(LowQuarter.UP, 2000, 1, Optional.empty());

  public AuditSettings with(LowQuarter newRule) {
    return new AuditSettings(newRule, replicates, seed, need);
  }

  public AuditSettings withSeed(long newSeed) {
    return new AuditSettings(rule, replicates, newSeed, need);
  }

  public AuditSettings with(WaterNeed newNeed) {
    return new AuditSettings(rule, replicates, seed, Optional.of(newNeed));
  }
}
