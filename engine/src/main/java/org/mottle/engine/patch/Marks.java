package org.mottle.engine.patch;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.grid.Raster;

/**
 * What is marked on a green by probability: patches with an outline, and spots, places that were
 * seen but cannot be outlined. Nothing is both.
 *
 * <p>For dry and for wet ground apart: the outline is the ground at least as likely as the {@link
 * VorobevLevel}, so its area is the expected one, and every connected part of it is a patch when
 * the survey could have outlined it ({@link SmallestPatch}), it exists with probability {@link
 * MarkRule#leastExistence()} at least, and a station lies in it. Every other part is a spot, and so
 * is every station more than half a spacing from all parts at which the ground is more likely so
 * than not; of several such stations in one connected place the likeliest. Core and envelope hold
 * for all ground of the green of that kind at once ({@link JointLevels}).
 *
 * @param patches numbered from 1: dry before wet, large before small, north before south, west
 *     before east
 * @param spots dry before wet
 * @param expected how much dry and how much wet ground there is, wherever it lies
 * @param smallest the smallest patch this survey could outline, on average over the green
 */
public record Marks(
    List<Patch> patches, List<Spot> spots, List<ExpectedGround> expected, SmallestPatch smallest) {

  public Marks {
    patches = List.copyOf(patches);
    spots = List.copyOf(spots);
    expected = List.copyOf(expected);
  }

  /**
   * Where things are marked.
   *
   * @param outline of the green, m
   * @param probabilities of being dry and wet, with realisations
   * @param stations where readings were taken, m; at least one
   */
  public record Subject(Geometry outline, Probabilities probabilities, List<Coordinate> stations) {
    public Subject {
      stations = List.copyOf(stations);
      if (stations.isEmpty()) {
        throw new IllegalArgumentException("marks need at least one station, was 0");
      }
      if (probabilities.excursions().realisations() == 0) {
        throw new IllegalArgumentException("marks need realisations, was 0");
      }
    }
  }

  /**
   * @param subject where
   * @param rule when ground is outlined
   * @param surface moisture, % by volume
   * @param regionMean gives the standard error of a patch's mean
   */
  public static Marks of(Subject subject, MarkRule rule, Raster surface, RegionMean regionMean) {
    GreenGround ground = new GreenGround(subject.outline(), subject.probabilities().cells());
    SmallestPatch smallest =
        SmallestPatch.of(ground.coverage(), subject.stations(), rule.positionSdM());
    Moisture moisture = Moisture.of(surface, regionMean);
    List<Patch> patches = new ArrayList<>();
    List<Spot> spots = new ArrayList<>();
    List<ExpectedGround> expected = new ArrayList<>();
    for (ZoneClass kind : List.of(ZoneClass.DRY, ZoneClass.WET)) {
      KindMarks marks = new KindMarks(subject, rule, ground, smallest, kind);
      marks.mark(moisture);
      patches.addAll(marks.patches());
      spots.addAll(marks.spots());
      expected.add(marks.expected());
    }
    return new Marks(Patches.numbered(patches), spots, expected, smallest);
  }
}
