package org.mottle.export.read;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.position.Mark;
import org.mottle.engine.position.Tie;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * Reads things of known place (heads, corners) and the positions that a receiver gave at them:
 * points with {@code mark_id} or {@code head_id}.
 */
public final class MarksReader {
  private static final List<String> NAMES = List.of("mark_id", "head_id");

  private final FeatureTable table;
  private final Problems problems = new Problems();
  private final Columns columns;
  private final Coordinate[] places;
  private final String[] mark;

  private MarksReader(String file, InputOptions options, Crs working) {
    this.table = FeatureFile.read(file, options);
    this.columns = new Columns(table, options, problems);
    String name = NAMES.stream().filter(n -> columns.find(n).isPresent()).findFirst().orElse("");
    problems.require(
        !name.isEmpty(),
        "%s has no column mark_id or head_id; its columns are %s",
        table.name(),
        columns.named());
    problems.throwIfAny();
    this.places = PointPlaces.of(table, working, problems);
    this.mark = columns.texts(name);
    for (int i = 0; i < mark.length; i++) {
      problems.require(
          !mark[i].isEmpty(), "%s: the mark has no name", table.at(table.rows().get(i)));
    }
    problems.throwIfAny();
  }

  /**
   * @param working CRS of the greens
   * @throws InputRefused with every problem of the file
   */
  public static List<Mark> marks(String file, InputOptions options, Crs working) {
    MarksReader reader = new MarksReader(file, options, working);
    String[] green = reader.columns.texts("green_id");
    reader.requireOnce();
    List<Mark> marks = new ArrayList<>();
    for (int i = 0; i < reader.mark.length; i++) {
      marks.add(new Mark(reader.mark[i], green[i], reader.places[i].x, reader.places[i].y));
    }
    return marks;
  }

  /** Ties name a mark by its name alone. */
  private void requireOnce() {
    Map<String, Integer> seen = new HashMap<>();
    for (int i = 0; i < mark.length; i++) {
      int number = table.rows().get(i).number();
      Integer before = seen.putIfAbsent(mark[i], number);
      problems.require(
          before == null,
          "%s: mark %s stands in %ss %s and %s; give every mark of the course a name of its own",
          table.name(),
          mark[i],
          table.origin().unit(),
          before,
          number);
    }
    problems.throwIfAny();
  }

  /** As {@link #marks}: the positions recorded at marks, with {@code surv_id}, {@code green_id}. */
  public static List<Tie> ties(String file, InputOptions options, Crs working) {
    MarksReader reader = new MarksReader(file, options, working);
    String[] survey = reader.columns.texts("surv_id");
    String[] green = reader.columns.texts("green_id");
    String[] operator = reader.columns.texts("oper");
    String[] source = reader.columns.texts("pos_src");
    List<Tie> ties = new ArrayList<>();
    for (int i = 0; i < reader.mark.length; i++) {
      ties.add(
          new Tie(
              survey[i],
              green[i],
              operator[i],
              reader.mark[i],
              reader.places[i].x,
              reader.places[i].y,
              source[i],
              reader.table.rows().get(i).number()));
    }
    return ties;
  }
}
