package org.mottle.samples.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Writes labels where there is room; what is written once keeps its place. Not thread-safe. */
final class Labels {
  private static final float HALO = 3.5f;

  private final Graphics2D g;
  private final List<Rectangle2D> taken = new ArrayList<>();

  Labels(Graphics2D g) {
    this.g = g;
  }

  /** Keeps labels away from a spot. */
  void keepFree(double x, double y, double radius) {
    taken.add(new Rectangle2D.Double(x - radius, y - radius, 2 * radius, 2 * radius));
  }

  /**
   * Writes a label centred on the first of the places that has room.
   *
   * @return whether there was one; otherwise nothing is written
   */
  boolean write(String text, Font font, Color ink, List<Point2D> centres) {
    Rectangle2D size = font.createGlyphVector(g.getFontRenderContext(), text).getVisualBounds();
    for (Point2D c : centres) {
      Rectangle2D box =
          new Rectangle2D.Double(
              c.getX() - size.getWidth() / 2 - 1.5,
              c.getY() - size.getHeight() / 2 - 1.5,
              size.getWidth() + 3,
              size.getHeight() + 3);
      if (taken.stream().noneMatch(t -> t.intersects(box))) {
        taken.add(box);
        Shape glyphs =
            font.createGlyphVector(g.getFontRenderContext(), text)
                .getOutline(
                    (float) (c.getX() - size.getCenterX()), (float) (c.getY() - size.getCenterY()));
        haloed(glyphs, ink);
        return true;
      }
    }
    return false;
  }

  private void haloed(Shape glyphs, Color ink) {
    g.setTransform(new AffineTransform());
    g.setColor(new Color(255, 255, 255, 215));
    g.setStroke(new BasicStroke(HALO, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    g.draw(glyphs);
    g.setColor(ink);
    g.fill(glyphs);
  }
}
