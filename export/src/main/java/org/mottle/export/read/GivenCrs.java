package org.mottle.export.read;

import java.util.List;
import java.util.Optional;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/** The reference system of a file: its own first, then the one the user gave. */
final class GivenCrs {
  private GivenCrs() {}

  /** What the file says of itself stands; --crs is for files that say nothing. */
  static Optional<Crs> choose(
      String file, Optional<Crs> own, InputOptions options, List<String> notes) {
    if (own.isPresent() && options.crs().isPresent() && !own.equals(options.crs())) {
      notes.add(
          "%s is in %s, as it says itself; --crs is for files that name none"
              .formatted(file, own.get()));
    }
    return own.or(options::crs);
  }

  /** The system of a description inside a file, with the file's name in what goes wrong. */
  static Crs described(String file, String text) {
    try {
      return Crs.parse(text);
    } catch (InputRefused e) {
      throw new InputRefused(e.lines().stream().map(l -> file + ": " + l).toList());
    }
  }

  static InputRefused missing(String file, String why) {
    return new InputRefused(
        "%s %s; name its CRS with --crs, like --crs EPSG:32630".formatted(file, why));
  }
}
