package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.design.PlannedStation;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.position.Mark;
import org.mottle.engine.position.Tie;
import org.mottle.engine.survey.Reading;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/** Stations that were planned, things of known place, and positions taken at them. */
class PlansAndMarksTest {
  private static final Crs WORKING = Crs.utm(28, true);
  private static final InputOptions UTM = InputOptions.NONE.withCrs(WORKING);

  @TempDir Path folder;

  private List<StationPlan> plans(String text, InputOptions options) {
    return PlansReader.read(TestFiles.write(folder, "p.csv", text), options, WORKING);
  }

  private static List<String> refused(Runnable reading) {
    InputRefused e = catchThrowableOfType(InputRefused.class, reading::run);
    assertThat(e).as("nothing was refused").isNotNull();
    return e.lines();
  }

  @Test
  void onePlanForEachNameAndGreenInTheOrderOfTheWalk() {
    List<StationPlan> plans =
        plans(
            "plan_id,green_id,st_id,seq,role,x,y,insertions\n"
                + "base,1,B,2,pair,500003,5316303,3\n"
                + "base,2,A,1,,500101,5316301,\n"
                + "base,1,A,1,plan,500001,5316301,\n"
                + "poi,1,P,1,poi,500002,5316302,2\n",
            UTM);
    assertThat(plans)
        .containsExactly(
            new StationPlan(
                "base",
                "1",
                List.of(
                    new PlannedStation("A", 500001, 5316301, Reading.Role.PLAN, 1),
                    new PlannedStation("B", 500003, 5316303, Reading.Role.PAIR, 3))),
            new StationPlan(
                "base",
                "2",
                List.of(new PlannedStation("A", 500101, 5316301, Reading.Role.PLAN, 1))),
            new StationPlan(
                "poi",
                "1",
                List.of(
                    new PlannedStation("P", 500002, 5316302, Reading.Role.POINT_OF_INTEREST, 2))));
  }

  @Test
  void plansInDegreesArriveInTheWorkingCrs() {
    PlannedStation s =
        plans("green_id,st_id,lon,lat\n1,A,-14.9999,48.00005\n", InputOptions.NONE)
            .get(0)
            .stations()
            .get(0);
    // gdaltransform (PROJ 9.1.1) from EPSG:4326 to EPSG:32628
    assertThat(s.x()).isCloseTo(500007.459543133, within(1e-4));
    assertThat(s.y()).isCloseTo(5316305.78174868, within(1e-4));
  }

  @Test
  void stationsAsWaypointsOfAReceiver() {
    String file =
        TestFiles.write(
            folder,
            "p.gpx",
            "<gpx version=\"1.1\" creator=\"t\" xmlns=\"http://www.topografix.com/GPX/1/1\"><wpt lat=\"48.00005\" lon=\"-14.9999\"><name>A1</name><desc>1</desc></wpt></gpx>");
    List<StationPlan> plans =
        PlansReader.read(file, InputOptions.NONE.withColumns(Map.of("green_id", "desc")), WORKING);
    assertThat(plans.get(0).greenId()).isEqualTo("1");
    assertThat(plans.get(0).station("A1")).isPresent();
  }

  @Test
  void everyProblemOfAPlanAtOnce() {
    assertThat(
            refused(
                () ->
                    plans(
                        "plan_id,green_id,st_id,seq,role,x,y,insertions\n"
                            + "base,1,A,1,plan,500001,5316301,0\n"
                            + "base,1,A,2,plam,500002,5316301,1\n"
                            + "base,1,,3.5,plan,500003,5316301,1\n"
                            + "base,1,D,4,plan,,,1\n"
                            + "base,1,E,5,plan,-14.9,48.0,1\n",
                        UTM)))
        .containsExactlyInAnyOrder(
            "p.csv: no single point in row 5; give one or leave them out",
            "p.csv, row 6: x -14.9, y 48 looks like degrees, not like EPSG:32628 (WGS 84 / UTM zone 28N); name the CRS it is in with --crs (EPSG:4326 for longitude and latitude)",
            "p.csv: role is none of plan, pair, poi, ctrl, infill in row 3 ('plam')",
            "p.csv: seq is not a whole number in row 4 (3.5)",
            "p.csv, row 2: insertions must be 1 or more, was 0",
            "p.csv, row 3: station A of green 1 stands in row 2 already; give each station its own st_id",
            "p.csv, row 4: a planned station needs green_id and st_id, were '1' and ''");
  }

  @Test
  void aPlanWithoutItsColumnsOrItsCrs() {
    assertThat(refused(() -> plans("seq,x,y\n1,500001,5316301\n", UTM)))
        .containsExactly(
            "p.csv has no column green_id; its columns are seq, x, y",
            "p.csv has no column st_id; its columns are seq, x, y");
    assertThat(refused(() -> plans("green_id,st_id,x,y\n1,A,500001,5316301\n", InputOptions.NONE)))
        .containsExactly(
            "p.csv does not say which CRS its x, y are in; name its CRS with --crs, like --crs EPSG:32630");
    assertThat(
            refused(
                () ->
                    plans(
                        "green_id,st_id,x,y\n1,A,500001,5316301\n",
                        UTM.withColumns(Map.of("insertions", "Holes")))))
        .containsExactly(
            "p.csv has no column 'Holes' (mapped to insertions); its columns are green_id, st_id, x, y");
  }

  @Test
  void aWrongCrsCostsAFewLines() {
    StringBuilder text = new StringBuilder("green_id,st_id,x,y\n");
    for (int i = 0; i < 30; i++) {
      text.append("1,").append(i).append(",-14.9,48.0\n");
    }
    List<String> lines = refused(() -> plans(text.toString(), UTM));
    assertThat(lines).hasSize(9);
    assertThat(lines.get(8)).isEqualTo("p.csv: 22 more rows cannot be carried over either");
  }

  @Test
  void marksUnderEitherName() {
    String heads =
        "{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\",\"properties\":{\"head_id\":\"H1\",\"green_id\":1},\"geometry\":{\"type\":\"Point\",\"coordinates\":[-14.9999,48.00005]}}]}";
    Mark head =
        MarksReader.marks(TestFiles.write(folder, "h.geojson", heads), InputOptions.NONE, WORKING)
            .get(0);
    assertThat(head.id()).isEqualTo("H1");
    assertThat(head.greenId()).isEqualTo("1");
    assertThat(head.x()).isCloseTo(500007.459543133, within(1e-4));
    assertThat(head.y()).isCloseTo(5316305.78174868, within(1e-4));
    assertThat(
            MarksReader.marks(
                TestFiles.write(folder, "m.csv", "mark_id,x,y\nM1,500001,5316301\n"), UTM, WORKING))
        .containsExactly(new Mark("M1", "", 500001, 5316301));
  }

  @Test
  void aTieHasItsRow() {
    String text =
        "surv_id,green_id,oper,head_id,t_local,x,y,pos_src\nS1,1,A,H1,2031-05-14T07:30:00+01:00,500001,5316301,sbas\n";
    assertThat(MarksReader.ties(TestFiles.write(folder, "t.csv", text), UTM, WORKING))
        .containsExactly(new Tie("S1", "1", "A", "H1", 500001, 5316301, "sbas", 2));
  }

  @Test
  void marksWithoutANameOrWithOneOfAnother() {
    String marks = "mark_id,green_id,x,y\n1,1,500001,5316301\n1,2,500101,5316301\n";
    String file = TestFiles.write(folder, "m.csv", marks);
    assertThat(refused(() -> MarksReader.marks(file, UTM, WORKING)))
        .containsExactly(
            "m.csv: mark 1 stands in rows 2 and 3; give every mark of the course a name of its own");
    // a mark is visited often
    assertThat(MarksReader.ties(file, UTM, WORKING)).hasSize(2);
    String unnamed = TestFiles.write(folder, "u.csv", "mark_id,x,y\n,500001,5316301\n");
    assertThat(refused(() -> MarksReader.marks(unnamed, UTM, WORKING)))
        .containsExactly("u.csv, row 2: the mark has no name");
    String none = TestFiles.write(folder, "n.csv", "id,x,y\n1,500001,5316301\n");
    assertThat(refused(() -> MarksReader.marks(none, UTM, WORKING)))
        .containsExactly("n.csv has no column mark_id or head_id; its columns are id, x, y");
  }
}
