package org.mottle.export.season;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mottle.engine.drainage.WetPlaces;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.mapping.UncertaintySettings;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.review.Grade;
import org.mottle.engine.review.ReviewedVisit;
import org.mottle.engine.season.Answer;
import org.mottle.engine.season.Change;
import org.mottle.engine.season.DryDown;
import org.mottle.engine.season.Persistence;
import org.mottle.engine.season.PersistenceOutcome;
import org.mottle.engine.season.PersistenceSettings;
import org.mottle.engine.season.Season;
import org.mottle.engine.season.StabilityOutcome;
import org.mottle.engine.season.StationSeries;
import org.mottle.engine.season.SurveyedMap;
import org.mottle.engine.season.TemporalStability;
import org.mottle.engine.survey.Conditions;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.WaterHistory;
import org.mottle.export.field.FieldWork;
import org.mottle.export.settings.SiteSettings;

/**
 * The surveys of a season, mapped together and compared.
 *
 * @param map all surveys, one variogram for greens built alike
 * @param season ready for pairs
 * @param greens one a green that has a map, in the order of the outlines
 */
record SeasonWork(SurveyMap map, Season season, List<GreenSeason> greens) {
  /** Stations read in fewer of the surveys say little of the season. */
  private static final double LEAST_SHARE = 0.6;

  /**
   * One green through the season.
   *
   * @param green the green
   * @param visits maps with the conditions of each, in the order of time
   * @param pairs of surveys that follow each other
   * @param drainage what stays wet after rain
   * @param coverage what stays dry or wet with other water
   * @param stability of its stations
   */
  record GreenSeason(
      Green green,
      List<WetPlaces.Visit> visits,
      List<Pair> pairs,
      PersistenceOutcome drainage,
      PersistenceOutcome coverage,
      StabilityOutcome stability) {

    List<SurveyedMap> maps() {
      return visits.stream().map(WetPlaces.Visit::map).toList();
    }
  }

  static SeasonWork of(
      FieldWork work, SiteSettings site, double changeLimitPct, int threads, Progress progress) {
    Map<String, ReviewedVisit> visits = new LinkedHashMap<>();
    List<GreenSurvey> subjects = new ArrayList<>();
    for (ReviewedVisit v : work.reviewed().visits()) {
      visits.put(key(v.visit().surveyId(), v.visit().green().id()), v);
      subjects.add(
          new GreenSurvey(
              v.visit().green(),
              v.visit().surveyId(),
              v.visit().readings(),
              SeasonBands.of(
                  site.bands(), v.visit().green(), v.visit().readings(), v.visit().conditions()),
              v.obstacle(),
              work.errors(v)));
    }
    SurveyMap map = new SurveyMapper(quick(site.mapping())).map(subjects, threads, progress);
    List<Conditions> conditions =
        visits.values().stream().flatMap(v -> v.visit().conditions().stream()).toList();
    Season season = Season.of(map, conditions, threads, progress);
    List<GreenSeason> greens = new ArrayList<>();
    for (String green : season.greens()) {
      greens.add(green(green, map, season, visits, changeLimitPct, threads, progress));
    }
    return new SeasonWork(map, season, greens);
  }

  /** Nothing here rests on realisations: as many as the simulation asks for at least. */
  private static MappingSettings quick(MappingSettings settings) {
    UncertaintySettings u = settings.uncertainty();
    return settings.withUncertainty(u.withRealisations(u.draws()).withNextStations(0));
  }

  private static GreenSeason green(
      String id,
      SurveyMap map,
      Season season,
      Map<String, ReviewedVisit> visits,
      double changeLimitPct,
      int threads,
      Progress progress) {
    List<SurveyedMap> maps = new ArrayList<>();
    for (String survey : season.surveys(id)) {
      ReviewedVisit visit = visits.get(key(survey, id));
      maps.add(
          new SurveyedMap(
              (Outcome.Mapped) map.of(id, survey).orElseThrow(),
              history(visit),
              Optional.of(visit.grade()).map(Grade::letter)));
    }
    List<Pair> pairs = new ArrayList<>();
    for (int i = 1; i < maps.size(); i++) {
      String before = maps.get(i - 1).surveyId();
      String after = maps.get(i).surveyId();
      Answer<Change> change = season.change(id, before, after, changeLimitPct, threads, progress);
      Optional<Answer<DryDown>> dried =
          change.value().map(c -> season.dryDown(c, threads, progress));
      pairs.add(new Pair(id, before, after, change, dried));
    }
    return new GreenSeason(
        maps.get(0).map().subject().green(),
        maps.stream()
            .map(
                m -> new WetPlaces.Visit(m, visits.get(key(m.surveyId(), id)).visit().conditions()))
            .toList(),
        pairs,
        Persistence.of(maps, PersistenceSettings.drainage()),
        Persistence.of(maps, PersistenceSettings.coverage()),
        TemporalStability.of(
            StationSeries.of(maps.stream().map(SurveyedMap::map).toList()), LEAST_SHARE));
  }

  private static String key(String survey, String green) {
    return survey + "/" + green;
  }

  private static WaterHistory history(ReviewedVisit visit) {
    return visit
        .visit()
        .conditions()
        .map(c -> WaterHistory.of(c.water()))
        .orElse(WaterHistory.UNKNOWN);
  }

  GreenSeason of(String greenId) {
    return greens.stream().filter(g -> g.green().id().equals(greenId)).findFirst().orElseThrow();
  }
}
