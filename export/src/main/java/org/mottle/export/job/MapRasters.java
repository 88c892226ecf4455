package org.mottle.export.job;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.mapping.Method;
import org.mottle.engine.mapping.Outcome;
import org.mottle.export.write.NamedRaster;
import org.mottle.export.write.RasterKind;

/**
 * The rasters of a map: mean, its SD where there is one, probabilities where there is a band as
 * well, class where there is a band.
 */
final class MapRasters {

  private MapRasters() {}

  static List<NamedRaster> of(Outcome.Mapped map) {
    List<NamedRaster> rasters = new ArrayList<>();
    rasters.add(named(map, RasterKind.VWC, map.surface().mean()));
    if (map.basis().method() == Method.KRIGING) {
      rasters.add(named(map, RasterKind.SD, map.surface().sd()));
    }
    map.surface()
        .chances()
        .ifPresent(
            chances -> {
              rasters.add(named(map, RasterKind.P_DRY, chances.dry()));
              rasters.add(named(map, RasterKind.P_WET, chances.wet()));
              chances.low().ifPresent(low -> rasters.add(named(map, RasterKind.P_LOW, low)));
            });
    CellClasses.of(map).ifPresent(classes -> rasters.add(named(map, RasterKind.CLS, classes)));
    return rasters;
  }

  private static NamedRaster named(Outcome.Mapped map, RasterKind kind, Raster raster) {
    return new NamedRaster(map.subject().green().id(), map.subject().surveyId(), kind, raster);
  }
}
