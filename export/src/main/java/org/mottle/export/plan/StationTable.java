package org.mottle.export.plan;

import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Coordinate;
import org.mottle.engine.design.PlannedStation;

/**
 * Stations as CSV (RFC 4180, UTF-8, a line feed a row): {@code plan_id, green_id, st_id, seq, role,
 * x, y, lon, lat, insertions}. The columns are those that plans are read back by; {@code x} and
 * {@code y} are metres of the working CRS to the millimetre.
 */
final class StationTable {
  private static final String HEADINGS = "plan_id,green_id,st_id,seq,role,x,y,lon,lat,insertions\n";

  private StationTable() {}

  static String csv(List<GreenPlan> plans, Degrees degrees) {
    StringBuilder text = new StringBuilder(HEADINGS);
    for (GreenPlan plan : plans) {
      int seq = 1;
      for (PlannedStation s : plan.plan().stations()) {
        Coordinate place = degrees.of(s);
        text.append(cell(plan.plan().planId())).append(',');
        text.append(cell(plan.green().id())).append(',').append(cell(s.id())).append(',');
        text.append(seq++).append(',').append(s.role().code()).append(',');
        text.append(
            String.format(
                Locale.ROOT,
                "%.3f,%.3f,%.9f,%.9f,",
                Degrees.toMm(s.x()),
                Degrees.toMm(s.y()),
                place.x,
                place.y));
        text.append(s.insertions()).append('\n');
      }
    }
    return text.toString();
  }

  private static String cell(String text) {
    boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
  }
}
