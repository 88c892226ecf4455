package org.mottle.export.read;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a file says of its heights.
 *
 * @param datum vertical datum, as recorded; empty when it is not
 * @param unit empty when it is not recorded
 */
record HeightFacts(String datum, Optional<ElevationUnit> unit) {
  static final HeightFacts NONE = new HeightFacts("", Optional.empty());

  /** The vertical part of a well-known text. */
  private static final Pattern VERTICAL =
      Pattern.compile("(?is)VERT(?:_CS|CS|CRS|ICALCRS)\\s*\\[\\s*\"([^\"]*)\"(.*)");

  private static final Pattern UNIT =
      Pattern.compile("(?is)UNIT\\s*\\[\\s*\"([^\"]*)\"\\s*,\\s*([0-9.eE+-]+)");

  /** Of a well-known text, the first or second generation. */
  static HeightFacts ofText(String wkt) {
    Matcher vertical = VERTICAL.matcher(wkt);
    if (!vertical.find()) {
      return NONE;
    }
    Optional<ElevationUnit> unit = Optional.empty();
    Matcher named = UNIT.matcher(vertical.group(2));
    if (named.find()) {
      double metres = Double.parseDouble(named.group(2));
      for (ElevationUnit known : ElevationUnit.values()) {
        unit = Math.abs(known.metres() - metres) < 1e-9 ? Optional.of(known) : unit;
      }
    }
    return new HeightFacts(vertical.group(1), unit);
  }
}
