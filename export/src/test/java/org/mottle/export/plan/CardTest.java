package org.mottle.export.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.survey.Reading.Role;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class CardTest {

  private static String page(List<GreenPlan> plans) {
    return Card.page(plans, plans.stream().map(p -> Card.section(p, HandMade.CRS)).toList());
  }

  private static Document parsed(String page) throws Exception {
    // a page that is also XML has no tag left open and no letter left bare
    String xml = page.replace("<!DOCTYPE html>", "").replace("<meta charset=\"utf-8\">", "");
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(xml)));
  }

  private static List<String> texts(Element within, String tag) {
    List<String> texts = new ArrayList<>();
    NodeList found = within.getElementsByTagName(tag);
    for (int i = 0; i < found.getLength(); i++) {
      texts.add(found.item(i).getTextContent());
    }
    return texts;
  }

  @Test
  void everyStationHasItsNumberAndItsRow() throws Exception {
    for (int n : new int[] {1, 4, 18, 24, 40, 80}) {
      GreenPlan plan = HandMade.plan("G1", "Alder", n, Math.min(2, n / 2));
      Document page = parsed(page(List.of(plan)));
      Element drawing = (Element) page.getElementsByTagName("svg").item(0);
      List<String> ids = plan.plan().stations().stream().map(PlannedStation::id).toList();
      assertThat(texts(drawing, "text")).as(n + " stations").containsAll(ids);
      List<String> heads = texts(page.getDocumentElement(), "th");
      for (PlannedStation s : plan.plan().stations()) {
        String often = s.role() != Role.CONTROL && s.insertions() > 1 ? " ×" + s.insertions() : "";
        assertThat(heads).filteredOn(h -> h.equals(s.id() + often)).as(s.toString()).hasSize(1);
      }
    }
  }

  @Test
  void shapesTellTheRolesWithoutColour() {
    GreenPlan plan = HandMade.plan("G1", "Alder", 18, 2);
    String drawing = CardMap.svg(plan, 122, 120);
    long squares = drawing.split("<polygon", -1).length - 1;
    long circles = drawing.split("<circle", -1).length - 1;
    assertThat(squares).isEqualTo(plan.closePairs());
    // one each, a second outline where read twice, the control's
    assertThat(circles).isEqualTo(18 - plan.closePairs() + plan.readTwice() + 1);
    for (Role a : Role.values()) {
      for (Role b : Role.values()) {
        if (a != b) {
          assertThat(StationShape.of(a).svg(5, 5, false))
              .isNotEqualTo(StationShape.of(b).svg(5, 5, false));
        }
      }
    }
  }

  /** A hand calculation: a green 28 m wide on 122 mm less two margins of 5 mm. */
  @Test
  void theDrawingIsToScale() {
    GreenPlan plan = HandMade.plan("G1", "Alder", 18, 2);
    String drawing = CardMap.svg(plan, 122, CardMap.heightFor(plan, 122));
    assertThat(drawing).contains("10 m</text>");
    assertThat(drawing).contains("v2h40.00v-2"); // 10 m of 28 m on 112 mm
  }

  @Test
  void asksForTheVisitAndSaysTheCautions() {
    String page = page(List.of(HandMade.plan("G1", "Alder", 18, 2)));
    assertThat(page)
        .contains("date", "operator", "probe", "rod length, mm")
        .contains("hours since rain", "hours since irrigation")
        .contains("Stop at thunder or lightning", "0.3 m", "agronomist decides")
        .contains("EPSG:32628 (WGS 84 / UTM zone 28N)", "design coverage")
        .doesNotContain("<script", "http://www.w3.org/1999", "src=", "url(", "NaN");
  }

  @Test
  void namesAreTextAndNothingElse() throws Exception {
    String odd = "Été <b>& \"7\"</b>";
    Document page = parsed(page(List.of(HandMade.plan("<7>", odd, 4, 0))));
    assertThat(texts(page.getDocumentElement(), "h1")).containsExactly("Green " + odd + " (<7>)");
  }

  @Test
  void aPageForEachGreen() throws Exception {
    Document page =
        parsed(
            page(
                List.of(
                    HandMade.plan("1", "", 12, 2),
                    HandMade.plan("2", "", 12, 2),
                    HandMade.plan("3", "", 12, 2))));
    assertThat(texts(page.getDocumentElement(), "section")).hasSize(3);
  }

  @Test
  void numbersKeepClearOfShapesAndOfEachOther() {
    List<Coordinate> places = new ArrayList<>();
    List<String> texts = new ArrayList<>();
    List<Double> halves = new ArrayList<>();
    for (int i = 0; i < 24; i++) {
      places.add(new Coordinate(12 + 18 * (i % 5), 12 + 18 * (i / 5)));
      texts.add(Integer.toString(i + 1));
      halves.add(1.5);
    }
    places.set(7, new Coordinate(places.get(6).x + 2, places.get(6).y)); // a close pair
    List<Envelope> boxes =
        new NumberPlaces(places, halves, texts, new Envelope(0, 122, 0, 120)).find();
    for (int i = 0; i < boxes.size(); i++) {
      for (int j = 0; j < boxes.size(); j++) {
        assertThat(i != j && boxes.get(i).intersects(boxes.get(j))).as(i + " on " + j).isFalse();
        assertThat(boxes.get(i).contains(places.get(j))).as(i + " on " + j).isFalse();
      }
    }
  }
}
