package org.mottle.export.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.season.Change;
import org.mottle.engine.season.DryDown;
import org.mottle.engine.season.Persistence;
import org.mottle.engine.terrain.GreenTerrain;
import org.mottle.export.season.SeasonWork.GreenSeason;
import org.mottle.export.write.NamedRaster;
import org.mottle.export.write.RasterKind;

/** The rasters of a season: changes, dry-down, what stays wet, the ground. */
final class SeasonRasters {
  private SeasonRasters() {}

  static List<NamedRaster> of(SeasonWork work, Map<String, GreenTerrain> terrain) {
    List<NamedRaster> rasters = new ArrayList<>();
    for (GreenSeason g : work.greens()) {
      String id = g.green().id();
      for (Pair pair : g.pairs()) {
        pair.change().value().ifPresent(c -> add(rasters, id, pair.label(), c));
        pair.dried().ifPresent(d -> add(rasters, id, pair.label(), d));
      }
      if (g.drainage() instanceof Persistence p) {
        rasters.add(new NamedRaster(id, "rain", RasterKind.WET_SHARE, p.wet().share()));
      }
      GreenTerrain t = terrain.get(id);
      if (t != null) {
        rasters.add(new NamedRaster(id, "", RasterKind.Z, t.model().raster()));
        rasters.add(new NamedRaster(id, "", RasterKind.SLOPE, t.slope().percent()));
        rasters.add(new NamedRaster(id, "", RasterKind.TWI, t.wetness()));
        rasters.add(new NamedRaster(id, "", RasterKind.FILL, millimetres(t)));
      }
    }
    return rasters;
  }

  private static Raster millimetres(GreenTerrain t) {
    double[] depths = t.flood().depths().values();
    for (int i = 0; i < depths.length; i++) {
      depths[i] *= 1000;
    }
    return new Raster(t.flood().depths().grid(), depths);
  }

  private static void add(List<NamedRaster> rasters, String id, String pair, Change c) {
    rasters.add(new NamedRaster(id, pair, RasterKind.DVWC, c.mean()));
    rasters.add(new NamedRaster(id, pair, RasterKind.DVWC_SD, c.sd()));
    rasters.add(new NamedRaster(id, pair, RasterKind.P_CHG, c.pChange()));
  }

  private static void add(List<NamedRaster> rasters, String id, String pair, DryDown d) {
    rasters.add(new NamedRaster(id, pair, RasterKind.K_PCT_D, d.rate()));
    rasters.add(new NamedRaster(id, pair, RasterKind.K_SD, d.sd()));
    if (!Double.isNaN(d.etRate())) {
      rasters.add(new NamedRaster(id, pair, RasterKind.RATIO, d.ratio()));
      rasters.add(new NamedRaster(id, pair, RasterKind.P_SLOW, d.slow()));
    }
  }
}
