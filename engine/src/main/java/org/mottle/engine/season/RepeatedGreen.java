package org.mottle.engine.season;

import java.util.List;

/**
 * The surveys of one green, in the order of time, with models of them all.
 *
 * @param surveys two or more
 * @param models equally likely; the share in them is not looked at
 */
record RepeatedGreen(List<SeenSurvey> surveys, List<JointModel> models) {
  RepeatedGreen {
    surveys = List.copyOf(surveys);
    models = List.copyOf(models);
  }

  /** Part of the surveys. */
  RepeatedGreen part(int from, int to) {
    return new RepeatedGreen(
        surveys.subList(from, to),
        models.stream()
            .map(
                m ->
                    new JointModel(
                        m.correlation(),
                        m.nugget(),
                        java.util.Arrays.copyOfRange(m.sill(), from, to),
                        m.share()))
            .toList());
  }
}
