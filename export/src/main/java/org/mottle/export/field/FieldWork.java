package org.mottle.export.field;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.moisture.SiteCurve;
import org.mottle.engine.position.Mark;
import org.mottle.engine.position.Tie;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.FieldRecord;
import org.mottle.engine.review.Finding;
import org.mottle.engine.review.GreenVisit;
import org.mottle.engine.review.Placing;
import org.mottle.engine.review.Review;
import org.mottle.engine.review.ReviewSettings;
import org.mottle.engine.review.Reviewed;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.review.Rule;
import org.mottle.engine.review.Severity;
import org.mottle.engine.review.TiedShifts;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.SharedError;
import org.mottle.engine.survey.VisitErrors;
import org.mottle.engine.track.Track;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.ConditionsReader;
import org.mottle.export.read.CoresReader;
import org.mottle.export.read.Greens;
import org.mottle.export.read.InputOptions;
import org.mottle.export.read.InputOptions.MoistureUnit;
import org.mottle.export.read.MarksReader;
import org.mottle.export.read.PlansReader;
import org.mottle.export.read.Readings;
import org.mottle.export.read.ReadingsReader;
import org.mottle.export.read.TrackReader;

/**
 * Readings with all that was recorded beside them, placed and reviewed.
 *
 * @param reviewed what the review came to
 * @param left readings that have no position and could not be placed
 * @param shifts taken off visits, by survey/green
 * @param curve of the site, where cores were taken
 * @param notes told on the way
 */
public record FieldWork(
    Reviewed reviewed,
    List<Reading> left,
    Map<String, TiedShifts.Shift> shifts,
    Optional<SiteCurve> curve,
    List<String> notes) {

  /**
   * @param readings one or more files
   * @param survey the only survey; empty: all
   * @throws InputRefused with the problems of all files that can be read so far
   */
  public static FieldWork of(
      Greens greens,
      List<String> readings,
      FieldFiles files,
      InputOptions options,
      Optional<String> survey,
      Progress progress) {
    return new Reader(greens, options, survey).read(readings, files, progress);
  }

  /** What is known of the errors that the readings of a visit have in common. */
  public VisitErrors errors(ReviewedVisit visit) {
    TiedShifts.Shift shift =
        shifts.get(visit.visit().surveyId() + "/" + visit.visit().green().id());
    List<SharedError> shared = new ArrayList<>(visit.errors());
    curve.ifPresent(
        c ->
            shared.addAll(
                c.errors(
                    visit.visit().readings().stream()
                        .mapToDouble(r -> r.moisture().rawPct())
                        .toArray())));
    return new VisitErrors(shared, shift == null ? Double.NaN : shift.leftSdM());
  }

  /** Reads one set of files; one use. */
  private static final class Reader {
    private final Greens greens;
    private final InputOptions options;
    private final Optional<String> survey;
    private final List<String> notes = new ArrayList<>();
    private final Problems problems = new Problems();
    private final List<Finding> findings = new ArrayList<>();
    private Optional<SiteCurve> curve = Optional.empty();

    Reader(Greens greens, InputOptions options, Optional<String> survey) {
      this.greens = greens;
      this.options = options;
      this.survey = survey;
    }

    FieldWork read(List<String> files, FieldFiles beside, Progress progress) {
      Crs working = greens.working();
      List<Readings> read = new ArrayList<>();
      for (String file : files) {
        attempt(() -> read.add(ReadingsReader.readWithUnplaced(file, options, greens, survey)));
      }
      List<Conditions> conditions = new ArrayList<>();
      beside
          .conditions()
          .ifPresent(
              f -> attempt(() -> conditions.addAll(ConditionsReader.read(f, options, notes))));
      List<StationPlan> plans = new ArrayList<>();
      beside
          .plan()
          .ifPresent(f -> attempt(() -> plans.addAll(PlansReader.read(f, options, working))));
      List<Readings> controls = new ArrayList<>();
      beside
          .controls()
          .ifPresent(
              f ->
                  attempt(
                      () ->
                          controls.add(
                              ReadingsReader.readWithUnplaced(
                                  f, options, greens, Optional.empty()))));
      List<Tie> ties = new ArrayList<>();
      beside
          .ties()
          .ifPresent(f -> attempt(() -> ties.addAll(MarksReader.ties(f, options, working))));
      List<Mark> marks = new ArrayList<>();
      beside
          .marks()
          .ifPresent(f -> attempt(() -> marks.addAll(MarksReader.marks(f, options, working))));
      problems.require(
          beside.ties().isEmpty() || beside.marks().isPresent(),
          "--ties needs --marks: where the marks are that the ties were taken at");
      List<Track> tracks = new ArrayList<>();
      for (String file : beside.tracks()) {
        attempt(() -> tracks.addAll(TrackReader.read(file, working, notes)));
      }
      beside
          .cores()
          .ifPresent(f -> attempt(() -> curve = Optional.of(CoresReader.read(f, options))));
      checkGreens(conditions, plans);
      problems.throwIfAny();
      read.forEach(r -> notes.addAll(r.notes()));
      return work(named(files, read), controls, conditions, plans, ties, marks, tracks, progress);
    }

    /** Of several files each reading keeps the name of its own, so that it can be found again. */
    private static List<Readings> named(List<String> files, List<Readings> read) {
      if (files.size() == 1) {
        return read;
      }
      boolean distinct = read.stream().map(Readings::source).distinct().count() == files.size();
      List<Readings> named = new ArrayList<>();
      for (int k = 0; k < files.size(); k++) {
        named.add(read.get(k).named(distinct ? read.get(k).source() : files.get(k)));
      }
      return named;
    }

    private void attempt(Runnable reading) {
      try {
        reading.run();
      } catch (InputRefused e) {
        e.lines().forEach(line -> problems.add("%s", line));
      }
    }

    /** Names in the other files that no green has. */
    private void checkGreens(List<Conditions> conditions, List<StationPlan> plans) {
      List<String> known = greens.greens().stream().map(Green::id).toList();
      Set<String> unknown = new LinkedHashSet<>();
      conditions.stream().map(Conditions::greenId).filter(g -> !g.isEmpty()).forEach(unknown::add);
      plans.stream().map(StationPlan::greenId).forEach(unknown::add);
      unknown.removeAll(known);
      if (!unknown.isEmpty()) {
        notes.add(
            "conditions or plans name green "
                + Problems.listed(List.copyOf(unknown))
                + ", which "
                + greens.source()
                + " does not hold");
      }
    }

    private FieldWork work(
        List<Readings> read,
        List<Readings> controlFiles,
        List<Conditions> conditions,
        List<StationPlan> plans,
        List<Tie> ties,
        List<Mark> marks,
        List<Track> tracks,
        Progress progress) {
      Placing.Placed placed =
          new Placing(conditions, plans, tracks)
              .place(
                  read.stream()
                      .flatMap(r -> r.unplaced().stream())
                      .filter(r -> !isControl(r))
                      .toList());
      findings.addAll(placed.findings());
      Set<String> surveys = new LinkedHashSet<>();
      for (Readings r : read) {
        r.readings().forEach(x -> surveys.add(x.label().surveyId()));
        r.outside().forEach(x -> surveys.add(x.reading().label().surveyId()));
        r.unplaced().forEach(x -> surveys.add(x.label().surveyId()));
      }
      List<Reading> named = new ArrayList<>();
      List<Reading> controls = new ArrayList<>();
      for (Readings r : read) {
        r.readings().forEach(x -> (isControl(x) ? controls : named).add(x));
        r.outside().forEach(x -> named.add(x.reading()));
        r.unplaced().stream().filter(Reader::isControl).forEach(controls::add);
      }
      Map<String, TiedShifts.Shift> shifts =
          TiedShifts.of(
              ties.stream().filter(t -> surveys.contains(t.surveyId())).toList(),
              marks,
              conditions,
              named,
              findings);
      for (Readings r : controlFiles) {
        // where a control station lies does not matter, only that it is the same
        Stream.of(
                r.readings(),
                r.unplaced(),
                r.outside().stream().map(Readings.Outside::reading).toList())
            .flatMap(List::stream)
            .filter(x -> surveys.contains(x.label().surveyId()))
            .forEach(controls::add);
      }
      List<Reading> moved = new ArrayList<>(TiedShifts.moved(named, shifts));
      moved.addAll(placed.readings());
      moved.replaceAll(this::calibrated);
      controls.replaceAll(this::calibrated);
      tellCurve(moved);
      Homes homes = new Homes(greens);
      List<GreenVisit> visits = new ArrayList<>();
      Map<List<String>, List<Reading>> byVisit = new LinkedHashMap<>();
      List<FieldRecord.Elsewhere> elsewhere = new ArrayList<>();
      for (Reading r : moved) {
        homes
            .elsewhere(r)
            .ifPresentOrElse(
                elsewhere::add,
                () -> {
                  Reading own = homes.named(r);
                  byVisit
                      .computeIfAbsent(
                          List.of(own.label().surveyId(), own.label().greenId()),
                          k -> new ArrayList<>())
                      .add(own);
                });
      }
      for (String id : surveys) {
        for (Green green : greens.greens()) {
          List<Reading> own = byVisit.getOrDefault(List.of(id, green.id()), List.of());
          if (!own.isEmpty()) {
            visits.add(
                new GreenVisit(
                    green,
                    id,
                    own,
                    conditions.stream().filter(c -> c.isOf(id, green.id())).findFirst(),
                    Placing.plansOf(id, green.id(), conditions, plans)));
          }
        }
      }
      tellDisagreeing(visits);
      Reviewed reviewed =
          Review.of(
              new FieldRecord(visits, controls, elsewhere, findings),
              ReviewSettings.DEFAULT.withUnitSaid(options.moistureUnit() != MoistureUnit.ASK),
              progress);
      return new FieldWork(reviewed, placed.left(), shifts, curve, notes);
    }

    private Reading calibrated(Reading r) {
      if (curve.isEmpty()) {
        return r;
      }
      double raw = r.moisture().rawPct();
      String note = String.format(Locale.ROOT, "site curve %+.2f", curve.get().pct(raw) - raw);
      return new Reading(
          r.label(),
          r.position(),
          new Reading.Moisture(raw, curve.get().pct(raw), note),
          r.protocol(),
          r.role(),
          r.quality());
    }

    private void tellCurve(List<Reading> readings) {
      curve.ifPresent(
          c ->
              notes.add(
                  String.format(
                      Locale.ROOT,
                      "site curve of %d cores: moisture = %.1f + %.3f (reading - %.1f), standard"
                          + " deviation about it %.1f %%; %d readings lie beyond the cores'",
                      c.cores(),
                      c.atMean(),
                      c.slope(),
                      c.meanRaw(),
                      c.residualSd(),
                      readings.stream()
                          .filter(r -> c.extrapolates(r.moisture().rawPct()))
                          .count())));
    }

    private static boolean isControl(Reading r) {
      return r.role() == Reading.Role.CONTROL;
    }

    /** Stations that were read and are in no plan the record names. */
    private void tellDisagreeing(List<GreenVisit> visits) {
      for (GreenVisit v : visits) {
        if (v.plans().isEmpty()) {
          continue;
        }
        List<String> unknown =
            v.readings().stream()
                .map(r -> r.label().stationId())
                .filter(id -> !id.isEmpty())
                .filter(id -> v.plans().stream().noneMatch(p -> p.station(id).isPresent()))
                .distinct()
                .toList();
        if (!unknown.isEmpty()) {
          findings.add(
              new Finding(
                  Rule.PLACED,
                  Severity.NOTE,
                  v.surveyId(),
                  v.green().id(),
                  List.of(),
                  "read and not in the plan that was followed: station "
                      + String.join(", ", unknown),
                  "correct plan_id in the conditions, or the stations' names"));
        }
      }
    }
  }
}
