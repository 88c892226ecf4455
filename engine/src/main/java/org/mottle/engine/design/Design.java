package org.mottle.engine.design;

import java.util.List;
import org.locationtech.jts.geom.Geometry;

/** How the places of the stations are chosen. */
public sealed interface Design {

  /** As it is typed. */
  String label();

  /**
   * Equal steps along a line through the middle of the green.
   *
   * @param bearingDeg degrees clockwise from grid north; NaN: along the longest side of the
   *     smallest rectangle round the green
   */
  record Transect(double bearingDeg) implements Design {
    @Override
    public String label() {
      return "transect";
    }
  }

  /** Equal steps along four legs, there and back across the smallest rectangle round the green. */
  record Zigzag() implements Design {
    @Override
    public String label() {
      return "w";
    }
  }

  /** A square grid with a random start, turned to the longest side of the smallest rectangle. */
  record SquareGrid() implements Design {
    @Override
    public String label() {
      return "square-grid";
    }
  }

  /** A triangular grid with a random start, turned to the longest side. */
  record TriangularGrid() implements Design {
    @Override
    public String label() {
      return "triangular-grid";
    }
  }

  /** The least mean squared distance of the green's cells to the nearest station. */
  record SpatialCoverage() implements Design {
    @Override
    public String label() {
      return "coverage";
    }
  }

  /** One place at random in each of as many compact strata of equal area. */
  record StratifiedRandom() implements Design {
    @Override
    public String label() {
      return "stratified";
    }
  }

  /** Places at random, every place as likely as any other, kept apart. */
  record SpatiallyBalanced() implements Design {
    @Override
    public String label() {
      return "balanced";
    }
  }

  /**
   * Places that somebody wants read for what is seen there; they say nothing of the green's mean.
   *
   * @param areas points, each a station; or areas, covered by stations
   */
  record Interest(List<Geometry> areas) implements Design {
    public Interest {
      areas = List.copyOf(areas);
    }

    @Override
    public String label() {
      return "interest";
    }
  }

  /**
   * The stations of earlier plans again, under their own ids.
   *
   * @param earlier one a green
   */
  record Repeat(List<StationPlan> earlier) implements Design {
    public Repeat {
      earlier = List.copyOf(earlier);
    }

    @Override
    public String label() {
      return "repeat";
    }
  }

  /**
   * More stations between those of earlier plans, as far from all as can be.
   *
   * @param earlier one or more a green
   */
  record Infill(List<StationPlan> earlier) implements Design {
    public Infill {
      earlier = List.copyOf(earlier);
    }

    @Override
    public String label() {
      return "infill";
    }
  }
}
