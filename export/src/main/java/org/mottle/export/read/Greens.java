package org.mottle.export.read;

import java.util.List;
import org.mottle.engine.survey.Green;
import org.mottle.export.crs.Crs;

/**
 * Greens as they were read.
 *
 * @param greens in the order of the file
 * @param working what their coordinates are in
 * @param source name of the file, for messages
 * @param notes what was detected or decided, one line each, to be told to the user
 */
public record Greens(List<Green> greens, Crs working, String source, List<String> notes) {
  public Greens {
    greens = List.copyOf(greens);
    notes = List.copyOf(notes);
  }
}
