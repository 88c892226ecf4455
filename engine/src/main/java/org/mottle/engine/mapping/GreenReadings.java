package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.mottle.engine.likelihood.Sample;
import org.mottle.engine.observation.Observations;

/**
 * The values behind a map, as the map took them: one a station, with the errors of its place and
 * those it has in common with others, without measurement variance (nugget / insertions, under each
 * variogram). Stations of a second, drier population that is mapped apart are left out.
 *
 * @param observations of the main population
 * @param insertions [n] behind each value
 * @param sample as the pooled variogram knows it
 */
public record GreenReadings(Observations observations, int[] insertions, Sample sample) {

  public GreenReadings {
    insertions = insertions.clone();
  }

  /**
   * @param map of the green
   * @param settings it was mapped with
   */
  public static GreenReadings of(Outcome.Mapped map, MappingSettings settings) {
    Prepared all = Prepared.of(map.subject(), settings);
    Set<Integer> low =
        map.basis().kriging().stream()
            .flatMap(k -> k.low().stream())
            .map(Outcome.Low::station)
            .collect(Collectors.toCollection(HashSet::new));
    List<Integer> main =
        IntStream.range(0, all.observations().size())
            .filter(i -> !low.contains(all.members()[i]))
            .boxed()
            .toList();
    Prepared kept =
        all.rows(main.stream().mapToInt(i -> i).toArray()).notChosen(settings.needed().map());
    return new GreenReadings(
        KrigedGreen.withCommon(kept, settings.uncertainty().operatorSdPct()),
        kept.insertions(),
        kept.sample());
  }

  @Override
  public int[] insertions() {
    return Arrays.copyOf(insertions, insertions.length);
  }
}
