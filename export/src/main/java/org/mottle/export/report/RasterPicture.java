package org.mottle.export.report;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Base64;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.export.style.Ramp;

/** A raster as a small picture inside a page, a pixel a cell; cells without value are clear. */
public final class RasterPicture {
  private RasterPicture() {}

  /**
   * @param title read out by a screen reader
   * @param pixels width and height on the page are the cells times this
   */
  public static String of(Raster raster, Ramp ramp, String title, double pixels) {
    CellGrid grid = raster.grid();
    return String.format(
        Locale.ROOT,
        "<img alt=\"%s\" width=\"%.0f\" height=\"%.0f\" style=\"image-rendering:pixelated\""
            + " src=\"%s\">",
        Markup.text(title),
        grid.columns() * pixels,
        grid.rows() * pixels,
        uri(raster, ramp));
  }

  /** The picture as a data URI, a pixel a cell. */
  static String uri(Raster raster, Ramp ramp) {
    CellGrid grid = raster.grid();
    BufferedImage image =
        new BufferedImage(grid.columns(), grid.rows(), BufferedImage.TYPE_INT_ARGB);
    for (int row = 0; row < grid.rows(); row++) {
      for (int column = 0; column < grid.columns(); column++) {
        double value = raster.value(grid.index(row, column));
        if (!Double.isNaN(value)) {
          image.setRGB(column, row, 0xff000000 | ramp.of(value));
        }
      }
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      ImageIO.write(image, "png", bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("a picture in memory was not written", e);
    }
    return "data:image/png;base64," + Base64.getEncoder().encodeToString(bytes.toByteArray());
  }

  /** The scale of a ramp, its ends and middle named. */
  public static String scale(Ramp ramp, String unit) {
    StringBuilder svg = new StringBuilder();
    double step = 22;
    svg.append(
        String.format(
            Locale.ROOT,
            "<svg width=\"%.0f\" height=\"34\" role=\"img\" aria-label=\"scale from %.3g to %.3g %s\">",
            ramp.classes() * step + 90,
            ramp.low(),
            ramp.high(),
            Markup.text(unit)));
    for (int c = 0; c < ramp.classes(); c++) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<rect x=\"%.0f\" y=\"0\" width=\"%.0f\" height=\"14\" fill=\"#%06x\" stroke=\"#555\""
                  + " stroke-width=\".5\"/>",
              24 + c * step,
              step,
              ramp.colour(c)));
    }
    double[] at = {0, 0.5, 1};
    for (double share : at) {
      svg.append(
          String.format(
              Locale.ROOT,
              "<text x=\"%.0f\" y=\"29\" font-size=\"11\" text-anchor=\"middle\">%.3g%s</text>",
              24 + share * ramp.classes() * step,
              ramp.low() + share * (ramp.high() - ramp.low()),
              share == 1 ? " " + Markup.text(unit) : ""));
    }
    return svg + "</svg>\n";
  }
}
