package org.mottle.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.mottle.demo.site.CoursePlace;
import org.mottle.demo.site.GreenSite;
import org.mottle.demo.site.Head;
import org.mottle.demo.site.Point;
import org.mottle.demo.truth.Survey;
import org.mottle.demo.walk.Defects;
import org.mottle.demo.walk.Probe;
import org.mottle.demo.walk.TrueReading;

/** Every planted mistake is in the files, as they are read, and nowhere else. */
class PlantedDefectsTest {

  private static final GeneratedCourse COURSE =
      CourseGenerator.generate(CourseGenerator.DEFAULT_SEED);
  private static final Map<String, byte[]> FILES = COURSE.smallFiles();

  @Test
  void allFifteenAreListed() {
    Set<String> codes = new HashSet<>();
    Defects.all().forEach(d -> codes.add(d.code()));
    for (int i = 1; i <= 15; i++) {
      assertThat(codes).contains("D" + i);
    }
    assertThat(codes).hasSize(15);
  }

  @Test
  void d1PartialInsertionAtFourStations() {
    List<String> dry = new ArrayList<>();
    for (TrueReading r : all()) {
      String value = r.logged().value();
      if (value.equals("0.6") || value.equals("61.2") || value.startsWith("0.")) {
        continue; // D3, D11
      }
      double gap = Double.parseDouble(value) - expected(r);
      boolean stuck = r.logged().label().survey() == Survey.S2 && r.greenId().equals("G2");
      if (Math.abs(gap) > 0.06 && !stuck) {
        dry.add(r.logged().label().survey() + "/" + r.greenId() + "/" + r.logged().station().id());
        double whole = expected(r) - r.soil().probePct() - r.logged().crew().biasPct();
        double shown = Probe.partlyInserted(whole, 0.8);
        assertThat(gap).isCloseTo(shown - whole, within(0.06)).isLessThan(-3);
      }
    }
    assertThat(dry).containsExactlyInAnyOrder("S2/G4/7", "S3/G1/3", "S3/G1/4", "S4/G6/11");
  }

  @Test
  void d2FourStationsShowOneValue() {
    List<String> values = new ArrayList<>();
    for (TrueReading r : COURSE.season().log(Survey.S2).readings()) {
      if (r.greenId().equals("G2")
          && List.of("9", "10", "11", "12").contains(r.logged().station().id())) {
        values.add(r.logged().value());
      }
    }
    assertThat(values).hasSize(4);
    assertThat(new HashSet<>(values)).hasSize(1);
  }

  @Test
  void d3ReadInAirAndImpossible() {
    assertThat(rows("S1", r -> r[0].equals("G9") && r[2].equals("1")))
        .singleElement()
        .satisfies(r -> assertThat(r[6]).isEqualTo("0.6"));
    assertThat(rows("S5", r -> r[6].equals("61.2")))
        .singleElement()
        .satisfies(r -> assertThat(r[0] + "/" + r[2]).isEqualTo("G7/5"));
  }

  @Test
  void d4TheClockIsAnHourAheadOfTheConditionsInS3Only() {
    for (String[] condition : table("surveys.csv")) {
      if (!condition[0].equals("S4")) {
        OffsetDateTime start = OffsetDateTime.parse(condition[2]);
        String[] first = rows(condition[0], r -> r[0].equals(condition[1])).get(0);
        long ahead = OffsetDateTime.parse(first[5]).toEpochSecond() - start.toEpochSecond();
        assertThat(ahead)
            .as(condition[0] + " " + condition[1])
            .isEqualTo(condition[0].equals("S3") ? 3612 : 12);
      }
    }
  }

  @Test
  void d5Station8SkippedAnd13ReadTwiceWithoutASign() {
    List<String> visited = new ArrayList<>();
    for (TrueReading r : COURSE.season().log(Survey.S2).readings()) {
      if (r.greenId().equals("G1") && r.logged().label().replicate() == 1) {
        visited.add(r.logged().station().id());
      }
    }
    assertThat(visited).hasSize(18).doesNotContain("8");
    assertThat(visited.stream().filter("13"::equals)).hasSize(2);
    for (String[] row : rows("S2", r -> r[0].equals("G1"))) {
      assertThat(row[2] + row[13] + row[14]).as("no station, no position").isEmpty();
      assertThat(row[15]).isEqualTo("order");
    }
  }

  @Test
  void d6OnePointFarOffAndOneVisitShifted() {
    for (TrueReading r : all()) {
      if (r.logged().fix().place() != null) {
        double off = r.logged().fix().place().distance(r.place());
        boolean planted =
            r.logged().label().survey() == Survey.S3
                && r.greenId().equals("G4")
                && r.logged().station().id().equals("5");
        assertThat(off > 20).as(r.logged().csv()).isEqualTo(planted);
      }
    }
    double east = 0;
    int n = 0;
    for (TrueReading r : COURSE.season().log(Survey.S5).readings()) {
      if (r.greenId().equals("G2")) {
        east += r.logged().fix().place().x() - r.place().x();
        n++;
      }
    }
    assertThat(east / n).isCloseTo(4.2, within(0.6));
    Point head = CoursePlace.green("G2").world(headOfG2());
    for (String[] tie : table("ties.csv")) {
      if (tie[0].equals("S5") && tie[1].equals("G2")) {
        assertThat(Double.parseDouble(tie[5]) - head.x()).isCloseTo(4.2, within(2.5));
      }
    }
  }

  @Test
  void d7FiveReadingsOfG4AreLabelledG2() {
    List<TrueReading> wrong =
        all().stream().filter(r -> !r.greenId().equals(r.logged().label().greenId())).toList();
    assertThat(wrong).hasSize(5);
    for (TrueReading r : wrong) {
      assertThat(r.logged().label().survey()).isEqualTo(Survey.S4);
      assertThat(r.greenId() + " as " + r.logged().label().greenId()).isEqualTo("G4 as G2");
      GreenSite g4 = CoursePlace.green("G4");
      Point p = r.logged().fix().place();
      assertThat(p.distance(g4.world(0, 0))).isLessThan(25);
    }
  }

  @Test
  void d8D9ConditionsSayFreshIrrigationAndShortRods() {
    for (String[] c : table("surveys.csv")) {
      boolean fresh = c[0].equals("S3") && c[1].equals("G9");
      boolean shortRods = c[0].equals("S4") && c[1].equals("G9");
      assertThat(c[9].equals("0.7")).as(c[0] + c[1]).isEqualTo(fresh);
      assertThat(c[6]).as(c[0] + c[1]).isEqualTo(shortRods ? "38" : "60");
    }
    double usual = COURSE.season().truth("G9").meanPct(Survey.S1) - 24;
    assertThat(COURSE.season().truth("G9").meanPct(Survey.S3) - 19 - usual)
        .isCloseTo(3, within(1e-9));
    for (String[] row : rows("S4", r -> r[0].equals("G9"))) {
      assertThat(row[7]).isEqualTo("38");
    }
  }

  @Test
  void d10TwelveStationsAreReadByBothOperators() {
    double sum = 0;
    int n = 0;
    for (int seed = 1; seed <= 6; seed++) {
      List<TrueReading> s4 = CourseGenerator.generate(seed).season().log(Survey.S4).readings();
      for (String green : List.of("G3", "G4")) {
        for (int station = 1; station <= 6; station++) {
          sum += first(s4, green, "" + station, "B") - first(s4, green, "" + station, "A");
          n++;
        }
      }
    }
    assertThat(n).isEqualTo(6 * 12);
    // SD of one difference is sqrt(2 · 1.5); drying between the two visits moves it by under 1
    assertThat(sum / n).isCloseTo(2.0, within(1.2));
  }

  @Test
  void d11FractionsOnG1InS5() {
    for (String[] row : rows("S5", r -> true)) {
      boolean fraction = Double.parseDouble(row[6]) < 1;
      assertThat(fraction).as(String.join(",", row)).isEqualTo(row[0].equals("G1"));
    }
  }

  @Test
  void d12D13TooFewAndAllInFront() {
    assertThat(rows("S4", r -> r[0].equals("G7"))).hasSize(5);
    GreenSite g8 = CoursePlace.green("G8");
    Set<String> front = new HashSet<>();
    for (TrueReading r : COURSE.season().log(Survey.S2).readings()) {
      if (r.greenId().equals("G8")) {
        front.add(r.logged().station().id());
        double share =
            (r.place().y() - g8.world(0, g8.ring().minY()).y())
                / (g8.ring().maxY() - g8.ring().minY());
        assertThat(share).isBetween(0.0, 0.34);
      }
    }
    assertThat(front).hasSize(12);
  }

  @Test
  void d14TheImportedOutlineCrossesItselfAndHasNoCrs() {
    assertThat(FILES).containsKeys("imported/greens_import.shp", "imported/greens_import.dbf");
    assertThat(FILES).doesNotContainKey("imported/greens_import.prj");
    ByteBuffer shp = ByteBuffer.wrap(FILES.get("imported/greens_import.shp"));
    assertThat(shp.getInt(0)).isEqualTo(9994);
    assertThat(shp.getInt(24) * 2).isEqualTo(shp.capacity());
    shp.order(ByteOrder.LITTLE_ENDIAN);
    int points = shp.getInt(100 + 8 + 40);
    List<Point> outline = new ArrayList<>();
    for (int i = 0; i < points; i++) {
      int at = 100 + 8 + 48 + 16 * i;
      outline.add(new Point(shp.getDouble(at), shp.getDouble(at + 8)));
    }
    assertThat(outline.get(0)).isEqualTo(outline.get(points - 1));
    int crossings = 0;
    for (int i = 0; i + 1 < points; i++) {
      for (int j = i + 2; j + 1 < points; j++) {
        boolean cross =
            cross(outline.get(i), outline.get(i + 1), outline.get(j), outline.get(j + 1));
        crossings += cross ? 1 : 0;
      }
    }
    assertThat(crossings).isPositive();
  }

  @Test
  void d15TheCopyHoldsTheSameRows() {
    List<String> copy = text("readings_S1_G3_copy.csv").lines().skip(1).toList();
    assertThat(copy).hasSize(18 + 3 + 6);
    assertThat(text("readings_S1.csv").lines()).containsAll(copy);
  }

  @Test
  void theGreensAreRfc7946() throws IOException {
    JsonNode greens = new ObjectMapper().readTree(FILES.get("greens.geojson"));
    assertThat(greens.has("crs")).isFalse();
    assertThat(greens.get("features")).hasSize(9);
    for (JsonNode feature : greens.get("features")) {
      JsonNode ring = feature.get("geometry").get("coordinates").get(0);
      assertThat(ring).hasSize(73);
      assertThat(ring.get(0)).isEqualTo(ring.get(72));
      double twice = 0;
      for (int i = 0; i < 72; i++) {
        JsonNode p = ring.get(i);
        JsonNode q = ring.get(i + 1);
        twice +=
            (p.get(0).asDouble() + 15) * (q.get(1).asDouble() - 48)
                - (q.get(0).asDouble() + 15) * (p.get(1).asDouble() - 48);
      }
      assertThat(twice).as("counter-clockwise").isPositive();
    }
    JsonNode metres = new ObjectMapper().readTree(FILES.get("greens_utm.geojson"));
    assertThat(metres.at("/crs/properties/name").asText()).endsWith(":32628");
  }

  /** What the probe should have shown with its rods fully in: soil, scatter, error, crew. */
  private static double expected(TrueReading r) {
    Survey survey = r.logged().label().survey();
    double second =
        OffsetDateTime.parse(r.logged().time()).toLocalTime().toSecondOfDay()
            - (survey == Survey.S3 ? 3600 : 0)
            - survey.startSecond();
    double soil = r.soil().startPct() - 0.35 * second / 3600 + r.soil().microPct();
    soil = COURSE.season().truth(r.greenId()).within(soil);
    return soil + r.logged().crew().biasPct() + r.soil().probePct();
  }

  private static List<TrueReading> all() {
    List<TrueReading> all = new ArrayList<>();
    COURSE.season().logs().forEach(log -> all.addAll(log.readings()));
    return all;
  }

  private static double first(List<TrueReading> list, String green, String id, String operator) {
    TrueReading reading =
        list.stream()
            .filter(r -> r.greenId().equals(green) && r.logged().station().id().equals(id))
            .filter(r -> r.logged().crew().operator().equals(operator))
            .findFirst()
            .orElseThrow();
    return Double.parseDouble(reading.logged().value());
  }

  private static Point headOfG2() {
    return Head.of(CoursePlace.green("G2")).get(0).place();
  }

  private static boolean cross(Point a, Point b, Point c, Point d) {
    return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
  }

  private static double side(Point a, Point b, Point p) {
    return Math.signum((b.x() - a.x()) * (p.y() - a.y()) - (b.y() - a.y()) * (p.x() - a.x()));
  }

  private static List<String[]> rows(String survey, Predicate<String[]> wanted) {
    return table("readings_" + survey + ".csv").stream().filter(wanted).toList();
  }

  private static List<String[]> table(String name) {
    return text(name).lines().skip(1).map(line -> line.split(",", -1)).toList();
  }

  private static String text(String name) {
    return new String(FILES.get(name), StandardCharsets.UTF_8);
  }
}
