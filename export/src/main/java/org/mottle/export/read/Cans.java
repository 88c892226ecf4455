package org.mottle.export.read;

import java.util.List;
import java.util.Optional;
import org.mottle.engine.irrigation.CatchCan;
import org.mottle.export.crs.Crs;

/**
 * Catch cans as they were read.
 *
 * @param cans in the order of the file
 * @param working what their coordinates are in; empty when none has a place
 * @param source name of the file, for messages
 * @param notes what was detected or left out, one line each, to be told to the user
 */
public record Cans(List<CatchCan> cans, Optional<Crs> working, String source, List<String> notes) {
  public Cans {
    cans = List.copyOf(cans);
    notes = List.copyOf(notes);
  }
}
