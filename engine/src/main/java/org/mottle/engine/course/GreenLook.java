package org.mottle.engine.course;

import java.time.OffsetDateTime;
import java.util.Optional;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.water.Watering;

/**
 * One green in the overview of a course, by its last survey.
 *
 * @param outcome its map, or why there is none
 * @param record what is known of the visit
 * @param lastRead when the last reading was taken; empty when no instant is recorded
 * @param like which visits it is compared with
 * @param ranks among them; empty where it is compared with none, or the figure is not known
 */
public record GreenLook(
    Outcome outcome,
    VisitRecord record,
    Optional<OffsetDateTime> lastRead,
    LikeVisits like,
    Ranks ranks) {

  /**
   * @param dry by share of dry ground, 1 the largest
   * @param wet by share of wet ground
   * @param litres by water wanted on dry ground
   * @param uneven by coefficient of variation, 1 the least even
   */
  public record Ranks(
      Optional<Rank> dry, Optional<Rank> wet, Optional<Rank> litres, Optional<Rank> uneven) {
    static final Ranks NONE =
        new Ranks(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /** Share of the green below the band; not known without a map or a band. */
  public Interval dryShare() {
    return mapped().map(m -> m.evenness().dryShare()).orElse(Interval.UNKNOWN);
  }

  /** Share of the green above the band. */
  public Interval wetShare() {
    return mapped().map(m -> m.evenness().wetShare()).orElse(Interval.UNKNOWN);
  }

  /** Coefficient of variation of the ground, %. */
  public Interval variationPct() {
    return mapped().map(m -> m.evenness().variationPct()).orElse(Interval.UNKNOWN);
  }

  /** Water that dry ground wants in one pass, L; not known where it is not worked out. */
  public Interval litres() {
    return mapped()
        .map(Outcome.Mapped::watering)
        .filter(Watering.Wanted.class::isInstance)
        .map(w -> ((Watering.Wanted) w).dryGround().litres())
        .orElse(Interval.UNKNOWN);
  }

  public Optional<Outcome.Mapped> mapped() {
    return Optional.of(outcome)
        .filter(Outcome.Mapped.class::isInstance)
        .map(Outcome.Mapped.class::cast);
  }

  GreenLook with(Ranks newRanks) {
    return new GreenLook(outcome, record, lastRead, like, newRanks);
  }
}
