package org.mottle.engine.course;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.mottle.engine.interval.Interval;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.review.Grade;

/**
 * All greens of a course at a glance, each by its last survey: the oldest survey first, of one day
 * the poorest grade first, since there the next reading is worth most. Ranks are given within like
 * visits only ({@link LikeVisits}).
 *
 * @param greens in that order
 */
public record CourseOverview(List<GreenLook> greens) {
  public CourseOverview {
    greens = List.copyOf(greens);
  }

  /**
   * @param map of one or more surveys, older first
   * @param records of the visits; those of others are not looked at
   */
  public static CourseOverview of(SurveyMap map, List<VisitRecord> records) {
    Map<String, Outcome> latest = new LinkedHashMap<>();
    map.outcomes().forEach(o -> latest.put(o.subject().green().id(), o));
    List<GreenLook> looks = ranked(latest.values().stream().map(o -> look(o, records)).toList());
    return new CourseOverview(
        looks.stream()
            .sorted(Comparator.comparing(CourseOverview::day).thenComparing(CourseOverview::worth))
            .toList());
  }

  /** Every visit with its ranks, in the order of the map. */
  public static List<GreenLook> visits(SurveyMap map, List<VisitRecord> records) {
    return ranked(map.outcomes().stream().map(o -> look(o, records)).toList());
  }

  private static GreenLook look(Outcome outcome, List<VisitRecord> records) {
    String green = outcome.subject().green().id();
    String survey = outcome.subject().surveyId();
    VisitRecord record =
        records.stream()
            .filter(r -> r.greenId().equals(green) && r.surveyId().equals(survey))
            .findFirst()
            .orElse(VisitRecord.unknown(green, survey));
    return new GreenLook(
        outcome,
        record,
        VisitTimes.last(outcome.subject().readings()),
        LikeVisits.of(outcome, record),
        GreenLook.Ranks.NONE);
  }

  /** Day of the last reading; not known comes first. */
  private static String day(GreenLook look) {
    return look.lastRead().map(t -> t.toLocalDate().toString()).orElse("");
  }

  /** The poorer the sooner: not mapped, not graded, D to A. */
  private static int worth(GreenLook look) {
    return look.mapped().isEmpty()
        ? 0
        : look.record()
            .grade()
            .map(g -> 1 + Grade.Letter.D.ordinal() - g.letter().ordinal() + 1)
            .orElse(1);
  }

  private static List<GreenLook> ranked(List<GreenLook> looks) {
    List<Optional<Rank>> dry = ranks(looks, GreenLook::dryShare);
    List<Optional<Rank>> wet = ranks(looks, GreenLook::wetShare);
    List<Optional<Rank>> litres = ranks(looks, GreenLook::litres);
    List<Optional<Rank>> uneven = ranks(looks, GreenLook::variationPct);
    List<GreenLook> all = new ArrayList<>();
    for (int i = 0; i < looks.size(); i++) {
      all.add(
          looks
              .get(i)
              .with(new GreenLook.Ranks(dry.get(i), wet.get(i), litres.get(i), uneven.get(i))));
    }
    return all;
  }

  /** A green alone among its like has no rank. */
  private static List<Optional<Rank>> ranks(
      List<GreenLook> looks, Function<GreenLook, Interval> figure) {
    List<Optional<Rank>> ranks = new ArrayList<>();
    for (GreenLook look : looks) {
      List<GreenLook> like =
          looks.stream()
              .filter(l -> l.like().compared() && l.like().equals(look.like()))
              .filter(l -> figure.apply(l).known())
              .toList();
      int at = like.indexOf(look);
      ranks.add(
          at < 0 || like.size() < 2
              ? Optional.empty()
              : Optional.of(Rank.of(like.stream().map(figure).toList()).get(at)));
    }
    return ranks;
  }
}
