package org.mottle.engine.mapping;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.observation.PositionError;
import org.mottle.engine.position.PositionSource;
import org.mottle.engine.survey.Reading;

/** How far the positions of stations may be off: by settings, by record, or by their source. */
final class StationErrors {
  private final PositionSettings settings;

  StationErrors(PositionSettings settings) {
    this.settings = settings;
  }

  /**
   * @param knownShiftM of the shift common to the visit, where it is known; else NaN
   */
  PositionError of(List<Stations.Station> stations, double knownShiftM) {
    double[] jitter = stations.stream().mapToDouble(this::jitter).toArray();
    double usual = stations.stream().mapToDouble(StationErrors::usualShift).average().orElse(0);
    double known = Double.isNaN(knownShiftM) ? usual : knownShiftM;
    double shift = Double.isNaN(settings.shiftM()) ? known : settings.shiftM();
    return new PositionError(jitter, shift);
  }

  /** Insertions of a station stand within a hand's breadth and share most of their error. */
  private double jitter(Stations.Station station) {
    return Double.isNaN(settings.jitterM())
        ? station.insertions().stream().mapToDouble(StationErrors::recorded).average().orElse(0)
        : settings.jitterM();
  }

  private static double recorded(Reading reading) {
    double sd = reading.position().sdM();
    return Double.isNaN(sd) ? source(reading).map(PositionSource::jitterM).orElse(0.0) : sd;
  }

  private static double usualShift(Stations.Station station) {
    return source(station.insertions().get(0)).map(PositionSource::shiftM).orElse(0.0);
  }

  private static Optional<PositionSource> source(Reading reading) {
    return PositionSource.named(reading.position().source());
  }
}
