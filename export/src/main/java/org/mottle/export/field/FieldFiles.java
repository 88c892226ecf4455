package org.mottle.export.field;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The files beside greens and readings.
 *
 * @param conditions protocol record, a table
 * @param plan station plans
 * @param controls readings of control stations, where they are in a file of their own
 * @param ties positions recorded at marks
 * @param marks places of the marks
 * @param tracks GPX tracks
 * @param cores cores beside readings, of which a curve of the site is made
 */
public record FieldFiles(
    Optional<String> conditions,
    Optional<String> plan,
    Optional<String> controls,
    Optional<String> ties,
    Optional<String> marks,
    List<String> tracks,
    Optional<String> cores) {

  /** None of them. */
  public static final FieldFiles NONE =
      new FieldFiles(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          Optional.empty());

  public FieldFiles {
    tracks = List.copyOf(tracks);
  }

  /** Every file, for the record. */
  public List<String> all() {
    List<String> all = new ArrayList<>();
    for (Optional<String> one : List.of(conditions, plan, controls, ties, marks, cores)) {
      one.ifPresent(all::add);
    }
    all.addAll(tracks);
    return all;
  }

  public boolean isEmpty() {
    return all().isEmpty();
  }
}
