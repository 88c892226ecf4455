package org.mottle.export.job;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.Method;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.survey.TargetBand;
import org.mottle.export.write.NamedRaster;
import org.mottle.export.write.RasterKind;

/** The rasters of a map: mean, its SD where there is one, class where there is a band. */
final class MapRasters {

  private MapRasters() {}

  static List<NamedRaster> of(Outcome.Mapped map) {
    List<NamedRaster> rasters = new ArrayList<>();
    rasters.add(named(map, RasterKind.VWC, map.surface().mean()));
    if (map.basis().method() == Method.KRIGING) {
      rasters.add(named(map, RasterKind.SD, map.surface().sd()));
    }
    map.subject()
        .band()
        .ifPresent(b -> rasters.add(named(map, RasterKind.CLS, classes(map.surface().mean(), b))));
    return rasters;
  }

  private static NamedRaster named(Outcome.Mapped map, RasterKind kind, Raster raster) {
    return new NamedRaster(map.subject().green().id(), map.subject().surveyId(), kind, raster);
  }

  private static Raster classes(Raster mean, TargetBand band) {
    double[] classes =
        Arrays.stream(mean.values())
            .map(v -> Double.isNaN(v) ? v : ZoneClass.of(band, v).number())
            .toArray();
    return new Raster(mean.grid(), classes);
  }
}
