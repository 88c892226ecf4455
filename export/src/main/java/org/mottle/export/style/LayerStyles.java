package org.mottle.export.style;

import static org.mottle.export.style.Palette.BLACK;
import static org.mottle.export.style.Palette.BLUE;
import static org.mottle.export.style.Palette.DARK;
import static org.mottle.export.style.Palette.DRY;
import static org.mottle.export.style.Palette.GREEN;
import static org.mottle.export.style.Palette.GREY;
import static org.mottle.export.style.Palette.KIND_SOURCE;
import static org.mottle.export.style.Palette.MOISTURE_SOURCE;
import static org.mottle.export.style.Palette.ORANGE;
import static org.mottle.export.style.Palette.PURPLE;
import static org.mottle.export.style.Palette.RAMP_SOURCE;
import static org.mottle.export.style.Palette.SKY;
import static org.mottle.export.style.Palette.VERMILION;
import static org.mottle.export.style.Palette.WET;
import static org.mottle.export.style.Palette.WHITE;
import static org.mottle.export.style.Palette.YELLOW;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.mottle.engine.irrigation.HeadFinding;
import org.mottle.engine.review.Severity;
import org.mottle.engine.survey.Reading;
import org.mottle.export.schema.Layer;
import org.mottle.export.schema.Layers;

/**
 * The styles of the layers. Scales are fixed, so that two surveys can be compared by eye; no class
 * is told by colour alone: areas differ in pattern or outline too, lines in width or dash, points
 * in shape or size.
 */
public final class LayerStyles {
  private static final Stroke THIN = Stroke.solid(DARK, 0.2);
  private static final Stroke NO_BAND = new Stroke(GREY, 0.1, Dash.DOTTED);

  private LayerStyles() {}

  /** The points of a grid: their rasters are drawn, with the same figures. */
  public static final List<Layer> WITHOUT = List.of(Layers.TERRAIN);

  /** Every style, in the order of delivery. */
  public static final List<LayerStyle> ALL =
      List.of(
          of(Layers.GREEN, "green_id", KIND_SOURCE, AreaSymbol.outlined(Stroke.solid(BLACK, 0.5))),
          readings(),
          new LayerStyle(Layers.ZONE, MoistureClasses.rules(THIN), "", MOISTURE_SOURCE),
          new LayerStyle(
              Layers.PATCH,
              List.of(
                  is("kind", "dry", hatched(DRY, Hatch.CROSSED, Stroke.solid(DRY, 0.8))),
                  is("kind", "wet", hatched(WET, Hatch.DOTS, new Stroke(WET, 0.8, Dash.DASHED)))),
              "patch_id",
              MOISTURE_SOURCE),
          new LayerStyle(
              Layers.CORE,
              List.of(
                  is("kind", "dry", filled(DRY, Hatch.UPRIGHT)),
                  is("kind", "wet", filled(WET, Hatch.LEVEL))),
              "",
              MOISTURE_SOURCE),
          new LayerStyle(
              Layers.ENVEL,
              List.of(
                  is("kind", "dry", AreaSymbol.outlined(new Stroke(DRY, 0.4, Dash.DASHED))),
                  is("kind", "wet", AreaSymbol.outlined(new Stroke(WET, 0.4, Dash.DOTTED)))),
              "",
              MOISTURE_SOURCE),
          new LayerStyle(
              Layers.SPOT,
              List.of(
                  is("kind", "dry", point(Shape.TRIANGLE, DRY, 3.4)),
                  is("kind", "wet", point(Shape.TIP, WET, 3.4)),
                  is("kind", "repel", point(Shape.DIAMOND, PURPLE, 3.2))),
              "",
              MOISTURE_SOURCE),
          new LayerStyle(
              Layers.WATER,
              List.of(
                  is("what", "patch", point(Shape.CIRCLE, SKY, 4)),
                  is("what", "spot", point(Shape.TRIANGLE, SKY, 4)),
                  is("what", "repel", point(Shape.DIAMOND, PURPLE, 4))),
              "stop",
              KIND_SOURCE),
          of(Layers.NEXTST, "rank", KIND_SOURCE, point(Shape.STAR, YELLOW, 4)),
          of(Layers.ISO, "level_pct", KIND_SOURCE, new LineSymbol(Stroke.solid(DARK, 0.25))),
          cells(),
          new LayerStyle(
              Layers.STATION,
              List.of(
                  role(Reading.Role.PLAN, Shape.CIRCLE, WHITE),
                  role(Reading.Role.PAIR, Shape.SQUARE, SKY),
                  role(Reading.Role.POINT_OF_INTEREST, Shape.STAR, YELLOW),
                  role(Reading.Role.CONTROL, Shape.DIAMOND, ORANGE),
                  role(Reading.Role.INFILL, Shape.TRIANGLE, GREEN)),
              "seq",
              KIND_SOURCE),
          of(Layers.WALK, "", KIND_SOURCE, new LineSymbol(new Stroke(BLUE, 0.4, Dash.DASHED))),
          new LayerStyle(
              Layers.FINDING,
              List.of(
                  is("qa_stat", Severity.REJECT.label(), cross(Shape.X, VERMILION, 3.6)),
                  is("qa_stat", Severity.WARN.label(), point(Shape.TRIANGLE, ORANGE, 3.4)),
                  is("qa_stat", Severity.NOTE.label(), point(Shape.CIRCLE, SKY, 2.2))),
              "",
              KIND_SOURCE),
          new LayerStyle(
              Layers.CATCH,
              List.of(
                  new Rule(
                      "of the lowest quarter",
                      new Condition.Is("low_q", 1L),
                      point(Shape.TIP, VERMILION, 3)),
                  new Rule(
                      "of the rest", new Condition.Is("low_q", 0L), point(Shape.CIRCLE, SKY, 2.4))),
              "mm",
              KIND_SOURCE),
          new LayerStyle(
              Layers.HEAD,
              List.of(
                  new Rule(
                      "throws as far as another head",
                      new Condition.Is("head_head", 1L),
                      point(Shape.SQUARE, BLUE, 3)),
                  new Rule(
                      "does not, by radius and arc",
                      new Condition.Is("head_head", 0L),
                      point(Shape.TRIANGLE, ORANGE, 3.4)),
                  new Rule(
                      "not known",
                      new Condition.Otherwise("head_head"),
                      cross(Shape.CROSS, BLACK, 3))),
              "head_id",
              KIND_SOURCE),
          new LayerStyle(
              Layers.SECTOR,
              List.of(
                  verdict(HeadFinding.Verdict.LOOK, point(Shape.STAR, VERMILION, 5)),
                  verdict(HeadFinding.Verdict.CONSIDER, point(Shape.DIAMOND, ORANGE, 3.6)),
                  verdict(HeadFinding.Verdict.NOT_SUGGESTED, point(Shape.CIRCLE, WHITE, 2.4)),
                  verdict(HeadFinding.Verdict.CANNOT_TELL, cross(Shape.X, DARK, 2.4))),
              "head_id",
              KIND_SOURCE),
          cover(),
          new LayerStyle(
              Layers.DEPRESS, List.of(every(filled(BLUE, Hatch.LEVEL))), "depth_mm", KIND_SOURCE),
          new LayerStyle(
              Layers.FLOW,
              List.of(
                  within("ca_m2", Double.NEGATIVE_INFINITY, 25, "m²", line(SKY, 0.25)),
                  within("ca_m2", 25, 100, "m²", line(BLUE, 0.5)),
                  within("ca_m2", 100, Double.POSITIVE_INFINITY, "m²", line(BLUE, 1))),
              "",
              KIND_SOURCE),
          of(Layers.CONTOUR, "z_m", KIND_SOURCE, new LineSymbol(new Stroke(GREY, 0.2, Dash.SOLID))),
          new LayerStyle(
              Layers.PERSIST,
              List.of(
                  is("kind", "wet", filled(WET, Hatch.FALLING)),
                  is("kind", "dry", filled(DRY, Hatch.RISING))),
              "",
              MOISTURE_SOURCE),
          new LayerStyle(
              Layers.HYPO,
              List.of(
                  is(
                      "verdict",
                      "suggested",
                      hatched(PURPLE, Hatch.CROSSED, line(PURPLE, 0.6).stroke())),
                  is(
                      "verdict",
                      "insufficient evidence",
                      AreaSymbol.outlined(new Stroke(PURPLE, 0.6, Dash.DOTTED)))),
              "place_id",
              KIND_SOURCE));

  /** The style of a layer; none of tables and of those {@link #WITHOUT}. */
  public static Optional<LayerStyle> of(Layer layer) {
    return ALL.stream().filter(style -> style.layer().equals(layer)).findFirst();
  }

  private static LayerStyle of(Layer layer, String label, String source, Symbol symbol) {
    return new LayerStyle(layer, List.of(every(symbol)), label, source);
  }

  /** Larger where wetter; the value stands beside. */
  private static LayerStyle readings() {
    Ramp ramp = RasterStyles.MOISTURE;
    List<Rule> rules = new ArrayList<>();
    for (int i = 0; i < ramp.classes(); i++) {
      double low = i == 0 ? Double.NEGATIVE_INFINITY : ramp.upperEnd(i - 1);
      double high = i == ramp.classes() - 1 ? Double.POSITIVE_INFINITY : ramp.upperEnd(i);
      rules.add(
          within("vwc_adj", low, high, "%", point(Shape.CIRCLE, ramp.colour(i), 1.6 + 0.25 * i)));
    }
    return new LayerStyle(Layers.READING, rules, "vwc_adj", RAMP_SOURCE);
  }

  private static LayerStyle cells() {
    List<Rule> rules = new ArrayList<>(MoistureClasses.rules(NO_BAND));
    rules.add(
        new Rule(
            "without a band", new Condition.Otherwise("cls_no"), AreaSymbol.outlined(NO_BAND)));
    return new LayerStyle(Layers.CELL, rules, "", MOISTURE_SOURCE);
  }

  /** Ground by the number of heads that reach it: the fewer, the denser the pattern. */
  private static LayerStyle cover() {
    return new LayerStyle(
        Layers.COVER,
        List.of(
            heads("no head", 0, new AreaSymbol(VERMILION, 0.5, Hatch.CROSSED, DARK, THIN)),
            heads("one head", 1, new AreaSymbol(ORANGE, 0.5, Hatch.RISING, DARK, THIN)),
            heads("two heads", 2, new AreaSymbol(YELLOW, 0.5, Hatch.DOTS, DARK, THIN)),
            heads("three heads", 3, new AreaSymbol(SKY, 0.4, Hatch.LEVEL, DARK, THIN)),
            new Rule(
                "four heads or more",
                new Condition.Otherwise("overlap_n"),
                new AreaSymbol(BLUE, 0.4, Hatch.NONE, DARK, THIN))),
        "",
        KIND_SOURCE);
  }

  private static Rule heads(String label, long count, Symbol symbol) {
    return new Rule(label, new Condition.Is("overlap_n", count), symbol);
  }

  private static Rule every(Symbol symbol) {
    return new Rule("", new Condition.Every(), symbol);
  }

  private static Rule is(String field, String value, Symbol symbol) {
    return new Rule(value, new Condition.Is(field, value), symbol);
  }

  private static Rule verdict(HeadFinding.Verdict verdict, Symbol symbol) {
    return is("verdict", verdict.label(), symbol);
  }

  private static Rule role(Reading.Role role, Shape shape, int colour) {
    return is("role", role.code(), point(shape, colour, shape == Shape.STAR ? 4 : 2.8));
  }

  private static Rule within(String field, double low, double high, String unit, Symbol symbol) {
    return new Rule(
        RasterStyles.interval(low, high, unit), new Condition.Within(field, low, high), symbol);
  }

  private static AreaSymbol hatched(int colour, Hatch hatch, Stroke outline) {
    return new AreaSymbol(colour, 0, hatch, colour, outline);
  }

  private static AreaSymbol filled(int colour, Hatch hatch) {
    return new AreaSymbol(colour, 0.35, hatch, colour, Stroke.solid(colour, 0.4));
  }

  private static PointSymbol point(Shape shape, int colour, double sizeMm) {
    return new PointSymbol(shape, colour, sizeMm, THIN);
  }

  private static PointSymbol cross(Shape shape, int colour, double sizeMm) {
    return new PointSymbol(shape, colour, sizeMm, Stroke.solid(colour, 0.6));
  }

  private static LineSymbol line(int colour, double widthMm) {
    return new LineSymbol(Stroke.solid(colour, widthMm));
  }
}
