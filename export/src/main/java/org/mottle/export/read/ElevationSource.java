package org.mottle.export.read;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.mottle.engine.survey.Green;

/**
 * Elevation as it was read: a raster for each green that files of cells cover, and the points of
 * the other files. Holds the ground near the greens only, whatever the size of the files.
 *
 * @param rasters by green id
 * @param points of the files of points; none when there is no such file
 * @param marginM ground kept round each green's box, m
 * @param notes what was detected or decided, one line each, to be told to the user; those of one
 *     green are with its elevation
 */
public record ElevationSource(
    Map<String, Elevation> rasters,
    Optional<ElevationPoints> points,
    double marginM,
    List<String> notes) {
  public ElevationSource {
    rasters = Map.copyOf(rasters);
    notes = List.copyOf(notes);
  }

  /** The green with its surrounds; empty when no file of cells covers any of it. */
  public Optional<Elevation> near(Green green) {
    return Optional.ofNullable(rasters.get(green.id()));
  }

  /** Points of the green with its surrounds; empty when there are none. */
  public Optional<ElevationPoints> pointsNear(Green green) {
    Envelope box = green.outline().getEnvelopeInternal().copy();
    box.expandBy(marginM);
    return points.map(p -> p.within(box)).filter(p -> p.size() > 0);
  }
}
