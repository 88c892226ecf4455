package org.mottle.engine.position;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Where positions come from, with the standard error per axis that is usual for each when none is
 * recorded: that of a reading's own (jitter), and that of a shift common to a visit of a green.
 * Satellite positions taken within minutes share most of a slow error; a tape or a plan has none
 * (common practice, no source).
 */
public enum PositionSource {
  SURVEYED(0.05, 0, "tape", "total station", "rtk", "surveyed"),
  PLANNED(0.7, 0, "plan", "planned"),
  AVERAGED(1.0, 1.0, "sbas", "dgnss", "dgps", "averaged"),
  CODE_ONLY(3.0, 2.0, "phone", "gnss", "gps", "code"),
  TRACK(3.0, 2.0, "track"),
  ORDER(1.75, 0, "order");

  private final double jitterM;
  private final double shiftM;
  private final List<String> names;

  PositionSource(double jitterM, double shiftM, String... names) {
    this.jitterM = jitterM;
    this.shiftM = shiftM;
    this.names = List.of(names);
  }

  /** The source of a name as it stands in files. */
  public static Optional<PositionSource> named(String name) {
    String wanted = name.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(s -> s.names.contains(wanted)).findFirst();
  }

  /** Every name that is known. */
  public static List<String> allNames() {
    return Arrays.stream(values()).flatMap(s -> s.names.stream()).toList();
  }

  /** Usual standard error per axis of a reading's own position, m. */
  public double jitterM() {
    return jitterM;
  }

  /** Usual standard error per axis of the shift common to a visit, m. */
  public double shiftM() {
    return shiftM;
  }
}
