package org.mottle.engine.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.mottle.engine.adjust.Drying;
import org.mottle.engine.adjust.OperatorOffset;
import org.mottle.engine.survey.Refusal;

/** The grade of a visit: the worst that anything about it allows, with what would raise it. */
final class Grading {
  private static final double MOST_REJECTED = 0.05;

  /** Standard errors of positions that A, B and C allow, m per axis. */
  private static final double[] POSITION_M = {1, 2.5, 4};

  private final ReviewSettings settings;
  private final List<String> why = new ArrayList<>();
  private final List<String> raise = new ArrayList<>();
  private Grade.Letter letter = Grade.Letter.A;

  private Grading(ReviewSettings settings) {
    this.settings = settings;
  }

  static Grade of(
      Sheet sheet,
      ReviewSettings settings,
      Optional<Drying> drying,
      List<OperatorOffset> operators) {
    Grading grading = new Grading(settings);
    grading.obstacle(sheet.obstacle());
    grading.number(sheet);
    grading.rejected(sheet);
    grading.positions(sheet);
    grading.compared(sheet, drying, operators);
    grading.findings(sheet);
    return new Grade(grading.letter, grading.why, grading.raise);
  }

  private void limit(Grade.Letter most, String because, String remedy) {
    if (most == Grade.Letter.A) {
      return;
    }
    letter = most.compareTo(letter) > 0 ? most : letter;
    why.add(most + " at best: " + because);
    if (!remedy.isEmpty() && !raise.contains(remedy)) {
      raise.add(remedy);
    }
  }

  private void obstacle(Optional<Refusal> obstacle) {
    obstacle.ifPresent(o -> limit(Grade.Letter.D, o.reason(), o.remedy()));
  }

  private void number(Sheet sheet) {
    int n = PlaceChecks.places(sheet, sheet.counting());
    Grade.Letter most =
        n >= settings.full()
            ? Grade.Letter.A
            : n >= settings.indicative()
                ? Grade.Letter.B
                : n >= settings.fewest() ? Grade.Letter.C : Grade.Letter.D;
    limit(most, n + " places read", "read " + settings.full() + " places or more");
  }

  private void rejected(Sheet sheet) {
    double share = sheet.rejectedShare();
    if (share > MOST_REJECTED) {
      limit(
          Grade.Letter.B,
          String.format(Locale.ROOT, "%.0f %% of the readings rejected", 100 * share),
          "read the rejected stations again");
    }
  }

  private void positions(Sheet sheet) {
    int[] rows = sheet.counting();
    if (rows.length == 0) {
      return;
    }
    double[] sd = Arrays.stream(rows).mapToDouble(i -> PlaceChecks.sd(sheet.reading(i))).toArray();
    if (Arrays.stream(sd).anyMatch(Double::isNaN)) {
      limit(
          Grade.Letter.C, "the error of the positions is not known", "record pos_src or pos_sd_m");
      return;
    }
    double rms = Math.sqrt(Arrays.stream(sd).map(s -> s * s).average().orElseThrow());
    Grade.Letter most = Grade.Letter.D;
    for (int k = POSITION_M.length - 1; k >= 0; k--) {
      most = rms <= POSITION_M[k] + 1e-9 ? Grade.Letter.values()[k] : most;
    }
    limit(
        most,
        String.format(Locale.ROOT, "positions to %.1f m (standard error per axis)", rms),
        "use a better receiver, tapes, or marked stations");
  }

  private void compared(Sheet sheet, Optional<Drying> drying, List<OperatorOffset> operators) {
    if (drying.filter(Drying::known).isEmpty()) {
      limit(
          Grade.Letter.C,
          "drying while the survey lasted is not known",
          "read control stations at the start, each hour and at the end");
    }
    List<String> crews =
        Arrays.stream(sheet.counting())
            .mapToObj(i -> Comparison.crew(sheet.reading(i)))
            .distinct()
            .toList();
    for (OperatorOffset offset : operators) {
      if (!offset.known() && crews.contains(offset.crew())) {
        limit(
            Grade.Letter.C,
            offset.crew() + " was not compared with " + offset.reference(),
            "let both read the same stations");
      }
    }
  }

  private void findings(Sheet sheet) {
    for (Finding finding : sheet.findings) {
      if (finding.severity() != Severity.WARN || !finding.readings().isEmpty()) {
        continue;
      }
      switch (finding.rule()) {
        case SPREAD, CHOSEN -> limit(Grade.Letter.C, finding.reason(), finding.remedy());
        case WATER, SOIL, RODS -> limit(Grade.Letter.B, finding.reason(), finding.remedy());
        default -> {}
      }
    }
  }
}
