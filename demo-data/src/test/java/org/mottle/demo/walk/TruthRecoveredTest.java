package org.mottle.demo.walk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiPredicate;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.GreenTruth;
import org.mottle.demo.truth.Survey;

/** The figures of the scenario, recovered from what is generated, on average over seeds. */
class TruthRecoveredTest {

  private static final int SEEDS = 16;
  private static final List<Season> SEASONS = new ArrayList<>();

  @BeforeAll
  static void generate() {
    for (int seed = 1; seed <= SEEDS; seed++) {
      SEASONS.add(new Season(seed));
    }
  }

  /** Insertions at one station minutes apart differ by micro scatter and probe error only. */
  @Test
  void replicatesGiveTheTotalNugget() {
    double sum = 0;
    int n = 0;
    for (Season season : SEASONS) {
      for (Survey survey : List.of(Survey.S1, Survey.S3, Survey.S6)) {
        List<TrueReading> list = season.log(survey).readings();
        for (int i = 1; i < list.size(); i++) {
          boolean second = list.get(i).logged().label().replicate() == 2;
          boolean cut = list.get(i).greenId().equals("G8");
          if (second && !cut) {
            double d = value(list.get(i)) - value(list.get(i - 1));
            sum += d * d / 2;
            n++;
          }
        }
      }
    }
    assertThat(n).isEqualTo(SEEDS * 3 * 24);
    assertThat(sum / n).isCloseTo(1.5, within(5 * 1.5 * Math.sqrt(2.0 / n)));
  }

  @Test
  void microScatterAndProbeErrorAreTwoNumbers() {
    double micro = 0;
    double probe = 0;
    int n = 0;
    for (Season season : SEASONS.subList(0, 6)) {
      for (SurveyLog log : season.logs()) {
        for (TrueReading r : log.readings()) {
          micro += r.soil().microPct() * r.soil().microPct();
          probe += r.soil().probePct() * r.soil().probePct();
          n++;
        }
      }
    }
    assertThat(micro / n).isCloseTo(0.6, within(5 * 0.6 * Math.sqrt(2.0 / n)));
    assertThat(probe / n).isCloseTo(0.9025, within(5 * 0.9025 * Math.sqrt(2.0 / n)));
  }

  /** Semivariances of the structured part on the sand greens in S1: sill 0.9 · 3, range 12 m. */
  @Test
  void theStructuredPartHasTheSillAndRangeOfTheScenario() {
    for (double lag : new double[] {0.5, 2, 4, 6, 9, 12, 15, 18}) {
      double r = Math.min(1, lag / 12);
      double model = 0.9 * 3 * (1.5 * r - 0.5 * r * r * r);
      double sum = 0;
      int n = 0;
      for (Season season : SEASONS) {
        for (GreenSite green : CoursePlace.greens()) {
          if (!green.id().equals("G7")) {
            sum += semivariance(season.truth(green.id()), lag);
            n++;
          }
        }
      }
      // a green holds about 6 independent patches, 128 fields about 770: SE of the sill 5 %
      assertThat(sum / n).as("lag " + lag).isCloseTo(model, within(0.01 + 0.15 * model));
    }
  }

  @Test
  void sixTenthsOfTheVariancePersist() {
    double product = 0;
    double first = 0;
    double second = 0;
    for (Season season : SEASONS) {
      for (GreenSite green : CoursePlace.greens()) {
        for (Point p : green.cells(2)) {
          double a = season.truth(green.id()).structured(Survey.S1, p.x(), p.y());
          double b = season.truth(green.id()).structured(Survey.S4, p.x(), p.y());
          product += a * b;
          first += a * a;
          second += b * b;
        }
      }
    }
    assertThat(product / Math.sqrt(first * second)).isCloseTo(0.6, within(0.06));
    assertThat(second / first).as("sill factors 1.2 and 0.9").isCloseTo(1.2 / 0.9, within(0.2));
  }

  /** Means of sound sand greens in each survey, after their offsets, edges and slopes. */
  @Test
  void meansOfTheDay() {
    for (Survey survey : Survey.values()) {
      double sum = 0;
      for (Season season : SEASONS) {
        GreenTruth truth = season.truth("G1");
        double[] cells = truth.cellPct(survey);
        for (double pct : cells) {
          sum += (pct - truth.offsetPct()) / cells.length / SEEDS;
        }
      }
      // the edge takes about 0.13 % off the mean of a green
      assertThat(sum).as(survey.name()).isCloseTo(survey.moisture().sandPct(), within(0.7));
    }
  }

  @Test
  void readingsFallWhileTheSurveyLasts() {
    double[] fit = new double[2];
    for (Season season : SEASONS) {
      for (Survey survey : List.of(Survey.S1, Survey.S5, Survey.S6)) {
        for (String station : List.of("C1", "C2")) {
          slope(season.log(survey), station, fit);
        }
      }
    }
    assertThat(fit[0] / fit[1]).isCloseTo(-Survey.DRYING_PCT_H, within(0.06));
  }

  @Test
  void positionErrorsHaveTheirSharedAndTheirOwnPart() {
    double[] sbas = positionErrors((survey, green) -> survey == Survey.S1);
    // five standard errors of a root mean square of n values: 5 / sqrt(2 n), n = 2 · visits
    assertThat(sbas[0]).as("shift").isCloseTo(1.0, within(5 / Math.sqrt(4.0 * 9 * SEEDS)));
    assertThat(sbas[1]).as("jitter").isCloseTo(0.6, within(0.02));
    double[] phone = positionErrors((survey, green) -> survey == Survey.S3 && !green.equals("G4"));
    assertThat(phone[0]).as("shift").isCloseTo(2.0, within(2 * 5 / Math.sqrt(4.0 * 8 * SEEDS)));
    assertThat(phone[1]).as("jitter").isCloseTo(1.5, within(0.05));
  }

  private static double semivariance(GreenTruth truth, double lag) {
    double sum = 0;
    int n = 0;
    for (Point p : truth.green().cells(0.5)) {
      if (truth.green().ring().contains(p.x() + lag, p.y())) {
        double d =
            truth.structured(Survey.S1, p.x() + lag, p.y())
                - truth.structured(Survey.S1, p.x(), p.y());
        sum += d * d / 2;
        n++;
      }
    }
    return sum / n;
  }

  /** Root mean square per axis of the visit's shift, and of the fixes round it. */
  private static double[] positionErrors(BiPredicate<Survey, String> wanted) {
    double shifts = 0;
    double jitters = 0;
    int visits = 0;
    int fixes = 0;
    for (Season season : SEASONS) {
      for (SurveyLog log : season.logs()) {
        for (Receiver receiver : log.receivers()) {
          String green = receiver.timed().visit().green().id();
          if (wanted.test(log.survey(), green)) {
            Point s = receiver.shift();
            shifts += (s.x() * s.x() + s.y() * s.y()) / 2;
            visits++;
            for (TrueReading r : log.readings()) {
              if (r.greenId().equals(green) && r.logged().label().replicate() == 1) {
                double ex = r.logged().fix().place().x() - r.place().x() - s.x();
                double ey = r.logged().fix().place().y() - r.place().y() - s.y();
                jitters += (ex * ex + ey * ey) / 2;
                fixes++;
              }
            }
          }
        }
      }
    }
    return new double[] {Math.sqrt(shifts / visits), Math.sqrt(jitters / fixes)};
  }

  private static void slope(SurveyLog log, String station, double[] fit) {
    List<TrueReading> list =
        log.controls().stream().filter(r -> r.logged().station().id().equals(station)).toList();
    double meanT = list.stream().mapToDouble(TruthRecoveredTest::hour).average().getAsDouble();
    for (TrueReading r : list) {
      fit[0] += (hour(r) - meanT) * value(r);
      fit[1] += (hour(r) - meanT) * (hour(r) - meanT);
    }
  }

  private static double hour(TrueReading r) {
    return OffsetDateTime.parse(r.logged().time()).toLocalTime().toSecondOfDay() / 3600.0;
  }

  private static double value(TrueReading r) {
    return Double.parseDouble(r.logged().value());
  }
}
