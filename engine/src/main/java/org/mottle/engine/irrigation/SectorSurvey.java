package org.mottle.engine.irrigation;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.likelihood.Sample;
import org.mottle.engine.mapping.GreenReadings;
import org.mottle.engine.observation.Observations;

/**
 * One survey of a green as the sector test sees it.
 *
 * @param observations with common errors
 * @param insertions [n] behind each value
 * @param insideM [n] how far inside the outline each station stands, m; 0 outside
 * @param shares [heads][n] share of each head in the water
 * @param sample as the pooled variogram knows it
 */
record SectorSurvey(
    Observations observations,
    int[] insertions,
    double[] insideM,
    List<double[]> shares,
    Sample sample) {

  static SectorSurvey of(
      GreenReadings readings, Geometry outline, SectorPattern pattern, List<Head> heads) {
    Observations o = readings.observations();
    Geometry edge = outline.getBoundary();
    double[] inside =
        IntStream.range(0, o.size())
            .mapToObj(i -> outline.getFactory().createPoint(new Coordinate(o.x(i), o.y(i))))
            .mapToDouble(p -> outline.covers(p) ? edge.distance(p) : 0)
            .toArray();
    return new SectorSurvey(
        o,
        readings.insertions(),
        inside,
        heads.stream().map(h -> pattern.shares(h, o.xs(), o.ys())).toList(),
        readings.sample());
  }

  int size() {
    return insertions.length;
  }

  double meanX() {
    return Arrays.stream(observations.xs()).average().orElse(0);
  }

  double meanY() {
    return Arrays.stream(observations.ys()).average().orElse(0);
  }
}
