package org.mottle.export.job;

import java.util.Arrays;
import java.util.Optional;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.Surface;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.survey.TargetBand;

/** The class of each cell: by its probabilities where the map has them, else by its value. */
final class CellClasses {

  private CellClasses() {}

  /** Numbers of classes; empty without a band. */
  static Optional<Raster> of(Outcome.Mapped map) {
    return map.surface()
        .chances()
        .map(Surface.Chances::classes)
        .or(() -> map.subject().band().map(band -> byValue(map.surface().mean(), band)));
  }

  private static Raster byValue(Raster mean, TargetBand band) {
    double[] classes =
        Arrays.stream(mean.values())
            .map(v -> Double.isNaN(v) ? v : ZoneClass.of(band, v).number())
            .toArray();
    return new Raster(mean.grid(), classes);
  }

  static String code(int number) {
    return Arrays.stream(ZoneClass.values())
        .filter(cls -> cls.number() == number)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no class has the number " + number))
        .code();
  }
}
