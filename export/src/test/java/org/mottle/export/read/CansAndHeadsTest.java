package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.irrigation.CatchCan;
import org.mottle.engine.irrigation.Head;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/** Catch cans and sprinkler heads, as people write them down. */
class CansAndHeadsTest {
  private static final Crs WORKING = Crs.utm(28, true);
  private static final InputOptions UTM = InputOptions.NONE.withCrs(WORKING);

  @TempDir Path folder;

  private Greens greens() {
    String text =
        TestFiles.inUtm28(
            TestFiles.greens(
                "\"1\"", TestFiles.square(500000, 5316300, 20),
                "\"2\"", TestFiles.square(500100, 5316300, 20)));
    return GreensReader.read(
        TestFiles.write(folder, "g.geojson", text), InputOptions.NONE, Optional.empty());
  }

  private Cans cans(String text) {
    return cans(text, UTM);
  }

  private Cans cans(String text, InputOptions options) {
    return CansReader.read(
        TestFiles.write(folder, "c.csv", text), options, Optional.of(greens()), Optional.empty());
  }

  private Cans alone(String text, InputOptions options) {
    return CansReader.read(
        TestFiles.write(folder, "c.csv", text), options, Optional.empty(), Optional.empty());
  }

  private Heads heads(String text) {
    return HeadsReader.read(TestFiles.write(folder, "h.csv", text), UTM, greens());
  }

  private static List<String> refused(Runnable reading) {
    InputRefused e = catchThrowableOfType(InputRefused.class, reading::run);
    assertThat(e).as("nothing was refused").isNotNull();
    return e.lines();
  }

  @Test
  void aFullRow() {
    Cans cans =
        cans(
            "green_id,can_id,date,x,y,ml,mouth_cm2,min_run,mm_h,wind_ms\n"
                + "1,K1,2025-06-10,500003,5316304,51,95,30,10.7,1.4\n");
    assertThat(cans.cans())
        .containsExactly(
            new CatchCan(
                "K1", "1", "2025-06-10", 500003, 5316304, new CatchCan.Measure(51, 95, 30), 1.4));
    assertThat(cans.working()).contains(WORKING);
    assertThat(cans.notes()).hasSize(1); // encoding only: mm_h agrees
  }

  @Test
  void onlyTheCatchIsNeeded() {
    Cans cans = alone("ml\n40\n50\n", InputOptions.NONE);
    assertThat(cans.working()).isEmpty();
    assertThat(cans.cans()).extracting(CatchCan::id).containsExactly("row 2", "row 3");
    assertThat(cans.cans().get(0).greenId()).isEmpty();
    assertThat(cans.cans().get(0).measure().mouthCm2()).isNaN();
    assertThat(cans.cans().get(0).hasPlace()).isFalse();
  }

  @Test
  void placesInNoCrsAreToldWhereNobodyNeedsThem() {
    String text = "can_id,x,y,ml\na,500003,5316304,51\n";
    Cans cans = alone(text, InputOptions.NONE);
    assertThat(cans.cans().get(0).hasPlace()).isFalse();
    assertThat(cans.notes().get(1))
        .isEqualTo(
            "c.csv: the places of the cans are not used, since neither greens nor a CRS are given");
    assertThat(alone(text, UTM).cans().get(0).x()).isEqualTo(500003);
    assertThat(refused(() -> cans(text, InputOptions.NONE)).get(0)).contains("--crs");
    Cans degrees = alone("can_id,lon,lat,ml\na,-15,48,51\n", InputOptions.NONE);
    assertThat(degrees.working()).contains(WORKING);
    assertThat(degrees.cans().get(0).x()).isBetween(499999.9, 500000.1);
  }

  @Test
  void aCanWithoutGreenStandsOnTheOneRoundIt() {
    Cans cans =
        cans("can_id,x,y,ml\n" + "a,500003,5316304,51\n" + "b,500095,5316304,51\n" + "c,,,51\n");
    assertThat(cans.cans()).extracting(CatchCan::greenId).containsExactly("1", "2", "");
    assertThat(cans.notes())
        .contains(
            "c.csv: no green_id in rows 2, 3; put to the green round the can, else the nearest",
            "c.csv: neither green_id nor place in row 4; audited as ground of its own");
  }

  @Test
  void aSpiltCanIsLeftOutAndTold() {
    Cans cans = alone("can_id,ml\na,40\nb,\nc,0\n", InputOptions.NONE);
    assertThat(cans.cans()).extracting(CatchCan::id).containsExactly("a", "c");
    assertThat(cans.notes()).contains("c.csv: no ml in row 3, left out as spilt or lost");
  }

  @Test
  void aRateThatDoesNotFitIsTold() {
    Cans cans =
        alone(
            "can_id,ml,mouth_cm2,min_run,mm_h\na,51,95,30,10.7\nb,51,95,30,21.4\n",
            InputOptions.NONE);
    assertThat(cans.notes())
        .contains(
            "c.csv: mm_h is not 600 ml / (mouth_cm2 min_run) in row 3 (21.4, not 10.7); it is not"
                + " used, check them");
  }

  @Test
  void everyProblemOfTheCansAtOnce() {
    assertThat(
            refused(
                () ->
                    cans(
                        "green_id,can_id,x,y,ml,mouth_cm2,min_run,wind_ms\n"
                            + "1,a,500003,5316304,-5,95,30,1\n"
                            + "1,b,500003,5316305,50,0,30,1\n"
                            + "1,c,500003,5316306,50,95,-30,1\n"
                            + "1,d,500003,5316307,50,95,30,-1\n"
                            + "3,e,500003,5316307,much,95,30,1\n")))
        .containsExactly(
            "c.csv: ml is not a number in row 6 ('much')",
            "c.csv: ml must be 0 or more, but not in row 2 (-5.0); correct it or leave it empty",
            "c.csv: mouth_cm2 must be above 0 cm², but not in row 3 (0.0); correct it or leave it empty",
            "c.csv: min_run must be above 0 min, but not in row 4 (-30.0); correct it or leave it empty",
            "c.csv: wind_ms must be 0 m/s or more, but not in row 5 (-1.0); correct it or leave it empty",
            "c.csv: green 3 in row 6 is not in g.geojson; it has 1, 2");
  }

  @Test
  void cansTwiceAndNoCatch() {
    assertThat(refused(() -> cans("green_id,can_id,ml\n1,a,5\n2,a,5\n1,a,6\n", InputOptions.NONE)))
        .containsExactly(
            "c.csv: can a stands in rows 2 and 4; give every can of a green and date an id of its own");
    assertThat(refused(() -> alone("can_id,volume\na,5\n", InputOptions.NONE)).get(0))
        .startsWith("c.csv has no column ml; its columns are can_id, volume");
    assertThat(refused(() -> alone("can_id,ml\na,\n", InputOptions.NONE)))
        .containsExactly("c.csv: no can has a catch in the column ml");
  }

  @Test
  void headingsAreMapped() {
    InputOptions mapped = InputOptions.NONE.withColumns(Map.of("ml", "Catch", "can_id", "Can"));
    assertThat(alone("Can,Catch\nq,7\n", mapped).cans().get(0).id()).isEqualTo("q");
    assertThat(refused(() -> alone("Can,ml\nq,7\n", mapped)).get(0)).contains("'Catch'");
  }

  @Test
  void aFullHead() {
    Heads heads =
        heads(
            "head_id,green_id,stn,rad_m,arc_from,arc_to,rate_mmh,kpa,state,x,y\n"
                + "H1,1,4,17,120,250,12,410,leaking,500010,5316322\n");
    assertThat(heads.heads())
        .containsExactly(new Head("H1", "1", "4", 500010, 5316322, 17, 120, 250, 12, 410));
    assertThat(heads.states()).isEqualTo(Map.of("H1", "leaking"));
    assertThat(heads.of("1")).hasSize(1);
    assertThat(heads.of("2")).isEmpty();
    assertThat(heads.notes()).hasSize(1);
  }

  @Test
  void aHeadWithoutGreenOrArc() {
    Heads heads = heads("head_id,rad_m,x,y\nH1,17,500122,5316310\nH2,9,500160,5316310\n");
    assertThat(heads.heads()).extracting(Head::greenId).containsExactly("2", "2");
    assertThat(heads.heads().get(0).sweep()).isEqualTo(360);
    assertThat(heads.heads().get(0).rateMmH()).isNaN();
    assertThat(heads.notes())
        .contains(
            "h.csv: no arc in rows 2, 3, taken for full circles",
            "h.csv: no green_id in rows 2, 3; put to the nearest green",
            "h.csv: farther from their green than they throw: H2 (2); check place, radius and"
                + " green_id");
  }

  @Test
  void everyProblemOfTheHeadsAtOnce() {
    assertThat(
            refused(
                () ->
                    heads(
                        "head_id,green_id,rad_m,arc_from,arc_to,rate_mmh,kpa,x,y\n"
                            + "H1,1,17,0,90,12,400,500010,5316322\n"
                            + "H1,1,170,0,,12,400,500010,5316322\n"
                            + ",1,,0,400,-1,0,500010,5316322\n"
                            + "H4,7,17,0,90,12,400,,\n")))
        .containsExactly(
            "h.csv: no single point in row 5; give one or leave them out",
            "h.csv: arc_to must be from 0 to 360 degrees, but not in row 4 (400.0); correct it or leave"
                + " it empty",
            "h.csv: only one of arc_from and arc_to in row 3; give both, or neither for a full circle",
            "h.csv: head_id is empty in row 4; name every head",
            "h.csv: head H1 stands in rows 2 and 3; give every head of the course an id of its own",
            "h.csv: rad_m is empty in row 4; give the reach of every head in metres",
            "h.csv: rad_m must be above 0 to 60 m, but not in row 3 (170.0); correct it or leave it"
                + " empty",
            "h.csv: rate_mmh must be 0 mm/h or more, but not in row 4 (-1.0); correct it or leave it"
                + " empty",
            "h.csv: kpa must be above 0 kPa, but not in row 4 (0.0); correct it or leave it empty",
            "h.csv: green 7 in row 5 is not in g.geojson; it has 1, 2");
    assertThat(refused(() -> heads("name,x,y\nH1,500010,5316322\n")))
        .containsExactly(
            "h.csv has no column head_id; its columns are name, x, y",
            "h.csv has no column rad_m; its columns are name, x, y");
  }

  @Test
  void headsByThemselvesChooseTheirZone() {
    String file = TestFiles.write(folder, "h.csv", "head_id,rad_m,lon,lat\nH1,17,-15,48\n");
    Heads heads = HeadsReader.read(file, InputOptions.NONE, Optional.empty());
    assertThat(heads.working()).isEqualTo(WORKING);
    assertThat(heads.heads().get(0).greenId()).isEmpty();
  }
}
