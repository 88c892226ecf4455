package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;

/**
 * Maps the greens of one or more surveys: the readings gathered by station, one variogram, then
 * each green by itself. Greens are worked in parallel; the result does not depend on the number of
 * threads. Immutable.
 *
 * @param settings how to map
 */
public record SurveyMapper(MappingSettings settings) {

  /**
   * @param subjects one a green and survey; greens of one survey share a variogram unless the
   *     settings say otherwise
   * @param threads at least 1
   * @param progress told green by green; may stop the work
   */
  public SurveyMap map(List<GreenSurvey> subjects, int threads, Progress progress) {
    List<Prepared> prepared = subjects.stream().map(s -> Prepared.of(s, settings)).toList();
    progress.check();
    List<SurveyVariogram> variograms = new Variograms(settings, threads).of(prepared);
    boolean single = subjects.size() == 1;
    GreenMapper mapper =
        new GreenMapper(settings, single ? threads : 1, single ? progress : Progress.NONE);
    Outcome[] outcomes = new Outcome[subjects.size()];
    Panels.run(
        outcomes.length,
        1,
        single ? 1 : threads,
        "greens",
        progress,
        () ->
            (from, to) -> {
              for (int i = from; i < to; i++) {
                outcomes[i] = mapper.map(prepared.get(i), variograms.get(i));
              }
            });
    return new SurveyMap(settings, distinct(variograms), Arrays.asList(outcomes));
  }

  private static List<SurveyVariogram> distinct(List<SurveyVariogram> variograms) {
    Set<SurveyVariogram> once = Collections.newSetFromMap(new IdentityHashMap<>());
    return variograms.stream().filter(once::add).toList();
  }
}
