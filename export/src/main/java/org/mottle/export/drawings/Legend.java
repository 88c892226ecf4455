package org.mottle.export.drawings;

import java.awt.image.BufferedImage;
import java.util.List;

/**
 * The key of a map as a picture: a field of colour and its figures a class, low at the bottom. The
 * figures are drawn from dots, since fonts differ from machine to machine.
 */
final class Legend {
  private static final String SIGNS = "0123456789.- ";

  /** Three dots wide, five high, from the top; a bit a dot. */
  private static final int[] DOTS = {
    0b111101101101111, 0b010110010010111, 0b111001111100111, 0b111001111001111, 0b101101111001001,
    0b111100111001111, 0b111100111101111, 0b111001010010010, 0b111101111101111, 0b111101111001111,
    0b000000000000010, 0b000000111000000, 0
  };

  private static final int DOT = 3;
  private static final int ROW = 24;
  private static final int FIELD = 30;
  private static final int PAPER = 0xf0ffffff;
  private static final int INK = 0xff1c1c1c;

  private Legend() {}

  static BufferedImage of(List<Colouring.Entry> key) {
    int longest = key.stream().mapToInt(e -> e.mark().length()).max().orElse(1);
    BufferedImage image =
        new BufferedImage(
            FIELD + 18 + longest * 4 * DOT, key.size() * ROW + 8, BufferedImage.TYPE_INT_ARGB);
    fill(image, 0, 0, image.getWidth(), image.getHeight(), PAPER);
    for (int i = 0; i < key.size(); i++) {
      Colouring.Entry entry = key.get(i);
      int top = 4 + (key.size() - 1 - i) * ROW;
      fill(image, 4, top, FIELD, ROW - 2, INK);
      fill(image, 5, top + 1, FIELD - 2, ROW - 4, 0xff000000 | entry.colour());
      write(image, entry.mark(), FIELD + 12, top + 3);
    }
    return image;
  }

  private static void write(BufferedImage image, String figures, int left, int top) {
    for (int i = 0; i < figures.length(); i++) {
      int dots = DOTS[Math.max(0, SIGNS.indexOf(figures.charAt(i)))];
      for (int d = 0; d < 15; d++) {
        if ((dots >> (14 - d) & 1) == 1) {
          fill(image, left + (i * 4 + d % 3) * DOT, top + d / 3 * DOT, DOT, DOT, INK);
        }
      }
    }
  }

  private static void fill(BufferedImage image, int x, int y, int width, int height, int argb) {
    for (int row = y; row < Math.min(image.getHeight(), y + height); row++) {
      for (int column = x; column < Math.min(image.getWidth(), x + width); column++) {
        image.setRGB(column, row, argb);
      }
    }
  }
}
