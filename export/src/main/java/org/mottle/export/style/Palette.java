package org.mottle.export.style;

/**
 * Published colours for classes, 0xrrggbb; figures from memory.
 *
 * <p>Moisture: BrBG of five classes (Brewer 1994, ColorBrewer 2.0), brown for dry and green for
 * wet, told apart with the common weaknesses of colour vision. Kinds: the eight colours of Okabe
 * and Ito (2008), "Color Universal Design".
 */
final class Palette {
  static final String MOISTURE_SOURCE = "colours: BrBG, ColorBrewer 2.0 (Brewer 1994)";
  static final String RAMP_SOURCE = "colours: YlGnBu, ColorBrewer 2.0 (Brewer 1994)";
  static final String KIND_SOURCE = "colours: Okabe and Ito (2008), Color Universal Design";

  static final int DRY = 0xa6611a;
  static final int PROBABLY_DRY = 0xdfc27d;
  static final int IN_BAND = 0xf5f5f5;
  static final int PROBABLY_WET = 0x80cdc1;
  static final int WET = 0x018571;

  static final int BLACK = 0x000000;
  static final int ORANGE = 0xe69f00;
  static final int SKY = 0x56b4e9;
  static final int GREEN = 0x009e73;
  static final int YELLOW = 0xf0e442;
  static final int BLUE = 0x0072b2;
  static final int VERMILION = 0xd55e00;
  static final int PURPLE = 0xcc79a7;

  static final int WHITE = 0xffffff;
  static final int DARK = 0x303030;
  static final int GREY = 0x8c8c8c;

  private Palette() {}
}
