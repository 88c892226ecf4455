package org.mottle.engine.patch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.contour.InventedGround;
import org.mottle.engine.grid.CellCoverage;
import org.mottle.engine.grid.CellGrid;

class SmallestPatchTest {
  private static final Geometry GREEN = InventedGround.rectangle(0, 0, 40, 40);

  private static SmallestPatch of(List<Coordinate> stations, double cell, double sd) {
    CellGrid grid = CellGrid.covering(GREEN.getEnvelopeInternal(), cell);
    return SmallestPatch.of(CellCoverage.of(GREEN, grid), stations, sd);
  }

  private static List<Coordinate> square(double spacing) {
    List<Coordinate> stations = new ArrayList<>();
    for (double x = spacing / 2; x < 40; x += spacing) {
      for (double y = spacing / 2; y < 40; y += spacing) {
        stations.add(new Coordinate(x, y));
      }
    }
    return stations;
  }

  /** Exact where the border between the ground of two stations runs along cells. */
  @ParameterizedTest
  @ValueSource(doubles = {4, 5, 8, 10})
  void theSpacingOfASquareGridIsItsSpacing(double spacing) {
    SmallestPatch smallest = of(square(spacing), 0.5, 1);
    assertThat(smallest.spacingM()).isCloseTo(spacing, within(1e-9));
    assertThat(smallest.areaM2()).isCloseTo(4 * spacing * spacing, within(1e-6));
    assertThat(smallest.widthM()).isCloseTo(3.29, within(1e-12));
  }

  @Test
  void stationsInClustersCountForLess() {
    List<Coordinate> clustered = new ArrayList<>();
    Random random = new Random(1);
    for (Coordinate centre : square(20)) {
      for (int k = 0; k < 16; k++) {
        clustered.add(
            new Coordinate(centre.x + 0.5 * random.nextDouble(), centre.y + random.nextDouble()));
      }
    }
    assertThat(clustered).hasSameSizeAs(square(5));
    assertThat(of(clustered, 0.5, 0).spacingM()).isBetween(18.5, 20.0);
  }

  @Test
  void anotherStationNeverWidensTheSpacing() {
    Random random = new Random(4);
    List<Coordinate> stations = new ArrayList<>();
    double before = Double.POSITIVE_INFINITY;
    for (int k = 0; k < 30; k++) {
      stations.add(new Coordinate(40 * random.nextDouble(), 40 * random.nextDouble()));
      double spacing = of(stations, 1, 0).spacingM();
      assertThat(spacing).as("%d stations", k + 1).isLessThanOrEqualTo(before);
      before = spacing;
    }
  }

  @Test
  void refuseNoStationsAndNegativeErrors() {
    assertThatThrownBy(() -> of(List.of(), 1, 0)).hasMessageContaining("was 0");
    assertThatThrownBy(() -> of(square(10), 1, -1)).hasMessageContaining("-1");
  }
}
