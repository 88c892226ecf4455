package org.mottle.engine.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Location;
import org.locationtech.jts.geom.Polygon;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.contour.LinearSurface;

class GreenCellsTest {
  private static final GeometryFactory FACTORY = new GeometryFactory();

  private static Polygon square(CellGrid grid, int cell) {
    double x = grid.x(cell % grid.columns());
    double y = grid.y(cell / grid.columns());
    double half = grid.cell() / 2;
    return InventedGround.rectangle(x - half, y - half, x + half, y + half);
  }

  @ParameterizedTest
  @CsvSource({
    "500000, 5316300, 13, 1, false",
    "200000, 5600000, 13, 1.3, true",
    "500000, 5316300, 1260, 100, true"
  })
  void coveredAreasAndCentroidsAreThoseOfTheOverlay(
      double x, double y, double radius, double cell, boolean holes) {
    for (int seed = 0; seed < 5; seed++) {
      Geometry outline =
          InventedGround.green(new Random(seed), x + 0.1 * seed, y, radius, 60, holes);
      GreenCells cells = GreenCells.of(outline, cell);
      double[] area = new double[cells.grid().size()];
      for (int i = 0; i < cells.coverage().size(); i++) {
        int index = cells.coverage().cell(i);
        area[index] = cells.coverage().areaM2(i);
        Geometry part = square(cells.grid(), index).intersection(outline);
        if (part.getArea() > 1e-3 * cell * cell) {
          Coordinate centroid = part.getCentroid().getCoordinate();
          assertThat(cells.coverage().x(i)).isCloseTo(centroid.x, within(1e-5 * cell));
          assertThat(cells.coverage().y(i)).isCloseTo(centroid.y, within(1e-5 * cell));
        }
      }
      for (int index = 0; index < area.length; index++) {
        assertThat(area[index])
            .as("seed %d, cell %d", seed, index)
            .isCloseTo(
                square(cells.grid(), index).intersection(outline).getArea(),
                within(1e-7 * cell * cell));
      }
      assertThat(cells.coverage().areaM2())
          .isCloseTo(outline.getArea(), within(1e-9 * outline.getArea()));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.25", "0.5", "1"})
  void centresInsideAreThoseThatJtsFindsInside(double cell) {
    for (int seed = 0; seed < 5; seed++) {
      Random random = new Random(seed);
      Geometry outline =
          seed % 2 == 0
              ? InventedGround.green(random, 500_000, 5_316_300, 13, 72, true)
              : InventedGround.pair(random, 500_000, 5_316_300, 10);
      GreenCells cells = GreenCells.of(outline, cell);
      IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(outline);
      CellGrid grid = cells.grid();
      int count = 0;
      for (int row = 0; row < grid.rows(); row++) {
        for (int column = 0; column < grid.columns(); column++) {
          Coordinate centre = new Coordinate(grid.x(column), grid.y(row));
          boolean inside = locator.locate(centre) == Location.INTERIOR;
          assertThat(cells.inside(grid.index(row, column))).as("%s", centre).isEqualTo(inside);
          count += inside ? 1 : 0;
        }
      }
      assertThat(cells.insideCount()).isEqualTo(count);
    }
  }

  @Test
  void theSurfaceReachesEveryPointOfTheOutline() {
    for (int seed = 0; seed < 10; seed++) {
      Random random = new Random(seed);
      Geometry outline = InventedGround.green(random, 200_000, 5_600_000, 13, 50, true);
      GreenCells cells = GreenCells.of(outline, 0.7);
      LinearSurface surface =
          new LinearSurface(InventedGround.raster(cells, (x, y) -> x - 200_000 + y - 5_600_000));
      Envelope extent = outline.getEnvelopeInternal();
      IndexedPointInAreaLocator locator = new IndexedPointInAreaLocator(outline);
      for (int k = 0; k < 1000; k++) {
        Coordinate p =
            new Coordinate(
                extent.getMinX() + random.nextDouble() * extent.getWidth(),
                extent.getMinY() + random.nextDouble() * extent.getHeight());
        if (locator.locate(p) != Location.EXTERIOR) {
          assertThat(surface.value(p.x, p.y))
              .as("seed %d at %s", seed, p)
              .isCloseTo(p.x - 200_000 + p.y - 5_600_000, within(1e-6));
        }
      }
      for (Coordinate vertex : outline.getCoordinates()) {
        assertThat(surface.value(vertex.x, vertex.y)).isFinite();
      }
    }
  }

  @Test
  void neighboursThatShareAnEdgeShareNoCell() {
    Polygon west = InventedGround.rectangle(0, 0, 5.5, 6);
    Polygon east = InventedGround.rectangle(5.5, 0, 11, 6);
    CellGrid grid = new CellGrid(0, 6, 1, 11, 6);
    GreenCells one = GreenCells.of(west, grid);
    GreenCells other = GreenCells.of(east, grid);
    for (int cell = 0; cell < grid.size(); cell++) {
      assertThat(one.inside(cell) ^ other.inside(cell)).as("cell %d", cell).isTrue();
    }
    assertThat(one.insideCount()).isEqualTo(30);
    assertThat(one.coverage().areaM2()).isEqualTo(33);
  }

  @Test
  void mapAndSurfaceHoldTheValuesWhereTheyBelong() {
    Polygon outline = InventedGround.rectangle(0, 0, 2, 1);
    GreenCells cells = GreenCells.of(outline, 1);
    assertThat(cells.surfaceGrid()).isEqualTo(new CellGrid(-1, 2, 1, 4, 3));
    double[] x = cells.neededX();
    double[] y = cells.neededY();
    double[] values = new double[cells.neededCount()];
    for (int i = 0; i < values.length; i++) {
      values[i] = 10 * x[i] + y[i];
    }
    assertThat(cells.surface(values).value(1, 1)).isEqualTo(10 * 0.5 + 0.5);
    assertThat(cells.surface(values).value(0, 3)).isEqualTo(10 * 2.5 + 1.5);
    assertThat(cells.map(values).values()).containsExactly(5.5, 15.5);
  }

  @Test
  void refuseWhatHasNoCells() {
    assertThatThrownBy(() -> GreenCells.of(FACTORY.createPolygon(), 1))
        .hasMessage("an empty outline has no cells: POLYGON EMPTY");
    assertThatThrownBy(
            () -> GreenCells.of(InventedGround.rectangle(0, 0, 5, 5), new CellGrid(0, 4, 1, 5, 4)))
        .hasMessageContaining("reaches beyond the grid");
    assertThatThrownBy(
            () -> GreenCells.of(InventedGround.rectangle(0, 0, 2, 1), 1).map(new double[3]))
        .hasMessage("a surface needs 12 values, was 3");
  }
}
