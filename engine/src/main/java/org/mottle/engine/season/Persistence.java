package org.mottle.engine.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.Band;
import org.mottle.engine.contour.Layer;
import org.mottle.engine.contour.LinearSurface;
import org.mottle.engine.contour.Tiling;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.Surface;
import org.mottle.engine.patch.Ground;
import org.mottle.engine.season.PersistenceOutcome.LeftOut;
import org.mottle.engine.survey.Refusal;

/**
 * How often each place of a green is wet, and dry, over surveys after the same kind of water: the
 * share of surveys in which it is more likely wet than not (probability above 0.5), each survey
 * weighted by its grade, with the interval of {@link SurveyShare}. What is counted are maps: a
 * place far from every station is hardly ever called wet, which says nothing of the ground there.
 *
 * @param surveys those that count, in the order given
 * @param leftOut the others
 * @param remarks what to know before the shares are used
 * @param count surveys that saw each cell
 * @param wet share of surveys above the band
 * @param dry share of surveys below it
 */
public record Persistence(
    List<Counted> surveys,
    List<LeftOut> leftOut,
    List<String> remarks,
    Raster count,
    Shares wet,
    Shares dry)
    implements PersistenceOutcome {
  /** Chance that a place is wet in more than half of surveys from which it gets an outline. */
  public static final double LIKELY = 0.8;

  /** Chance from which the lower end of the interval lies above one half. */
  public static final double SURE = 0.95;

  /** Smaller ground is not outlined, m². */
  private static final double LEAST_M2 = 1;

  /**
   * A survey that counts.
   *
   * @param surveyId which
   * @param weight by its grade
   */
  public record Counted(String surveyId, double weight) {}

  /**
   * Rasters of a share.
   *
   * @param share weighted share of surveys
   * @param low lower end of its 90 % interval
   * @param high upper end
   * @param places connected ground with at least {@link #LIKELY} chance of being so in more than
   *     half of surveys, the largest first
   */
  public record Shares(Raster share, Raster low, Raster high, List<PersistentPlace> places) {
    public Shares {
      places = List.copyOf(places);
    }

    /** Places of which some part is sure. */
    public List<PersistentPlace> surePlaces() {
      return places.stream().filter(PersistentPlace::sure).toList();
    }
  }

  public Persistence {
    surveys = List.copyOf(surveys);
    leftOut = List.copyOf(leftOut);
    remarks = List.copyOf(remarks);
  }

  /**
   * Of the maps of one green.
   *
   * @param maps each survey once
   * @param settings which surveys count, and for how much
   */
  public static PersistenceOutcome of(List<SurveyedMap> maps, PersistenceSettings settings) {
    ComparableMaps chosen = ComparableMaps.of(maps, settings);
    if (chosen.maps().size() < 2) {
      return new Refused(refusal(chosen, settings), chosen.leftOut());
    }
    ShareCount wet = ShareCount.of(chosen, settings.weights(), Surface.Chances::wet);
    ShareCount dry = ShareCount.of(chosen, settings.weights(), Surface.Chances::dry);
    List<Counted> counted = new ArrayList<>();
    for (SurveyedMap m : chosen.maps()) {
      counted.add(new Counted(m.surveyId(), settings.weights().of(m.grade())));
    }
    return new Persistence(
        counted,
        chosen.leftOut(),
        chosen.remarks(),
        wet.count(),
        shares(wet, chosen),
        shares(dry, chosen));
  }

  private static Refusal refusal(ComparableMaps chosen, PersistenceSettings settings) {
    String reason =
        "persistence needs 2 surveys or more that can be compared, %s; %d can"
            .formatted(settings.label(), chosen.maps().size());
    String others =
        chosen.leftOut().stream().map(LeftOut::toString).collect(Collectors.joining("; "));
    return new Refusal(
        others.isEmpty() ? reason : reason + " (" + others + ")",
        "read the same stations again after such water, with the same rods, and record rain_h,"
            + " rain_mm, irr_h and irr_mm");
  }

  private static Shares shares(ShareCount count, ComparableMaps chosen) {
    return new Shares(count.share(), count.low(), count.high(), places(count, chosen));
  }

  /** Places and their sure parts are cut from one arrangement, so the parts lie inside exactly. */
  private static List<PersistentPlace> places(ShareCount count, ComparableMaps chosen) {
    Surface surface = chosen.maps().get(0).map().surface();
    Geometry outline = chosen.maps().get(0).map().subject().green().outline();
    Raster chance = EdgeFill.of(count.chance(), surface.cells());
    Raster share = EdgeFill.of(count.share(), surface.cells());
    LinearSurface shareSurface = new LinearSurface(share);
    Tiling tiling = Tiling.of(outline, List.of(Layer.atLeast(chance, LIKELY, SURE)));
    List<Geometry> sure = parts(tiling, 2);
    List<PersistentPlace> places = new ArrayList<>();
    for (Geometry part : parts(tiling, 1)) {
      if (part.getArea() >= LEAST_M2) {
        double sureM2 =
            sure.stream()
                .filter(s -> part.covers(s.getInteriorPoint()))
                .mapToDouble(Geometry::getArea)
                .sum();
        double mean = Ground.of(part, share).mean(shareSurface);
        places.add(new PersistentPlace(part, part.getArea(), mean, sureM2));
      }
    }
    places.sort(Comparator.comparingDouble(PersistentPlace::areaM2).reversed());
    return places;
  }

  /** Connected ground that has passed so many of the levels. */
  private static List<Geometry> parts(Tiling tiling, int levels) {
    List<Geometry> parts = new ArrayList<>();
    for (Band band : tiling.by(passed -> passed[0] >= levels ? 1 : 0, 0)) {
      if (band.index() == 1) {
        for (int i = 0; i < band.geometry().getNumGeometries(); i++) {
          parts.add(band.geometry().getGeometryN(i));
        }
      }
    }
    return parts;
  }
}
