package org.mottle.export.read;

import java.util.List;
import java.util.Locale;
import org.mottle.engine.survey.Reading;

/**
 * Readings as they were read.
 *
 * @param readings those that belong to a green, each with its green's id, in the order of the file
 * @param outside those that lie where no map can use them; never dropped in silence
 * @param unplaced those without a position, where they were asked for; x and y are NaN
 * @param source name of the file, for messages
 * @param notes what was detected or decided, one line each, to be told to the user
 */
public record Readings(
    List<Reading> readings,
    List<Outside> outside,
    List<Reading> unplaced,
    String source,
    List<String> notes) {
  public Readings {
    unplaced = List.copyOf(unplaced);
    readings = List.copyOf(readings);
    outside = List.copyOf(outside);
    notes = List.copyOf(notes);
  }

  /** The same, each reading with this name of its file. */
  public Readings named(String file) {
    return new Readings(
        readings.stream().map(r -> r.withLabel(r.label().withFile(file))).toList(),
        outside.stream()
            .map(
                o ->
                    new Outside(
                        o.reading.withLabel(o.reading.label().withFile(file)),
                        o.nearestGreen,
                        o.distanceM,
                        o.place))
            .toList(),
        unplaced.stream().map(r -> r.withLabel(r.label().withFile(file))).toList(),
        source,
        notes);
  }

  /**
   * A reading that lies outside the green it should be in.
   *
   * @param reading as read; its green id is what the file says, empty when it says none
   * @param nearestGreen the green next to it, or round it when that is not the one it names
   * @param distanceM from the outline of that green, m; 0 inside it
   * @param place "readings.csv, row 14"
   */
  public record Outside(Reading reading, String nearestGreen, double distanceM, String place) {

    /** One line for the user. */
    public String line() {
      String named = reading.label().greenId();
      if (distanceM == 0) {
        return "%s: names green %s but lies in green %s".formatted(place, named, nearestGreen);
      }
      return String.format(
          Locale.ROOT,
          "%s: %.1f m outside %s %s",
          place,
          distanceM,
          named.isEmpty() ? "every green; the nearest is" : "green",
          nearestGreen);
    }
  }
}
