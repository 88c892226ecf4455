package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;

/**
 * Maps the greens of one or more surveys: the readings gathered by station, one variogram for
 * greens built alike, then each green by itself. Greens are worked in parallel; the result does not
 * depend on the number of threads. Immutable.
 *
 * @param settings how to map
 */
public record SurveyMapper(MappingSettings settings) {

  /**
   * @param subjects one a green and survey, older surveys first; what shares a variogram is up to
   *     the settings
   * @param threads at least 1
   * @param progress told green by green; may stop the work
   */
  public SurveyMap map(List<GreenSurvey> subjects, int threads, Progress progress) {
    List<Prepared> prepared = subjects.stream().map(s -> Prepared.of(s, settings)).toList();
    progress.check();
    List<Optional<GreenPopulation>> populations =
        GreenPopulation.of(prepared, settings.uncertainty().seed());
    List<Prepared> main =
        IntStream.range(0, prepared.size())
            .mapToObj(
                i ->
                    GreenPopulation.surface(
                        populations.get(i), prepared.get(i), settings.needed().map()))
            .toList();
    List<MapVariogram> variograms = new Variograms(settings, threads, progress).of(main);
    boolean[] latest = latest(subjects);
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
                outcomes[i] =
                    mapper.map(prepared.get(i), variograms.get(i), populations.get(i), latest[i]);
              }
            });
    return new SurveyMap(settings, distinct(variograms), Arrays.asList(outcomes));
  }

  /** Whether each is the last survey of its green, in the order given. */
  private static boolean[] latest(List<GreenSurvey> subjects) {
    Map<String, Integer> last = new HashMap<>();
    for (int i = 0; i < subjects.size(); i++) {
      last.put(subjects.get(i).green().id(), i);
    }
    boolean[] latest = new boolean[subjects.size()];
    last.values().forEach(i -> latest[i] = true);
    return latest;
  }

  private static List<MapVariogram> distinct(List<MapVariogram> variograms) {
    Set<MapVariogram> once = Collections.newSetFromMap(new IdentityHashMap<>());
    return variograms.stream().filter(once::add).toList();
  }
}
