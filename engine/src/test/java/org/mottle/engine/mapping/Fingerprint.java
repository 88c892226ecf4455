package org.mottle.engine.mapping;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.WKTWriter;
import org.mottle.engine.grid.Raster;
import org.mottle.engine.patch.Patch;
import org.mottle.engine.patch.Zone;

/** Every figure and every outline of a map, to the last digit. */
final class Fingerprint {
  private Fingerprint() {}

  static List<String> of(SurveyMap map) {
    return map.outcomes().stream().flatMap(o -> of(o).stream()).toList();
  }

  static List<String> of(Outcome outcome) {
    String head = outcome.subject().label() + outcome.summary() + outcome.remarks();
    return outcome instanceof Outcome.Mapped m
        ? Stream.of(
                Stream.of(head, m.standing() + " " + m.evenness() + m.watering()),
                surface(m.surface()),
                parts(m.parts()))
            .flatMap(s -> s)
            .toList()
        : List.of(head, "" + ((Outcome.NoMap) outcome).why());
  }

  private static Stream<String> surface(Surface s) {
    return Stream.concat(
        Stream.of(values(s.interpolable()), values(s.mean()), values(s.sd())),
        s.chances().stream().flatMap(c -> Stream.of(values(c.dry()), values(c.wet()))));
  }

  private static Stream<String> parts(Outcome.Parts parts) {
    return Stream.of(
            parts.zones().stream().map(Fingerprint::zone),
            parts.patches().stream().map(Fingerprint::patch),
            parts.spots().stream().map(Object::toString),
            parts.marks().stream().map(m -> m.expected() + " " + m.smallest()),
            parts.isoLines().stream().map(Object::toString),
            parts.next().stream().map(Object::toString),
            Stream.of("" + parts.whole()))
        .flatMap(s -> s);
  }

  private static String zone(Zone z) {
    return z.cls() + " " + z.mean() + " " + z.sd() + " " + z.likelihood() + wkt(z.geometry());
  }

  private static String patch(Patch p) {
    return p.toString() + wkt(p.geometry());
  }

  /** Of a geometry that prints itself with all digits. */
  private static String wkt(Geometry geometry) {
    return new WKTWriter().write(geometry);
  }

  private static String values(Raster raster) {
    return Arrays.toString(raster.values());
  }
}
