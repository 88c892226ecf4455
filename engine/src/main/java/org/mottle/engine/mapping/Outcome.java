package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.contour.IsoLine;
import org.mottle.engine.evenness.Evenness;
import org.mottle.engine.patch.Marks;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.RegionMean.MeanAndSd;
import org.mottle.engine.patch.Spot;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.plan.StationRanking;
import org.mottle.engine.population.Finding;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.validation.Predictions;
import org.mottle.engine.water.Watering;

/** What came of one green in one survey: a map, or the reason why there is none. */
public sealed interface Outcome {

  GreenSurvey subject();

  /** The readings gathered by station. */
  Stations stations();

  /** Statistics of the station values, those chosen for what is seen there left out. */
  ReadingSummary summary();

  /** What a reader of the map should know, in words. */
  List<String> remarks();

  /** No map; the summary of the readings stands. */
  record NoMap(
      GreenSurvey subject,
      Stations stations,
      ReadingSummary summary,
      List<String> remarks,
      Refusal why)
      implements Outcome {
    public NoMap {
      remarks = List.copyOf(remarks);
    }
  }

  /**
   * A map.
   *
   * @param evenness of the moisture of the main population
   * @param watering what it wants
   */
  record Mapped(
      GreenSurvey subject,
      Stations stations,
      ReadingSummary summary,
      List<String> remarks,
      Standing standing,
      Basis basis,
      Surface surface,
      Parts parts,
      Evenness evenness,
      Watering watering)
      implements Outcome {
    public Mapped {
      remarks = List.copyOf(remarks);
    }

    /** Insertions that went into the map. */
    public int readingsUsed() {
      return stations.stations().stream().mapToInt(s -> s.insertions().size()).sum();
    }

    /** Area of a class, m²; 0 without a band. */
    public double areaM2(ZoneClass cls) {
      return parts.zones().stream().filter(z -> z.cls() == cls).mapToDouble(Zone::areaM2).sum();
    }
  }

  /**
   * What a map rests on.
   *
   * @param method kriging or inverse distance
   * @param kriging behind kriging; empty for inverse distance
   */
  record Basis(Method method, Optional<KrigingBasis> kriging) {

    /** The variogram behind kriging. */
    public Optional<MapVariogram> variogram() {
      return kriging.map(KrigingBasis::variogram);
    }

    /** The readings of this green predicted from one another, under kriging. */
    public Optional<Predictions> crossValidation() {
      return kriging.map(KrigingBasis::crossValidation);
    }
  }

  /**
   * What a kriged map rests on.
   *
   * @param variogram pooled
   * @param crossValidation every reading of this green predicted from the others
   * @param realisations drawn
   * @param populations what the readings say of a second, drier population; empty where not tested
   * @param low stations of that population; none where it is not mapped apart
   * @param positions how far the positions may be off
   */
  record KrigingBasis(
      MapVariogram variogram,
      Predictions crossValidation,
      int realisations,
      Optional<Finding> populations,
      List<Low> low,
      Positions positions) {
    public KrigingBasis {
      low = List.copyOf(low);
    }
  }

  /**
   * A station of a second, drier population.
   *
   * @param station index among the stations of the outcome
   * @param membership probability that it belongs there
   */
  record Low(int station, double membership) {}

  /**
   * Errors of position that a map reckons with.
   *
   * @param jitterM standard error per axis of a station by itself, root mean square, m
   * @param shiftM standard error per axis of what all stations share, m
   */
  record Positions(double jitterM, double shiftM) {}

  /**
   * What a surface is cut into.
   *
   * @param zones tile the green; empty without a band
   * @param marks patches, spots and what ground is expected; empty without a band or probabilities
   * @param isoLines lines of equal moisture
   * @param whole mean of the surface over the green, with the standard deviation of its error
   * @param next where to read next; empty where it was not asked for
   */
  record Parts(
      List<Zone> zones,
      Optional<Marks> marks,
      List<IsoLine> isoLines,
      MeanAndSd whole,
      Optional<StationRanking> next) {
    public Parts {
      zones = List.copyOf(zones);
      isoLines = List.copyOf(isoLines);
    }

    /** Dry and wet places with an outline. */
    public List<Patch> patches() {
      return marks.map(Marks::patches).orElse(List.of());
    }

    /** Dry and wet places without one; their station is an index among those of the outcome. */
    public List<Spot> spots() {
      return marks.map(Marks::spots).orElse(List.of());
    }
  }
}
