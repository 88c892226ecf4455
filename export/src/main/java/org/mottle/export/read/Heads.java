package org.mottle.export.read;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.irrigation.Head;
import org.mottle.export.crs.Crs;

/**
 * Sprinkler heads as they were read.
 *
 * @param heads in the order of the file
 * @param states what is recorded of the state of a head, by its id; heads without are not in it
 * @param working what their coordinates are in
 * @param source name of the file, for messages
 * @param notes what was detected or decided, one line each, to be told to the user
 */
public record Heads(
    List<Head> heads, Map<String, String> states, Crs working, String source, List<String> notes) {
  public Heads {
    heads = List.copyOf(heads);
    states = Map.copyOf(states);
    notes = List.copyOf(notes);
  }

  /** Those that water a green, in the order of the file. */
  public List<Head> of(String greenId) {
    return heads.stream().filter(h -> h.greenId().equals(greenId)).toList();
  }

  /** Of one head; empty when nothing is recorded. */
  public Optional<String> state(Head head) {
    return Optional.ofNullable(states.get(head.id()));
  }
}
