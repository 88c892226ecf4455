package org.mottle.export.audit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.irrigation.AreaAudit;
import org.mottle.engine.irrigation.Caution;
import org.mottle.engine.irrigation.HeadCoverage;
import org.mottle.engine.irrigation.Missing;
import org.mottle.engine.irrigation.Uniformity;
import org.mottle.engine.irrigation.UniformityEstimate;
import org.mottle.engine.survey.Refusal;
import org.mottle.export.record.Json;
import org.mottle.export.record.Provenance;
import org.mottle.export.write.Delivered;

/** What an audit has to say. */
public final class AuditReport {
  private final Audited audited;
  private final List<String> told;
  private final Map<String, ?> figures;
  private final Optional<Delivered> delivered;

  AuditReport(
      Audited audited, List<String> told, Map<String, ?> figures, Optional<Delivered> delivered) {
    this.audited = audited;
    this.told = List.copyOf(told);
    this.figures = figures;
    this.delivered = delivered;
  }

  /** One a green and run. */
  public List<AreaAudit> areas() {
    return audited.areas();
  }

  /** One a green with heads. */
  public List<HeadCoverage> coverage() {
    return audited.coverage();
  }

  /** Notes of the readers. */
  public List<String> told() {
    return told;
  }

  /** One line for each figure that was asked for and could not be given. */
  public List<String> lacking() {
    List<String> lines = new ArrayList<>();
    for (AreaAudit a : audited.areas()) {
      for (Missing m : a.told().missing()) {
        boolean outlines = audited.greens().isPresent();
        boolean asked =
            List.of("du_lq", "cu", "run_min").contains(m.figure())
                || m.figure().startsWith("sc") && outlines;
        if (asked) {
          lines.add(name(a) + ": " + m);
        }
      }
    }
    return lines;
  }

  public String json() {
    return Json.text(figures);
  }

  /** For the terminal. */
  public String text() {
    List<String> lines = new ArrayList<>(told);
    for (AreaAudit a : audited.areas()) {
      lines.add(line(a));
      missing(a).forEach(m -> lines.add("  not given: " + m));
      for (Caution c : a.told().cautions()) {
        lines.add("  note: " + c.text());
      }
    }
    for (HeadCoverage c : audited.coverage()) {
      lines.add("%s: %s".formatted(c.green().id(), reach(c)));
    }
    delivered.ifPresent(
        d -> {
          lines.addAll(d.notes());
          lines.add(d.files().size() + " files in " + d.folder());
        });
    lines.add(Provenance.DISCLAIMER);
    return String.join("\n", lines) + "\n";
  }

  private String line(AreaAudit a) {
    StringBuilder line = new StringBuilder(name(a)).append(": ");
    line.append(a.area().cans().size()).append(" cans");
    if (a.uniformity().isPresent()) {
      UniformityEstimate u = a.uniformity().get();
      Uniformity f = u.figures();
      line.append(
          format(
              ", DU of the low quarter (%s) %.3f%s, usual reading %s; CU %.1f %%%s",
              audited.settings().rule().label(),
              f.duLowQuarter(),
              u.hasIntervals()
                  ? format(" (%.2f to %.2f)", u.duLowQuarter().low(), u.duLowQuarter().high())
                  : "",
              f.reading(),
              f.cuPct(),
              u.hasIntervals()
                  ? format(" (%.0f to %.0f)", u.cuPct().low(), u.cuPct().high())
                  : ""));
      line.append(format("; run-time multiplier %.2f", a.runTime().multiplier()));
    }
    a.scheduling().stream()
        .filter(s -> s.refusal().isEmpty())
        .forEach(s -> line.append(format("; SC %.0f %% %.2f", 100 * s.share(), s.value())));
    if (!Double.isNaN(a.applied().rateMmH())) {
      line.append(format("; %.1f mm/h", a.applied().rateMmH()));
    }
    if (!Double.isNaN(a.runTime().minutes())) {
      line.append(format("; run %.0f min a day", a.runTime().minutes()));
    }
    return line.toString();
  }

  /** Figures that could not be given, those of one reason together: "mm, mm_h: no mouth area". */
  static List<String> missing(AreaAudit a) {
    Map<Refusal, List<String>> byReason = new LinkedHashMap<>();
    for (Missing m : a.told().missing()) {
      byReason.computeIfAbsent(m.refusal(), k -> new ArrayList<>()).add(m.figure());
    }
    List<String> lines = new ArrayList<>();
    byReason.forEach((why, figures) -> lines.add(String.join(", ", figures) + ": " + why));
    return lines;
  }

  /** "reached by 2 heads 10 %, by 3 90 % of the green". */
  static String reach(HeadCoverage coverage) {
    List<String> parts = new ArrayList<>();
    coverage
        .shares()
        .forEach(
            (n, share) ->
                parts.add(
                    format(
                        "by %s %.1f %%",
                        n == 0 ? "no head" : n == 1 ? "1 head" : n + " heads", 100 * share)));
    return "reached " + String.join(", ", parts) + " of the green";
  }

  static String name(AreaAudit a) {
    String green = a.area().greenId().isEmpty() ? "all cans" : "green " + a.area().greenId();
    return a.area().run().isEmpty() ? green : green + ", " + a.area().run();
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
