package org.mottle.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.Outcome;
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
  void patches_are_the_parts_of_the_dry_and_wet_zones() {
    for (ZoneClass cls : new ZoneClass[] {ZoneClass.DRY, ZoneClass.WET}) {
      double patches =
          map.parts().patches().stream()
              .filter(p -> p.kind() == cls)
              .mapToDouble(Patch::areaM2)
              .sum();
      assertThat(patches).as(cls.code()).isCloseTo(map.areaM2(cls), within(0.01));
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
