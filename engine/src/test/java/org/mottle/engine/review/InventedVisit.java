package org.mottle.engine.review;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.RootZone;

/**
 * A small invented visit: a green of 25 m by 20 m, stations in rows of five every 5 m, readings 30
 * s apart around 21.6 % (standard deviation 0.7). A test changes what it is about.
 */
final class InventedVisit {
  static final double TYPICAL_PCT = 21.6;
  private static final double SD_PCT = 0.7;
  private static final double NAN = Double.NaN;

  final String green;
  final String survey;
  final OffsetDateTime start;
  final double[] pct;
  final double[] x;
  final double[] y;
  final double[] rodMm;
  final Reading.Role[] role;
  final String[] operator;
  boolean timed = true;
  double positionSdM = 0.3;
  double clockAheadMin;
  String build = "sand";
  double porosityPct = NAN;
  double rainH = 36;
  double irrigationH = NAN;
  double conditionsRodMm = NAN;
  boolean recorded = true;

  /** Stations beside each other are never alike to the last digit. */
  InventedVisit(String green, String survey, int stations, long seed) {
    this.green = green;
    this.survey = survey;
    this.start = OffsetDateTime.parse("2031-05-14T07:30:00+01:00").plusDays(seed);
    this.pct = new double[stations];
    this.x = new double[stations];
    this.y = new double[stations];
    this.rodMm = new double[stations];
    this.role = new Reading.Role[stations];
    this.operator = new String[stations];
    Random random = new Random(seed);
    for (int i = 0; i < stations; i++) {
      do {
        pct[i] = Math.rint(10 * (TYPICAL_PCT + SD_PCT * random.nextGaussian())) / 10;
      } while (i > 0 && pct[i] == pct[i - 1]);
      x[i] = 2.5 + 5 * (i % 5);
      y[i] = 2.5 + 5 * (i / 5 % 4);
      rodMm[i] = 60;
      role[i] = Reading.Role.PLAN;
      operator[i] = "A";
    }
  }

  String time(int i) {
    return timed ? start.plusMinutes((long) clockAheadMin).plusSeconds(30L * i).toString() : "";
  }

  Reading reading(int i) {
    return new Reading(
        new Reading.Label(green, survey, String.valueOf(i + 1), i + 1, 1, i + 2),
        new Reading.Position(x[i], y[i], NAN, "", positionSdM),
        Reading.Moisture.raw(pct[i]),
        new Reading.Protocol(time(i), rodMm[i], "P1", operator[i], "sand", NAN, NAN),
        role[i],
        Reading.Quality.NOT_REVIEWED);
  }

  GreenVisit visit() {
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < pct.length; i++) {
      readings.add(reading(i));
    }
    return new GreenVisit(
        new Green(
            green,
            "",
            new GeometryFactory().toGeometry(new Envelope(0, 25, 0, 20)),
            new RootZone(build, "", NAN, NAN, NAN, porosityPct),
            Green.Boundary.UNKNOWN),
        survey,
        readings,
        recorded ? Optional.of(conditions()) : Optional.empty(),
        List.of());
  }

  private Conditions conditions() {
    return new Conditions(
        survey,
        green,
        new Conditions.Visit(
            start.toString(), start.plusSeconds(30L * pct.length).toString(), "", "", NAN),
        new Conditions.Crew("A", "P1", conditionsRodMm, ""),
        new Conditions.Water(rainH, 18, irrigationH, 4, 3),
        new Conditions.Ground("", NAN, NAN, "", ""));
  }

  /** Two control stations read every quarter of an hour while the visit lasts, losing so much. */
  List<Reading> controls(double pctAnHour) {
    List<Reading> controls = new ArrayList<>();
    for (int k = 0; k < 10; k++) {
      double hours = k / 2 * 0.25;
      double scatter = 0.05 * (k % 3 - 1);
      controls.add(
          new Reading(
              new Reading.Label(green, survey, "C" + (1 + k % 2), k, 1, k + 2),
              new Reading.Position(20, 10, NAN, "", 0.1),
              Reading.Moisture.raw(23 + 2 * (k % 2) + pctAnHour * hours + scatter),
              new Reading.Protocol(
                  start.plusSeconds((long) (3600 * hours)).toString(),
                  60,
                  "P1",
                  "A",
                  "sand",
                  NAN,
                  NAN),
              Reading.Role.CONTROL,
              Reading.Quality.NOT_REVIEWED));
    }
    return controls;
  }

  static Reviewed reviewed(InventedVisit... visits) {
    return reviewed(List.of(), visits);
  }

  static Reviewed reviewed(List<Reading> controls, InventedVisit... visits) {
    return Review.of(
        new FieldRecord(
            Arrays.stream(visits).map(InventedVisit::visit).toList(),
            controls,
            List.of(),
            List.of()));
  }
}
