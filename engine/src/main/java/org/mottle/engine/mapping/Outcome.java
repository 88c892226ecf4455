package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.contour.IsoLine;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.RegionMean.MeanAndSd;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.survey.Refusal;
import org.mottle.engine.validation.Predictions;

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

  /** A map. */
  record Mapped(
      GreenSurvey subject,
      Stations stations,
      ReadingSummary summary,
      List<String> remarks,
      Basis basis,
      Surface surface,
      Parts parts)
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
   * @param variogram behind kriging
   * @param crossValidation of the readings of this green, under kriging
   */
  record Basis(
      Method method, Optional<SurveyVariogram> variogram, Optional<Predictions> crossValidation) {}

  /**
   * What a surface is cut into.
   *
   * @param zones tile the green; empty without a band
   * @param patches connected parts of the dry and wet zones
   * @param isoLines lines of equal moisture
   * @param whole mean of the surface over the green, with the standard deviation of its error
   */
  record Parts(List<Zone> zones, List<Patch> patches, List<IsoLine> isoLines, MeanAndSd whole) {
    public Parts {
      zones = List.copyOf(zones);
      patches = List.copyOf(patches);
      isoLines = List.copyOf(isoLines);
    }
  }
}
