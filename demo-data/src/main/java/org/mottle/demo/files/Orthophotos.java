package org.mottle.demo.files;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.mottle.demo.random.Decimals;
import org.mottle.demo.random.Stream;
import org.mottle.demo.site.Bunker;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Head;
import org.mottle.demo.site.Point;
import org.mottle.demo.site.Ring;
import org.mottle.demo.walk.Season;

/**
 * Synthetic orthophotos, one a green with 12 m round it: 0.10 m pixels, PNG with world file, .prj
 * and .aux.xml. Everything is drawn 0.6 m too far east and 0.4 m too far south, for a registration
 * check to find. The pixels are the same everywhere; the compressed bytes depend on the JDK.
 */
final class Orthophotos {

  static final double SHIFT_EAST_M = 0.6;
  static final double SHIFT_NORTH_M = -0.4;
  private static final double PIXEL_M = 0.10;
  private static final double AROUND_M = 12;

  private Orthophotos() {}

  static void write(Season season, Path folder) throws IOException {
    for (GreenSite green : CoursePlace.greens()) {
      GridText frame = ElevationFiles.frame(green, AROUND_M, PIXEL_M);
      String name = "ortho_" + green.id();
      BufferedImage image = draw(season.seed(), green, frame);
      Path file = folder.resolve(name + ".png");
      if (!ImageIO.write(image, "png", file.toFile())) {
        throw new IOException("no PNG writer for " + file);
      }
      text(folder, name + ".pgw", worldFile(frame));
      text(folder, name + ".prj", GridText.PRJ);
      String srs = GridText.PRJ.strip().replace("\"", "&quot;");
      text(folder, name + ".png.aux.xml", "<PAMDataset><SRS>" + srs + "</SRS></PAMDataset>\n");
    }
  }

  private static BufferedImage draw(long seed, GreenSite green, GridText frame) {
    BufferedImage image =
        new BufferedImage(frame.columns(), frame.rows(), BufferedImage.TYPE_INT_RGB);
    Stream grain = Stream.of(seed, green.id(), "all", "orthophoto grain");
    Ground ground = new Ground(green);
    Point origin = green.world(0, 0);
    for (int row = 0; row < frame.rows(); row++) {
      double y = frame.corner().y() + (frame.rows() - row - 0.5) * PIXEL_M - origin.y();
      for (int column = 0; column < frame.columns(); column++) {
        double x = frame.corner().x() + (column + 0.5) * PIXEL_M - origin.x();
        int colour = ground.colour(x - SHIFT_EAST_M, y - SHIFT_NORTH_M);
        image.setRGB(column, row, grained(colour, grain.below(17) - 8));
      }
    }
    return image;
  }

  private static int grained(int rgb, int change) {
    int grained = 0;
    for (int shift = 16; shift >= 0; shift -= 8) {
      int channel = Math.max(0, Math.min(255, ((rgb >> shift) & 0xff) + change));
      grained |= channel << shift;
    }
    return grained;
  }

  private static String worldFile(GridText frame) {
    String pixel = Decimals.fixed(PIXEL_M, 2);
    double west = frame.corner().x() + PIXEL_M / 2;
    double north = frame.corner().y() + (frame.rows() - 0.5) * PIXEL_M;
    return String.join(
        "\n", pixel, "0", "0", "-" + pixel, Decimals.fixed(west, 3), Decimals.fixed(north, 3), "");
  }

  private static void text(Path folder, String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text, StandardCharsets.US_ASCII);
  }

  /** Colours of the true ground, metres from the centre of the green. */
  private static final class Ground {
    private static final double HEAD_RADIUS_M = 0.15;
    private static final double STRIPE_M = 1.5;
    private final GreenSite green;
    private final List<Head> heads;
    private final List<Ring> bunkers;

    Ground(GreenSite green) {
      this.green = green;
      this.heads = Head.of(green);
      this.bunkers = Bunker.of(green.id()).stream().map(Bunker::lip).toList();
    }

    int colour(double x, double y) {
      if (heads.stream().anyMatch(h -> h.distance(x, y) <= HEAD_RADIUS_M)) {
        return 0x202020;
      }
      if (bunkers.stream().anyMatch(b -> b.contains(x, y))) {
        return 0xE0D2A8;
      }
      double depth = green.ring().depth(x, y);
      if (depth >= 0) {
        return Math.floorMod((long) Math.floor((x + y) / STRIPE_M), 2L) == 0 ? 0x6FA552 : 0x639A49;
      }
      return depth > -GreenSite.COLLAR_M ? 0x4F8340 : 0x6B7A3C;
    }
  }
}
