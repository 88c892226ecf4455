package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.mottle.engine.adjust.Drying;
import org.mottle.engine.adjust.OperatorOffset;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.SharedError;

/**
 * The readings of one survey made comparable: drying by its control stations, operators by the
 * stations they share. What is not corrected for, or only to its standard error, is carried as an
 * error that readings have in common.
 */
final class Comparison {
  private final String surveyId;
  private final List<Sheet> sheets;
  private final List<Reading> controls;
  private final List<Finding> findings;

  Comparison(String surveyId, List<Sheet> sheets, List<Reading> controls, List<Finding> findings) {
    this.surveyId = surveyId;
    this.sheets = sheets;
    this.controls = controls;
    this.findings = findings;
  }

  /** The drying seen by the control stations; empty where none were read. */
  Optional<Drying> drying() {
    double first = hours().min().orElse(Double.NaN);
    double last = hours().max().orElse(Double.NaN);
    double span = last - first;
    List<Reading> timed =
        controls.stream().filter(r -> r.quality().used() && !Double.isNaN(Sheet.hour(r))).toList();
    Optional<Drying> drying =
        timed.isEmpty() || !(span > 0) ? Optional.empty() : Optional.of(slope(timed, span));
    if (drying.isPresent() && drying.get().known()) {
      correct(drying.get(), first, span);
    } else {
      unseen(first, span);
    }
    return drying;
  }

  private java.util.stream.DoubleStream hours() {
    return sheets.stream()
        .flatMapToDouble(s -> Arrays.stream(s.hour))
        .filter(h -> !Double.isNaN(h));
  }

  private static Drying slope(List<Reading> timed, double span) {
    List<String> names =
        new ArrayList<>(new LinkedHashSet<>(timed.stream().map(Comparison::station).toList()));
    return Drying.of(
        timed.stream().mapToDouble(Sheet::hour).toArray(),
        timed.stream().mapToDouble(Reading::pct).toArray(),
        timed.stream().mapToInt(r -> names.indexOf(station(r))).toArray(),
        span);
  }

  private static String station(Reading control) {
    return control.label().greenId() + "/" + control.label().stationId();
  }

  private void correct(Drying drying, double first, double span) {
    for (Sheet sheet : sheets) {
      double[] share = new double[sheet.size()];
      for (int i = 0; i < share.length; i++) {
        double after = sheet.hour[i] - first;
        share[i] = Double.isNaN(after) ? 0.5 : after / span;
        if (drying.corrected() && !Double.isNaN(after)) {
          sheet.takeOff(i, drying.correction(after), "drying");
        }
      }
      double left = drying.leftAtEndPct();
      sheet.errors.add(new SharedError("drying", share, left * left));
    }
    findings.add(
        new Finding(
            Rule.DRYING,
            Severity.NOTE,
            surveyId,
            "",
            List.of(),
            String.format(
                Locale.ROOT,
                "the control stations changed by %s; over %.1f h %s",
                drying.words(),
                span,
                drying.corrected()
                    ? String.format(
                        Locale.ROOT,
                        "readings are taken back to the start of the survey, by up to %.1f %%",
                        Math.abs(drying.slopePctH() * span))
                    : "that is too little or too unsure to correct; it is carried as uncertainty"),
            ""));
  }

  /** Without control readings the loss by evapotranspiration is the scale of what may be missed. */
  private void unseen(double first, double span) {
    List<String> asked = new ArrayList<>();
    for (Sheet sheet : sheets) {
      double et0 = sheet.visit.conditions().map(c -> c.water().et0MmDay()).orElse(Double.NaN);
      if (Double.isNaN(et0)) {
        asked.add(sheet.visit.green().id());
      } else if (span > 0) {
        double root = sheet.visit.green().rootZone().rootDepthMm();
        if (Double.isNaN(root)) {
          asked.add(sheet.visit.green().id());
          continue;
        }
        double loss = 100 * et0 / root * span / 24;
        double[] share = new double[sheet.size()];
        for (int i = 0; i < share.length; i++) {
          share[i] = Double.isNaN(sheet.hour[i]) ? 0.5 : (sheet.hour[i] - first) / span;
        }
        sheet.errors.add(new SharedError("drying", share, loss * loss));
      }
    }
    if (!sheets.isEmpty()) {
      String missing =
          asked.isEmpty()
              ? "the loss by evapotranspiration is carried as uncertainty"
              : "for green "
                  + String.join(", ", asked)
                  + " et0_mm_d or root_mm is not recorded either, so"
                  + " nothing is carried for it";
      findings.add(
          new Finding(
              Rule.DRYING,
              Severity.WARN,
              surveyId,
              "",
              List.of(),
              "no control station was read: how much the ground dried meanwhile is not known; "
                  + missing,
              "read 2 control stations, 5 insertions each, at the start, each hour and at the end"));
    }
  }

  /** The crews compared with the one that read most. */
  List<OperatorOffset> operators() {
    Map<String, Integer> crews = new TreeMap<>();
    for (Sheet sheet : sheets) {
      for (int i : sheet.counting()) {
        crews.merge(crew(sheet.reading(i)), 1, Integer::sum);
      }
    }
    if (crews.size() < 2) {
      return List.of();
    }
    String reference =
        crews.entrySet().stream()
            .reduce((a, b) -> b.getValue() > a.getValue() ? b : a)
            .orElseThrow()
            .getKey();
    List<OperatorOffset> offsets = new ArrayList<>();
    for (String crew : crews.keySet()) {
      if (!crew.equals(reference)) {
        OperatorOffset offset = OperatorOffset.of(crew, reference, differences(crew, reference));
        offsets.add(offset);
        apply(offset);
      }
    }
    return offsets;
  }

  /** Operator and probe; a probe by itself where no operator is named. */
  static String crew(Reading reading) {
    String operator = reading.protocol().operator();
    String probe = reading.protocol().probe();
    return operator.isEmpty() ? probe : probe.isEmpty() ? operator : operator + " with " + probe;
  }

  private double[] differences(String crew, String reference) {
    List<Double> all = new ArrayList<>();
    for (Sheet sheet : sheets) {
      Map<String, double[]> sums = new LinkedHashMap<>();
      for (int i : sheet.counting()) {
        Reading r = sheet.reading(i);
        String who = crew(r);
        int at = who.equals(crew) ? 0 : who.equals(reference) ? 2 : -1;
        if (at >= 0 && !r.label().stationId().isEmpty()) {
          double[] sum = sums.computeIfAbsent(r.label().stationId(), k -> new double[4]);
          sum[at] += sheet.pct[i];
          sum[at + 1]++;
        }
      }
      sums.values().stream()
          .filter(s -> s[1] > 0 && s[3] > 0)
          .forEach(s -> all.add(s[0] / s[1] - s[2] / s[3]));
    }
    return all.stream().mapToDouble(Double::doubleValue).toArray();
  }

  private void apply(OperatorOffset offset) {
    for (Sheet sheet : sheets) {
      double[] share = new double[sheet.size()];
      boolean any = false;
      for (int i = 0; i < share.length; i++) {
        if (crew(sheet.reading(i)).equals(offset.crew())) {
          share[i] = 1;
          any = true;
          sheet.takeOff(i, offset.correctionPct(), "operator " + offset.crew());
        }
      }
      if (any && offset.known()) {
        sheet.errors.add(
            new SharedError(
                "operator " + offset.crew(), share, offset.leftPct() * offset.leftPct()));
      }
    }
    findings.add(
        offset.known()
            ? new Finding(
                Rule.OPERATOR,
                offset.corrected() ? Severity.WARN : Severity.NOTE,
                surveyId,
                "",
                List.of(),
                offset.words()
                    + (offset.corrected()
                        ? ": taken off"
                        : ": too little or too unsure to correct"),
                offset.pairs() < OperatorOffset.WANTED_PAIRS
                    ? "let both read " + OperatorOffset.WANTED_PAIRS + " stations or more"
                    : "")
            : new Finding(
                Rule.OPERATOR,
                Severity.WARN,
                surveyId,
                "",
                List.of(),
                offset.words() + ": what one reads higher than the other is not known",
                "let both read the same " + OperatorOffset.WANTED_PAIRS + " stations"));
  }
}
