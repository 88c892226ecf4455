package org.mottle.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.patch.ExpectedGround;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Zone;
import org.mottle.engine.patch.ZoneClass;

class Sample02GreenTest {
  private final Outcome.Mapped map = (Outcome.Mapped) Sample02Green.map();

  @Test
  void zones_tile_the_green() {
    Geometry outline = Sample02Green.outline();
    double sum = map.parts().zones().stream().mapToDouble(Zone::areaM2).sum();
    assertThat(sum).isCloseTo(outline.getArea(), within(0.01));
    for (Zone a : map.parts().zones()) {
      assertThat(a.geometry().isValid()).isTrue();
      for (Zone b : map.parts().zones()) {
        if (a != b) {
          assertThat(a.geometry().intersection(b.geometry()).getArea()).isLessThan(1e-6);
        }
      }
    }
  }

  @Test
  void a_patch_lies_between_its_core_and_its_envelope() {
    assertThat(map.parts().patches()).isNotEmpty();
    for (Patch patch : map.parts().patches()) {
      Patch.Bounds bounds = patch.likelihood().orElseThrow().bounds();
      assertThat(bounds.core().difference(patch.geometry()).getArea()).isLessThan(1e-3);
      assertThat(patch.geometry().difference(bounds.envelope()).getArea()).isLessThan(1e-3);
    }
  }

  @Test
  void what_is_drawn_of_a_kind_is_no_more_than_what_is_expected() {
    for (ExpectedGround expected : map.parts().marks().orElseThrow().expected()) {
      double patches =
          map.parts().patches().stream()
              .filter(p -> p.kind() == expected.kind())
              .mapToDouble(Patch::areaM2)
              .sum();
      // parts and holes below a cell are not drawn
      assertThat(patches).as(expected.kind().code()).isLessThan(expected.areaM2() + 2);
    }
  }

  @Test
  void the_ground_of_the_dead_sprinkler_is_dry_and_all_readings_are_used() {
    var besideTheHead = new GeometryFactory().createPoint(new Coordinate(7, -4));
    Patch dry = map.parts().patches().get(0);
    assertThat(dry.kind()).isEqualTo(ZoneClass.DRY);
    assertThat(dry.geometry().contains(besideTheHead)).isTrue();
    assertThat(map.readingsUsed()).isEqualTo(Sample02Green.readings().size());
  }

  @Test
  void it_runs() {
    Sample02Green.main(new String[0]);
  }
}
