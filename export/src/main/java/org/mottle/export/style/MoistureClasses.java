package org.mottle.export.style;

import java.util.ArrayList;
import java.util.List;
import org.mottle.engine.patch.ZoneClass;

/** The classes of moisture against a band: a colour and a pattern each, the same wherever drawn. */
final class MoistureClasses {
  private MoistureClasses() {}

  static int colour(ZoneClass cls) {
    return switch (cls) {
      case DRY -> Palette.DRY;
      case PROBABLY_DRY -> Palette.PROBABLY_DRY;
      case IN_BAND -> Palette.IN_BAND;
      case PROBABLY_WET -> Palette.PROBABLY_WET;
      case WET -> Palette.WET;
      case CANNOT_TELL -> Palette.PURPLE;
      case NO_VALUE -> Palette.WHITE;
    };
  }

  private static Hatch hatch(ZoneClass cls) {
    return switch (cls) {
      case DRY -> Hatch.RISING;
      case PROBABLY_DRY -> Hatch.UPRIGHT;
      case IN_BAND -> Hatch.NONE;
      case PROBABLY_WET -> Hatch.LEVEL;
      case WET -> Hatch.FALLING;
      case CANNOT_TELL -> Hatch.DOTS;
      case NO_VALUE -> Hatch.CROSSED;
    };
  }

  /** A rule a class by its number in {@code cls_no}, from dry to wet. */
  static List<Rule> rules(Stroke outline) {
    List<Rule> rules = new ArrayList<>();
    for (ZoneClass cls : ZoneClass.values()) {
      boolean sure = cls == ZoneClass.DRY || cls == ZoneClass.WET;
      rules.add(
          new Rule(
              cls.code(),
              new Condition.Is("cls_no", (long) cls.number()),
              new AreaSymbol(
                  colour(cls),
                  cls == ZoneClass.CANNOT_TELL ? 0.35 : 0.9,
                  hatch(cls),
                  sure ? Palette.WHITE : Palette.DARK,
                  outline)));
    }
    return rules;
  }
}
