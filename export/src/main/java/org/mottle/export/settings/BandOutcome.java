package org.mottle.export.settings;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.survey.TargetBand;

/** What a rule makes of a green: a band, or the figure that it lacks. */
public sealed interface BandOutcome {

  /** The band, if there is one. */
  Optional<TargetBand> band();

  /**
   * @param of the band
   * @param remarks what to consider about it; it is used all the same
   */
  record Found(TargetBand of, List<String> remarks) implements BandOutcome {
    public Found {
      remarks = List.copyOf(remarks);
    }

    @Override
    public Optional<TargetBand> band() {
      return Optional.of(of);
    }
  }

  /**
   * @param why which figure is missing, and where to give it
   */
  record NotFound(Refusal why) implements BandOutcome {
    @Override
    public Optional<TargetBand> band() {
      return Optional.empty();
    }
  }
}
