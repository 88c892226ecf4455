package org.mottle.samples;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.mottle.export.cli.Mottle;
import org.mottle.samples.picture.GreenMap;
import org.mottle.samples.picture.MapSheet;

/**
 * 05: a picture of what was delivered: zones, lines of equal moisture and stations of two greens,
 * read back from the GeoPackage and drawn with the JDK alone. It makes {@code docs/images/map.png}.
 */
public final class Sample05Picture {

  private Sample05Picture() {}

  /** The folder to map into and the picture to write are the arguments. */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args.length > 0 ? args[0] : "sample-05");
    Path picture = Path.of(args.length > 1 ? args[1] : "sample-05.png");
    if (map(folder) == 0) {
      draw(folder, picture);
      System.out.println("drawn: " + picture);
    }
  }

  /** The demo: every green of the invented course, 36 hours after rain. */
  static int map(Path folder) {
    return Mottle.run(
        "demo", "--cells", "--formats", "geopackage", "--quiet", "--out", folder.toString());
  }

  static void draw(Path delivered, Path picture) throws IOException {
    System.setProperty("java.awt.headless", "true");
    MapSheet sheet =
        new MapSheet(
            List.of(GreenMap.read(delivered, "G3", "S1"), GreenMap.read(delivered, "G6", "S1")),
            "Ostrevane Heath, an invented course; EPSG:32628, grid north up. Colours: ColorBrewer"
                + " BrBG. Decision support: the site's agronomist decides.");
    if (picture.toAbsolutePath().getParent() != null) {
      Files.createDirectories(picture.toAbsolutePath().getParent());
    }
    if (!ImageIO.write(sheet.draw(), "png", picture.toFile())) {
      throw new IOException("no writer of PNG for " + picture);
    }
  }
}
