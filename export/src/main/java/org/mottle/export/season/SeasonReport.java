package org.mottle.export.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.mottle.engine.drainage.DrainageFinding;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.season.Change;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.write.Delivered;

/**
 * What a season has to say.
 *
 * @param map of all surveys
 * @param told what was detected or decided on the way
 * @param lines what was found, one line each
 * @param figures of the summary
 * @param delivered the files
 */
public record SeasonReport(
    SurveyMap map,
    List<String> told,
    List<String> lines,
    Map<String, ?> figures,
    Delivered delivered) {

  public SeasonReport {
    told = List.copyOf(told);
    lines = List.copyOf(lines);
  }

  /** One line a green and survey without a map, with the reason. */
  public List<String> unmapped() {
    return map.notMapped().stream()
        .map((Outcome.NoMap n) -> n.subject().label() + ": no map: " + n.why())
        .toList();
  }

  public String json() {
    return Json.text(figures);
  }

  /** For the terminal. */
  public String text() {
    List<String> all = new ArrayList<>(told);
    all.addAll(unmapped());
    all.addAll(lines);
    all.addAll(delivered.notes());
    all.add(delivered.files().size() + " files in " + delivered.folder());
    all.add(Provenance.DISCLAIMER);
    return String.join("\n", all) + "\n";
  }

  /** A wet place in one line. */
  static String line(DrainageFinding f) {
    return String.format(
        Locale.ROOT,
        "green %s, wet place %s, %.0f m²: %s; next, %s",
        f.place().greenId(),
        f.place().placeId(),
        f.place().areaM2(),
        f.why(),
        f.next().text());
  }

  /** A pair in one line. */
  static String line(Pair pair) {
    String head = "green " + pair.greenId() + ", " + pair.before() + " to " + pair.after() + ": ";
    if (pair.change().value().isEmpty()) {
      return head + "not compared: " + pair.change().refusal().orElseThrow();
    }
    Change c = pair.change().value().get();
    Interval whole = c.whole().interval();
    String change =
        String.format(
            Locale.ROOT,
            "%+.1f %% (%+.1f to %+.1f); surely fallen by more than %.2g %% on %.0f %% of the green,"
                + " risen on %.0f %%",
            whole.best(),
            whole.low(),
            whole.high(),
            c.limitPct(),
            100 * SeasonRows.shareAbove(c.pFall(), 0.8),
            100 * SeasonRows.shareAbove(c.pRise(), 0.8));
    return head
        + change
        + pair.dried()
            .map(
                d ->
                    String.format(
                        Locale.ROOT,
                        "; dries %.2f %% a day (%.2f to %.2f)%s",
                        d.whole().best(),
                        d.whole().low(),
                        d.whole().high(),
                        Double.isNaN(d.etRate())
                            ? ""
                            : String.format(
                                Locale.ROOT, ", the turf draws %.2f %% a day", d.etRate())))
            .orElse("");
  }
}
