package org.mottle.samples;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
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
    Path folder = Path.of(args.length > 0 ? args[0] : "target/sample-05");
    Path picture = Path.of(args.length > 1 ? args[1] : "target/sample-05.png");
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
            List.of(
                "Lines and zones show the local mean: what differs within a hand's breadth, soil or"
                    + " probe, is filtered out, so that a single reading may disagree.",
                "Ostrevane Heath, an invented course; EPSG:32628, grid north up. Colours:"
                    + " ColorBrewer BrBG. Decision support: the site's agronomist decides."));
    if (picture.toAbsolutePath().getParent() != null) {
      Files.createDirectories(picture.toAbsolutePath().getParent());
    }
    write(sheet.draw(), picture);
  }

  /** PNG at the strongest compression. */
  private static void write(BufferedImage image, Path picture) throws IOException {
    ImageWriter png = ImageIO.getImageWritersByFormatName("png").next();
    ImageWriteParam param = png.getDefaultWriteParam();
    param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    param.setCompressionQuality(0);
    try (OutputStream file = Files.newOutputStream(picture);
        ImageOutputStream out = ImageIO.createImageOutputStream(file)) {
      png.setOutput(out);
      png.write(null, new IIOImage(image, null, null), param);
    } finally {
      png.dispose();
    }
  }
}
