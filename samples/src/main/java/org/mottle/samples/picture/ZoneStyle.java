package org.mottle.samples.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.Arrays;

/**
 * How a class looks: a colour and a pattern, so that it is told apart without colour too. The
 * colours are the five classes of the diverging scheme BrBG, which people with any colour vision
 * can tell apart (Brewer & Harrower, ColorBrewer 2.0; Harrower & Brewer 2003, The Cartographic
 * Journal 40): the inner colours as fill, half as strong for "probably", the outer ones for the
 * patterns.
 */
public enum ZoneStyle {
  DRY("dry", 0xdfc27d, 0xa6611a) {
    @Override
    void pattern(Graphics2D g, Rectangle box) {
      for (int row = 0; row * STEP <= box.height; row++) {
        for (double x = box.x + (row % 2) * STEP / 2.0; x <= box.x + box.width; x += STEP) {
          g.fill(new Ellipse2D.Double(x - 1.1, box.y + row * STEP - 1.1, 2.2, 2.2));
        }
      }
    }
  },
  PROBABLY_DRY("probably dry", 0xefe1bf, 0xa6611a) {
    @Override
    void pattern(Graphics2D g, Rectangle box) {
      for (int row = 0; row * 2 * STEP <= box.height; row++) {
        for (double x = box.x + (row % 2) * STEP; x <= box.x + box.width; x += 2 * STEP) {
          g.fill(new Ellipse2D.Double(x - 0.9, box.y + row * 2 * STEP - 0.9, 1.8, 1.8));
        }
      }
    }
  },
  IN_BAND("in band", 0xf5f5f5, 0x808080) {
    @Override
    void pattern(Graphics2D g, Rectangle box) {
      // plain
    }
  },
  PROBABLY_WET("probably wet", 0xbfe6e0, 0x018571) {
    @Override
    void pattern(Graphics2D g, Rectangle box) {
      hatch(g, box, 2 * STEP, 0.8f);
    }
  },
  WET("wet", 0x80cdc1, 0x018571) {
    @Override
    void pattern(Graphics2D g, Rectangle box) {
      hatch(g, box, STEP, 1.1f);
    }
  },
  CANNOT_TELL("cannot tell", 0xffffff, 0x808080) {
    @Override
    void pattern(Graphics2D g, Rectangle box) {
      g.setStroke(new BasicStroke(0.8f));
      for (double x = box.x; x <= box.x + box.width; x += STEP) {
        g.draw(new Line2D.Double(x, box.y, x, box.y + box.height));
      }
    }
  };

  /** Between the dots or lines of a pattern, pixels. */
  private static final int STEP = 9;

  private final String code;
  private final Color fill;
  private final Color ink;

  ZoneStyle(String code, int fill, int ink) {
    this.code = code;
    this.fill = new Color(fill);
    this.ink = new Color(ink);
  }

  abstract void pattern(Graphics2D g, Rectangle box);

  /** As it stands in the layer. */
  public String code() {
    return code;
  }

  public Color fill() {
    return fill;
  }

  Color ink() {
    return ink;
  }

  static ZoneStyle ofCode(String code) {
    return Arrays.stream(values())
        .filter(style -> style.code.equals(code))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no class is called '" + code + "'"));
  }

  private static void hatch(Graphics2D g, Rectangle box, int step, float width) {
    g.setStroke(new BasicStroke(width));
    for (double d = -box.height; d <= box.width; d += step) {
      g.draw(new Line2D.Double(box.x + d, box.y + box.height, box.x + d + box.height, box.y));
    }
  }

  /** Fills a shape, given in pixels. */
  void paint(Graphics2D g, Shape shape) {
    Graphics2D own = (Graphics2D) g.create();
    own.setColor(fill);
    own.fill(shape);
    own.clip(shape);
    own.setColor(ink);
    pattern(own, shape.getBounds());
    own.dispose();
  }
}
