package org.mottle.export.style;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Styles as QGIS keeps them (QML, as of 3.22; older versions read the properties twice told). Sizes
 * in mm. The same style gives the same bytes.
 */
public final class Qml {
  private static final String VERSION = "3.22.0";
  private static final String DOCTYPE =
      "<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>";

  /** Ends of open intervals: QGIS wants numbers. */
  private static final double FAR = 1e9;

  /** Lines of a pattern, mm apart. */
  private static final double PATTERN_MM = 1.6;

  private final Xml xml = new Xml().doctype(DOCTYPE);

  private Qml() {}

  /** A layer's style. */
  public static String of(LayerStyle style) {
    Qml qml = new Qml();
    qml.xml.open(
        "qgis",
        "version",
        VERSION,
        "styleCategories",
        "Symbology|Labeling",
        "labelsEnabled",
        style.labelField().isEmpty() ? 0 : 1);
    qml.renderer(style);
    if (!style.labelField().isEmpty()) {
      qml.labels(style);
    }
    qml.xml.close();
    return qml.xml.toString();
  }

  /** A raster's style. */
  public static String of(RasterStyle style) {
    Qml qml = new Qml();
    qml.xml.open("qgis", "version", VERSION, "styleCategories", "Symbology").open("pipe");
    if (style.numbered()) {
      qml.paletted(style);
    } else {
      qml.ramp(style);
    }
    qml.xml.close().leaf("blendMode", "0").close();
    return qml.xml.toString();
  }

  private void renderer(LayerStyle style) {
    if (style.classField().isEmpty()) {
      xml.open("renderer-v2", "type", "singleSymbol", "symbollevels", 0, "enableorderby", 0);
    } else {
      xml.open(
          "renderer-v2",
          "type",
          style.isGraduated() ? "graduatedSymbol" : "categorizedSymbol",
          "attr",
          style.classField(),
          "symbollevels",
          0,
          "enableorderby",
          0);
      classes(style);
    }
    xml.open("symbols");
    for (int i = 0; i < style.rules().size(); i++) {
      symbol(String.valueOf(i), style.rules().get(i).symbol());
    }
    xml.close().close();
  }

  private void classes(LayerStyle style) {
    xml.open(style.isGraduated() ? "ranges" : "categories");
    List<Rule> rules = style.rules();
    for (int i = 0; i < rules.size(); i++) {
      Rule rule = rules.get(i);
      if (rule.condition() instanceof Condition.Within within) {
        xml.empty(
            "range",
            "lower",
            end(within.low()),
            "upper",
            end(within.high()),
            "symbol",
            i,
            "label",
            rule.label(),
            "render",
            "true");
      } else {
        Object value = rule.condition() instanceof Condition.Is is ? is.value() : "";
        xml.empty("category", "value", value, "symbol", i, "label", rule.label(), "render", "true");
      }
    }
    xml.close();
  }

  private static String end(double value) {
    return number(Math.max(-FAR, Math.min(FAR, value)));
  }

  private void symbol(String name, Symbol symbol) {
    String type =
        symbol instanceof PointSymbol ? "marker" : symbol instanceof LineSymbol ? "line" : "fill";
    xml.open("symbol", "name", name, "type", type, "alpha", 1, "clip_to_extent", 1, "force_rhr", 0);
    if (symbol instanceof PointSymbol point) {
      part("SimpleMarker", marker(point));
    } else if (symbol instanceof LineSymbol line) {
      part("SimpleLine", line(line.stroke()));
    } else if (symbol instanceof AreaSymbol area) {
      area(name, area);
    }
    xml.close();
  }

  private void area(String name, AreaSymbol area) {
    Map<String, String> fill = new LinkedHashMap<>();
    fill.put("color", colour(area.colour(), area.opacity()));
    fill.put("style", area.opacity() > 0 ? "solid" : "no");
    fill.put("outline_color", colour(area.outline().colour(), 1));
    fill.put("outline_style", area.outline().dash().qgis());
    fill.put("outline_width", number(area.outline().widthMm()));
    fill.put("outline_width_unit", "MM");
    fill.put("joinstyle", "bevel");
    part("SimpleFill", fill);
    if (area.hatch() == Hatch.DOTS) {
      dots(name, area.hatchColour());
    } else if (area.hatch() == Hatch.CROSSED) {
      lines(name + "@1", Hatch.RISING.degrees(), area.hatchColour());
      lines(name + "@2", Hatch.FALLING.degrees(), area.hatchColour());
    } else if (area.hatch() != Hatch.NONE) {
      lines(name + "@1", area.hatch().degrees(), area.hatchColour());
    }
  }

  private void lines(String name, int degrees, int colour) {
    Map<String, String> pattern = new LinkedHashMap<>();
    pattern.put("angle", String.valueOf(degrees));
    pattern.put("color", colour(colour, 1));
    pattern.put("distance", number(PATTERN_MM));
    pattern.put("distance_unit", "MM");
    pattern.put("line_width", "0.2");
    pattern.put("line_width_unit", "MM");
    openPart("LinePatternFill", pattern);
    symbol("@" + name, new LineSymbol(Stroke.solid(colour, 0.2)));
    xml.close();
  }

  private void dots(String name, int colour) {
    Map<String, String> pattern = new LinkedHashMap<>();
    pattern.put("distance_x", number(PATTERN_MM));
    pattern.put("distance_x_unit", "MM");
    pattern.put("distance_y", number(PATTERN_MM));
    pattern.put("distance_y_unit", "MM");
    pattern.put("displacement_x", number(PATTERN_MM / 2));
    pattern.put("displacement_x_unit", "MM");
    openPart("PointPatternFill", pattern);
    symbol(
        "@" + name + "@1", new PointSymbol(Shape.CIRCLE, colour, 0.5, Stroke.solid(colour, 0.05)));
    xml.close();
  }

  private static Map<String, String> marker(PointSymbol point) {
    Map<String, String> marker = new LinkedHashMap<>();
    marker.put("name", point.shape().qgis());
    marker.put("angle", String.valueOf(point.shape().qgisDegrees()));
    marker.put("color", colour(point.colour(), 1));
    marker.put("size", number(point.sizeMm()));
    marker.put("size_unit", "MM");
    marker.put("outline_color", colour(point.outline().colour(), 1));
    marker.put("outline_style", point.outline().dash().qgis());
    marker.put("outline_width", number(point.outline().widthMm()));
    marker.put("outline_width_unit", "MM");
    return marker;
  }

  private static Map<String, String> line(Stroke stroke) {
    Map<String, String> line = new LinkedHashMap<>();
    line.put("line_color", colour(stroke.colour(), 1));
    line.put("line_style", stroke.dash().qgis());
    line.put("line_width", number(stroke.widthMm()));
    line.put("line_width_unit", "MM");
    line.put("capstyle", "round");
    line.put("joinstyle", "round");
    return line;
  }

  private void part(String type, Map<String, String> properties) {
    openPart(type, properties);
    xml.close();
  }

  private void openPart(String type, Map<String, String> properties) {
    xml.open("layer", "class", type, "pass", 0, "locked", 0, "enabled", 1);
    xml.open("Option", "type", "Map");
    properties.forEach((k, v) -> xml.empty("Option", "name", k, "type", "QString", "value", v));
    xml.close();
    properties.forEach((k, v) -> xml.empty("prop", "k", k, "v", v));
  }

  /** Beside points, along lines, inside areas; a white edge keeps it readable on any colour. */
  private void labels(LayerStyle style) {
    int decimals = style.layer().name().equals("contour") ? 2 : 0;
    String text =
        style.isLabelDecimal()
            ? "format_number(\"" + style.labelField() + "\", " + decimals + ")"
            : style.labelField();
    int placement =
        switch (style.layer().kind()) {
          case POINT -> 0;
          case LINE -> 2;
          default -> 4;
        };
    xml.open("labeling", "type", "simple").open("settings", "calloutType", "simple");
    xml.open(
        "text-style",
        "fieldName",
        text,
        "isExpression",
        style.isLabelDecimal() ? 1 : 0,
        "fontSize",
        8,
        "fontSizeUnit",
        "Point",
        "textColor",
        colour(Palette.DARK, 1),
        "textOpacity",
        1);
    xml.empty(
        "text-buffer",
        "bufferDraw",
        1,
        "bufferSize",
        "0.7",
        "bufferSizeUnits",
        "MM",
        "bufferColor",
        colour(Palette.WHITE, 1),
        "bufferOpacity",
        1);
    xml.close();
    xml.empty("placement", "placement", placement, "dist", "0.8", "distUnits", "MM");
    xml.empty("rendering", "obstacle", 1, "scaleVisibility", 0, "drawLabels", 1);
    xml.close().close();
  }

  private void paletted(RasterStyle style) {
    openRaster("paletted").open("colorPalette");
    for (RasterStyle.Step step : style.classes()) {
      xml.empty(
          "paletteEntry",
          "value",
          number(step.to()),
          "color",
          hex(step.colour()),
          "alpha",
          255,
          "label",
          step.label());
    }
    xml.close().close();
  }

  private void ramp(RasterStyle style) {
    openRaster("singlebandpseudocolor").open("rastershader");
    xml.open(
        "colorrampshader",
        "colorRampType",
        "DISCRETE",
        "classificationMode",
        2,
        "clip",
        0,
        "minimumValue",
        number(style.classes().get(0).to()),
        "maximumValue",
        "inf");
    for (RasterStyle.Step step : style.classes()) {
      xml.empty(
          "item",
          "value",
          number(step.to()),
          "color",
          hex(step.colour()),
          "alpha",
          255,
          "label",
          step.label());
    }
    xml.close().close().close();
  }

  private Xml openRaster(String type) {
    return xml.open("rasterrenderer", "type", type, "band", 1, "opacity", 1, "alphaBand", -1);
  }

  private static String colour(int rgb, double opacity) {
    return String.format(
        Locale.ROOT,
        "%d,%d,%d,%d",
        rgb >> 16 & 0xff,
        rgb >> 8 & 0xff,
        rgb & 0xff,
        Math.round(255 * opacity));
  }

  static String hex(int rgb) {
    return String.format(Locale.ROOT, "#%06x", rgb);
  }

  /** At most six decimals; "inf" without end. */
  static String number(double value) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "inf" : "-inf";
    }
    return String.format(Locale.ROOT, "%.6f", value).replaceAll("\\.?0+$", "");
  }
}
