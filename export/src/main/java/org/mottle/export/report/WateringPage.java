package org.mottle.export.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.mottle.engine.course.Caution;
import org.mottle.engine.course.HandWatering;
import org.mottle.engine.course.Stop;
import org.mottle.engine.mapping.Outcome;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.engine.water.WaterWanted;
import org.mottle.engine.water.Watering;
import org.mottle.engine.water.WateringSettings;

/** The list for hand watering, in walking order, to print and to tick off. */
public final class WateringPage {
  private static final double SIDE = 330;

  private WateringPage() {}

  public static String of(HandWatering walk, SurveyMap map, WateringSettings settings) {
    Page page = new Page("Hand watering: where to look first");
    page.mind(
        List.of(
            "An offer, not an order: look at each place, probe it, then decide. The site's agronomist"
                + " or course manager decides; water restrictions and local rules apply.",
            "The litres are an upper guide for one pass. Too much softens the surface, keeps roots"
                + " shallow and can scald turf in heat. Read again after 30 to 60 minutes before a"
                + " second pass.",
            "Leave the green at the first thunder, 30 minutes after the last: a metal rod is the"
                + " wrong thing to hold."));
    page.paragraph(basis(walk, settings));
    if (walk.stops().isEmpty()) {
      page.paragraph("No dry place was outlined or seen on the last survey of any green.");
    } else {
      stops(page, walk);
      drawings(page, walk, map);
    }
    dryGround(page, map);
    List<String> missing = missing(map);
    if (!missing.isEmpty()) {
      page.heading("What could not be worked out");
      missing.forEach(page::paragraph);
    }
    return page.done();
  }

  private static String basis(HandWatering walk, WateringSettings s) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "Target: %.0f %% of the way from the lower to the upper limit of the band, never above"
                + " field capacity; at most %.0f mm a pass; %.0f %% of the water is taken to reach"
                + " the roots.",
            100 * s.targetShare(),
            s.capMm(),
            100 * s.efficiency()));
    if (s.outlook().lossMm() != 0) {
      text.append(
          String.format(
              Locale.ROOT,
              " Netted off: %.1f mm that the turf draws and %.1f mm of rain until the next"
                  + " watering.",
              s.outlook().turfMm(),
              s.outlook().rainMm()));
    } else {
      text.append(" No forecast of weather was given: only what the readings lack is made good.");
    }
    text.append(
        Double.isNaN(s.flowLMin())
            ? " No minutes: the flow of the hose was not given (flow_l_min; a bucket and a watch"
                + " give it)."
            : String.format(Locale.ROOT, " Hose: %.0f L/min as measured.", s.flowLMin()));
    text.append(
        walk.planned()
            .map(t -> " Planned for " + t + ".")
            .orElse(
                " When the watering is planned was not said, so the age of the readings is not"
                    + " judged: in heat water on none older than a day."));
    return text.toString();
  }

  private static void stops(Page page, HandWatering walk) {
    Map<Caution, Integer> notes = new EnumMap<>(Caution.class);
    for (Stop stop : walk.stops()) {
      stop.cautions().forEach(c -> notes.putIfAbsent(c, 0));
    }
    int number = 0;
    for (Caution caution : notes.keySet()) {
      notes.put(caution, ++number);
    }
    page.heading(
        String.format(
            Locale.ROOT,
            "%d %s, %s L in all where known",
            walk.stops().size(),
            walk.stops().size() == 1 ? "place" : "places",
            Words.litres(walk.litres())));
    page.table(
        "places in walking order",
        "#Stop",
        "Green",
        "Place",
        "Sure",
        "#Area",
        "#Lacking",
        "#Litres, one pass",
        "#Passes",
        "#Minutes",
        "Mind",
        "Done");
    for (Stop stop : walk.stops()) {
      page.row(
          "#" + stop.order(),
          stop.place().greenId() + ", " + stop.place().surveyId(),
          place(stop),
          Words.chance(stop.existence()),
          "#" + (Double.isNaN(stop.areaM2()) ? "size unknown" : Words.area(stop.areaM2()) + " m²"),
          "#"
              + stop.water()
                  .map(w -> String.format(Locale.ROOT, "%.1f mm", w.depthMm().best()))
                  .orElse("–"),
          "#" + stop.water().map(WaterWanted::litres).map(Words::litres).orElse(unknown(stop)),
          "#" + stop.water().map(w -> "" + w.passes()).orElse("–"),
          "#"
              + (Double.isNaN(stop.minutes())
                  ? "–"
                  : String.format(Locale.ROOT, "%.0f", Math.max(1, stop.minutes()))),
          stop.cautions().stream().map(c -> "" + notes.get(c)).collect(Collectors.joining(", ")),
          "☐");
    }
    page.end();
    page.heading("What to mind");
    notes.forEach((caution, n) -> page.paragraph(n + ": " + caution.words() + "."));
  }

  private static String unknown(Stop stop) {
    return switch (stop.what()) {
      case PATCH -> "not known";
      case SPOT -> "as seen there";
      case REPELLENT -> "test a core first";
    };
  }

  private static void drawings(Page page, HandWatering walk, SurveyMap map) {
    page.heading("Where they lie");
    Map<Outcome.Mapped, List<Stop>> greens = new LinkedHashMap<>();
    for (Stop stop : walk.stops()) {
      map.of(stop.place().greenId(), stop.place().surveyId())
          .map(Outcome.Mapped.class::cast)
          .ifPresent(m -> greens.computeIfAbsent(m, k -> new ArrayList<>()).add(stop));
    }
    int number = 0;
    for (Map.Entry<Outcome.Mapped, List<Stop>> green : greens.entrySet()) {
      String label = green.getKey().subject().label();
      GreenDrawing drawing =
          new GreenDrawing(
              "" + ++number,
              "dry places of " + label,
              green.getKey().subject().green().outline(),
              SIDE);
      green.getKey().parts().patches().stream()
          .filter(p -> p.kind() == ZoneClass.DRY)
          .forEach(p -> drawing.patch(p.geometry()));
      green.getValue().forEach(s -> drawing.place(s.place().x(), s.place().y(), s.order()));
      page.drawing(label + "; hatched: outlined as dry", drawing.done());
    }
  }

  /** What each green wants wherever its dry ground lies, of its last survey. */
  private static void dryGround(Page page, SurveyMap map) {
    Map<String, Outcome.Mapped> latest = new LinkedHashMap<>();
    map.maps().forEach(m -> latest.put(m.subject().green().id(), m));
    List<Outcome.Mapped> wanting =
        latest.values().stream().filter(m -> m.watering() instanceof Watering.Wanted).toList();
    if (wanting.isEmpty()) {
      return;
    }
    page.heading("All dry ground of each green, outlined or not");
    page.table(
        "dry ground by green", "Green", "#Share of the green", "#Litres, one pass", "#Outlined");
    for (Outcome.Mapped m : wanting) {
      Watering.Wanted wanted = (Watering.Wanted) m.watering();
      double outlined =
          wanted.patches().stream().mapToDouble(p -> p.wanted().litres().best()).sum();
      page.row(
          m.subject().label(),
          "#" + Words.percent(m.evenness().dryShare()),
          "#" + Words.litres(wanted.dryGround().litres()),
          "#" + (outlined > 0 ? Words.litres(outlined) + " L" : "none"));
    }
    page.end();
    page.small(
        "Dry ground is below the band. An outline also holds ground that is in the band and below the"
            + " target, so its litres can be more than those of the dry ground.");
  }

  private static String place(Stop stop) {
    return switch (stop.what()) {
      case PATCH -> "dry patch " + stop.place().patch();
      case SPOT -> "dry spot by station " + stop.place().station();
      case REPELLENT -> "perhaps repellent, station " + stop.place().station();
    };
  }

  /** Of which greens no litres could be said, and why, each reason once. */
  private static List<String> missing(SurveyMap map) {
    Map<String, List<String>> greens = new LinkedHashMap<>();
    for (Outcome.Mapped m : map.maps()) {
      if (m.watering() instanceof Watering.NotWorkedOut not) {
        greens
            .computeIfAbsent(not.why().toString(), k -> new ArrayList<>())
            .add(m.subject().label());
      }
    }
    List<String> lines = new ArrayList<>();
    greens.forEach((why, who) -> lines.add(String.join("; ", who) + ": " + why));
    return lines;
  }
}
