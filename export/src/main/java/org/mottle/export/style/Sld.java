package org.mottle.export.style;

/**
 * Styles as OGC Styled Layer Descriptor 1.0.0 (OGC 02-070), elements in the order of its schema.
 *
 * <p>Sizes are pixels of 0.28 mm, the pixel of that standard (clause 10.2). Of patterns the marks
 * named {@code shape://…} go beyond the standard; a server that does not know them draws its own
 * default. A label with digits behind the point is left out: version 1.0.0 cannot round it.
 */
public final class Sld {
  private static final double PIXEL_MM = 0.28;
  private static final int PATTERN_PIXELS = 7;

  private final Xml xml = new Xml().prologue();

  private Sld() {}

  /** A layer's style. */
  public static String of(LayerStyle style) {
    Sld sld = new Sld();
    String name = style.layer().name();
    sld.xml.open(
        "StyledLayerDescriptor",
        "version",
        "1.0.0",
        "xmlns",
        "http://www.opengis.net/sld",
        "xmlns:ogc",
        "http://www.opengis.net/ogc",
        "xmlns:xlink",
        "http://www.w3.org/1999/xlink",
        "xmlns:xsi",
        "http://www.w3.org/2001/XMLSchema-instance",
        "xsi:schemaLocation",
        "http://www.opengis.net/sld http://schemas.opengis.net/sld/1.0.0/StyledLayerDescriptor.xsd");
    sld.xml.open("NamedLayer").leaf("Name", name).open("UserStyle").leaf("Name", name);
    sld.xml.leaf("Title", style.layer().meaning()).leaf("Abstract", style.source());
    sld.xml.open("FeatureTypeStyle");
    style.rules().forEach(rule -> sld.rule(style, rule));
    sld.xml.close().close().close().close();
    return sld.xml.toString();
  }

  private void rule(LayerStyle style, Rule rule) {
    String label = rule.label().isEmpty() ? style.layer().name() : rule.label();
    xml.open("Rule").leaf("Name", label).leaf("Title", label);
    filter(rule.condition());
    if (rule.symbol() instanceof PointSymbol point) {
      point(point);
    } else if (rule.symbol() instanceof LineSymbol line) {
      xml.open("LineSymbolizer");
      stroke(line.stroke());
      xml.close();
    } else if (rule.symbol() instanceof AreaSymbol area) {
      area(area);
    }
    if (!style.labelField().isEmpty() && !style.isLabelDecimal()) {
      label(style);
    }
    xml.close();
  }

  private void filter(Condition condition) {
    if (condition instanceof Condition.Otherwise) {
      xml.empty("ElseFilter");
    } else if (condition instanceof Condition.Is is) {
      xml.open("ogc:Filter");
      compare("ogc:PropertyIsEqualTo", is.field(), String.valueOf(is.value()));
      xml.close();
    } else if (condition instanceof Condition.Within within) {
      boolean both = Double.isFinite(within.low()) && Double.isFinite(within.high());
      xml.open("ogc:Filter");
      if (both) {
        xml.open("ogc:And");
      }
      if (Double.isFinite(within.low())) {
        compare("ogc:PropertyIsGreaterThan", within.field(), Qml.number(within.low()));
      }
      if (Double.isFinite(within.high())) {
        compare("ogc:PropertyIsLessThanOrEqualTo", within.field(), Qml.number(within.high()));
      }
      if (both) {
        xml.close();
      }
      xml.close();
    }
  }

  private void compare(String operator, String field, String value) {
    xml.open(operator).leaf("ogc:PropertyName", field).leaf("ogc:Literal", value).close();
  }

  private void area(AreaSymbol area) {
    xml.open("PolygonSymbolizer");
    if (area.opacity() > 0) {
      xml.open("Fill");
      css("fill", Qml.hex(area.colour()));
      css("fill-opacity", Qml.number(area.opacity()));
      xml.close();
    }
    if (area.hatch() == Hatch.NONE) {
      stroke(area.outline());
      xml.close();
      return;
    }
    xml.close();
    xml.open("PolygonSymbolizer").open("Fill").open("GraphicFill").open("Graphic");
    xml.open("Mark").leaf("WellKnownName", area.hatch().mark());
    String colour = Qml.hex(area.hatchColour());
    boolean dots = area.hatch() == Hatch.DOTS;
    if (dots) {
      fill(colour);
    } else {
      xml.open("Stroke");
      css("stroke", colour);
      css("stroke-width", "0.7");
      xml.close();
    }
    xml.close();
    xml.leaf("Size", String.valueOf(dots ? 2 : PATTERN_PIXELS));
    xml.close().close().close();
    stroke(area.outline());
    xml.close();
  }

  private void fill(String colour) {
    xml.open("Fill");
    css("fill", colour);
    xml.close();
  }

  private void stroke(Stroke stroke) {
    xml.open("Stroke");
    css("stroke", Qml.hex(stroke.colour()));
    css("stroke-width", pixels(stroke.widthMm()));
    if (stroke.dash() != Dash.SOLID) {
      css("stroke-dasharray", stroke.dash().sldLengths());
    }
    xml.close();
  }

  private void point(PointSymbol point) {
    xml.open("PointSymbolizer").open("Graphic").open("Mark");
    xml.leaf("WellKnownName", point.shape().sld());
    fill(Qml.hex(point.colour()));
    stroke(point.outline());
    xml.close().leaf("Size", pixels(point.sizeMm()));
    if (point.shape().sldDegrees() != 0) {
      xml.leaf("Rotation", String.valueOf(point.shape().sldDegrees()));
    }
    xml.close().close();
  }

  private void label(LayerStyle style) {
    xml.open("TextSymbolizer").open("Label").leaf("ogc:PropertyName", style.labelField()).close();
    xml.open("Font");
    css("font-size", "11");
    xml.close();
    xml.open("Halo").leaf("Radius", "1.5");
    fill(Qml.hex(Palette.WHITE));
    xml.close();
    fill(Qml.hex(Palette.DARK));
    xml.close();
  }

  private void css(String name, String value) {
    xml.leaf("CssParameter", value, "name", name);
  }

  private static String pixels(double mm) {
    return Qml.number(Math.rint(mm / PIXEL_MM * 100) / 100);
  }
}
