package org.mottle.export.crs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;

/** The common way, UTM to WGS 84 and back, must not pay for a library's start-up. */
class StartUpTest {

  /** Run in a process of its own. */
  static final class UtmAndBack {
    private UtmAndBack() {}

    public static void main(String[] args) {
      Crs utm = Crs.parse("EPSG:32630");
      CrsTransform toDegrees = CrsTransform.between(utm, Crs.wgs84());
      Coordinate c = toDegrees.apply(new Coordinate(602513.375101, 5784343.574568));
      Coordinate back = CrsTransform.between(Crs.wgs84(), Crs.utmFor(c.x, c.y)).apply(c);
      System.out.println("done " + Math.round(back.x) + " " + utm.prj().length());
    }
  }

  @Test
  void neitherGeoToolsNorTheDataSetIsLoaded() throws IOException, InterruptedException {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Process process =
        new ProcessBuilder(
                List.of(
                    java,
                    "-Xlog:class+load",
                    "-cp",
                    System.getProperty("java.class.path"),
                    UtmAndBack.class.getName()))
            .redirectErrorStream(true)
            .start();
    List<String> lines = process.inputReader().lines().toList();
    assertThat(process.waitFor()).isZero();
    assertThat(lines).anyMatch(l -> l.contains("org.mottle.export.crs.CrsTransform "));
    assertThat(lines).anyMatch(l -> l.startsWith("done 602513 "));
    List<String> libraries =
        lines.stream()
            .filter(l -> l.contains("org.geotools") || l.contains("org.hsqldb"))
            .map(l -> l.substring(l.indexOf("org.")))
            .toList();
    assertThat(libraries).isEmpty();
  }
}
