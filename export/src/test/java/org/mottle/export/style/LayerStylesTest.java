package org.mottle.export.style;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.mottle.engine.patch.ZoneClass;
import org.mottle.export.schema.Layer;
import org.mottle.export.schema.Layers;
import org.mottle.export.write.RasterKind;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class LayerStylesTest {
  private static Document xml(String text) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
    return factory.newDocumentBuilder().parse(new InputSource(new StringReader(text)));
  }

  @Test
  void everyLayerHasAStyleOrIsListedWithout() {
    List<Layer> drawn = LayerStyles.ALL.stream().map(LayerStyle::layer).toList();
    assertThat(drawn).doesNotHaveDuplicates();
    assertThat(Stream.concat(drawn.stream(), LayerStyles.WITHOUT.stream()).toList())
        .containsExactlyInAnyOrderElementsOf(
            Layers.ALL.stream().filter(layer -> !layer.isTable()).toList());
  }

  @Test
  void everyRasterHasAStyleOrIsListedWithout() {
    for (RasterKind kind : RasterKind.values()) {
      assertThat(RasterStyles.of(kind.code()).isEmpty())
          .as(kind.code())
          .isEqualTo(RasterStyles.WITHOUT.contains(kind.code()));
    }
  }

  @Test
  void zonesAreDrawnByTheNumbersOfTheirClasses() throws Exception {
    LayerStyle style = LayerStyles.of(Layers.ZONE).orElseThrow();
    NodeList categories = xml(Qml.of(style)).getElementsByTagName("category");
    List<String> found = new ArrayList<>();
    for (int i = 0; i < categories.getLength(); i++) {
      Element category = (Element) categories.item(i);
      found.add(category.getAttribute("value") + " " + category.getAttribute("label"));
    }
    assertThat(found)
        .containsExactlyInAnyOrderElementsOf(
            Stream.of(ZoneClass.values()).map(c -> c.number() + " " + c.code()).toList());
  }

  @Test
  void noTwoClassesDifferByColourAlone() {
    for (LayerStyle style : LayerStyles.ALL) {
      Set<Object> looks = new HashSet<>();
      for (Rule rule : style.rules()) {
        assertThat(looks.add(withoutColour(rule.symbol())))
            .as(style.layer().name() + ", " + rule.label())
            .isTrue();
      }
    }
  }

  private static List<Object> withoutColour(Symbol symbol) {
    if (symbol instanceof PointSymbol p) {
      return List.of(p.shape(), p.sizeMm());
    }
    if (symbol instanceof LineSymbol l) {
      return List.of(l.stroke().widthMm(), l.stroke().dash());
    }
    AreaSymbol a = (AreaSymbol) symbol;
    return List.of(a.hatch(), a.outline().dash(), a.opacity() > 0);
  }

  /** Order of elements by the schema of SLD 1.0.0 (OGC 02-070, annex A); from memory. */
  @Test
  void sldKeepsTheOrderOfItsSchema() throws Exception {
    List<List<String>> orders =
        List.of(
            List.of("Name", "Title", "Abstract", "FeatureTypeStyle"),
            List.of(
                "Name",
                "Title",
                "ogc:Filter",
                "ElseFilter",
                "PolygonSymbolizer",
                "LineSymbolizer",
                "PointSymbolizer",
                "TextSymbolizer"),
            List.of("WellKnownName", "Fill", "Stroke"),
            List.of("Mark", "Size", "Rotation"),
            List.of("Fill", "Stroke"),
            List.of("Label", "Font", "Halo", "Fill"));
    List<List<String>> owners =
        List.of(
            List.of("UserStyle"),
            List.of("Rule"),
            List.of("Mark"),
            List.of("Graphic"),
            List.of("PolygonSymbolizer"),
            List.of("TextSymbolizer"));
    for (LayerStyle style : LayerStyles.ALL) {
      Document sld = xml(Sld.of(style));
      for (int i = 0; i < orders.size(); i++) {
        NodeList elements = sld.getElementsByTagName(owners.get(i).get(0));
        for (int e = 0; e < elements.getLength(); e++) {
          List<String> order = orders.get(i);
          List<Integer> places = new ArrayList<>();
          NodeList children = elements.item(e).getChildNodes();
          for (int c = 0; c < children.getLength(); c++) {
            if (children.item(c) instanceof Element child) {
              places.add(order.indexOf(child.getTagName()));
            }
          }
          assertThat(places).as(style.layer().name()).isSorted().doesNotContain(-1);
        }
      }
      assertThat(sld.getElementsByTagName("Rule").getLength()).isEqualTo(style.rules().size());
    }
  }

  @Test
  void theSameStyleGivesTheSameText() {
    for (LayerStyle style : LayerStyles.ALL) {
      assertThat(Qml.of(style)).isEqualTo(Qml.of(style)).doesNotContain("\r");
      assertThat(Sld.of(style)).isEqualTo(Sld.of(style)).doesNotContain("\r");
    }
  }

  /** Colours of a ramp change at the same values in a raster and in the style. */
  @Test
  void endsOfRoundScalesAreRound() {
    assertThat(RasterStyles.of("vwc").orElseThrow().classes())
        .extracting(RasterStyle.Step::to)
        .containsExactly(5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, Double.POSITIVE_INFINITY);
  }
}
