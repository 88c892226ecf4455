package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.survey.Reading;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/** Readings that were logged without a position, and controls beside the green. */
class UnplacedReadingsTest {
  private static final InputOptions UTM = InputOptions.NONE.withCrs(Crs.utm(28, true));

  @TempDir Path folder;

  private Greens greens() {
    String text =
        TestFiles.inUtm28(
            TestFiles.greens(
                "1", TestFiles.square(500000, 5316300, 20),
                "2", TestFiles.square(500100, 5316300, 20)));
    return GreensReader.read(
        TestFiles.write(folder, "greens.geojson", text), InputOptions.NONE, Optional.empty());
  }

  private Readings kept(String name, String text, InputOptions options) {
    return ReadingsReader.readWithUnplaced(
        TestFiles.write(folder, name, text), options, greens(), Optional.empty());
  }

  private Readings kept(String text) {
    return kept("r.csv", text, UTM);
  }

  private List<String> refused(String text) {
    InputRefused e = catchThrowableOfType(InputRefused.class, () -> kept(text));
    assertThat(e).as("nothing was refused").isNotNull();
    return e.lines();
  }

  @Test
  void rowsWithAndWithoutAPositionInOneTable() {
    Readings all =
        kept(
            "green_id,st_id,seq,x,y,pos_src,vwc_raw\n1,A,1,500001,5316301,rtk,18\n2,B,2,,,order,19.5\n1,C,3,500002,5316302,rtk,20\n");
    assertThat(all.readings()).extracting(r -> r.label().stationId()).containsExactly("A", "C");
    assertThat(all.unplaced())
        .extracting(Reading::label)
        .containsExactly(new Reading.Label("2", "", "B", 2, 1, 3));
    Reading r = all.unplaced().get(0);
    assertThat(r.x()).isNaN();
    assertThat(r.y()).isNaN();
    assertThat(r.pct()).isEqualTo(19.5);
    assertThat(r.position().source()).isEqualTo("order");
    assertThat(all.outside()).isEmpty();
  }

  @Test
  void whoDoesNotAskHasThemRefused() {
    String file =
        TestFiles.write(
            folder, "r.csv", "green_id,x,y,vwc_raw\n1,500001,5316301,18\n2,,,19\n1,,,20\n");
    InputRefused e =
        catchThrowableOfType(InputRefused.class, () -> ReadingsReader.read(file, UTM, greens()));
    assertThat(e.lines())
        .containsExactly("r.csv: no position in rows 3, 4; give one or leave them out");
  }

  @Test
  void aFileWithoutPositionsNeedsNeitherColumnsNorCrs() {
    Readings bare = kept("a.csv", "green_id,seq,vwc_raw\n1,1,18\n2,2,19\n", InputOptions.NONE);
    Readings empty =
        kept("b.csv", "green_id,seq,x,y,vwc_raw\n1,1,,,18\n2,2,,,19\n", InputOptions.NONE);
    assertThat(bare.readings()).isEmpty();
    assertThat(bare.unplaced())
        .extracting(r -> r.label().greenId() + " " + r.label().row() + " " + r.pct())
        .containsExactly("1 2 18.0", "2 3 19.0");
    assertThat(empty.unplaced()).isEqualTo(bare.unplaced());
  }

  @Test
  void onePositionAmongManyNeedsItsCrs() {
    InputRefused e =
        catchThrowableOfType(
            InputRefused.class,
            () ->
                kept(
                    "r.csv",
                    "green_id,x,y,vwc_raw\n1,,,18\n1,500001,5316301,19\n",
                    InputOptions.NONE));
    assertThat(e.lines())
        .containsExactly(
            "r.csv does not say which CRS its x, y are in; name its CRS with --crs, like --crs EPSG:32630");
  }

  @Test
  void aReadingThatNamesNoGreenMustSayWhereItIs() {
    assertThat(refused("green_id,x,y,vwc_raw\n1,500001,5316301,18\n,,,19\n2,,,20\n,,,21\n"))
        .containsExactly(
            "r.csv: neither position nor green_id in rows 3, 5; give one or leave them out");
    assertThat(refused("seq,vwc_raw\n1,18\n2,19\n"))
        .containsExactly(
            "r.csv: neither position nor green_id in rows 2, 3; give one or leave them out");
  }

  @Test
  void halfAPositionIsNone() {
    assertThat(refused("green_id,x,y,vwc_raw\n1,500001,,18\n1,,5316301,19\n1,500001,5316301,19\n"))
        .containsExactly("r.csv: only one of x and y in rows 2, 3; give both or leave both empty");
  }

  @Test
  void greensThatAreNotThereAreToldOfUnplacedReadingsToo() {
    assertThat(refused("green_id,vwc_raw\n7,18\n1,19\n"))
        .containsExactly(
            "r.csv: green 7 (row 2) is not in greens.geojson, whose greens are 1, 2; correct the name or leave the rows out");
  }

  @Test
  void featuresWithoutAGeometryAreUnplaced() {
    String text =
        "{\"type\":\"FeatureCollection\",\"features\":["
            + "{\"type\":\"Feature\",\"properties\":{\"green_id\":1,\"vwc_raw\":18},\"geometry\":null},"
            + "{\"type\":\"Feature\",\"properties\":{\"green_id\":1,\"vwc_raw\":19},\"geometry\":{\"type\":\"Point\",\"coordinates\":[-14.9999,48.00005]}}]}";
    Readings all = kept("r.geojson", text, InputOptions.NONE);
    assertThat(all.unplaced()).extracting(Reading::pct).containsExactly(18.0);
    assertThat(all.readings()).extracting(Reading::pct).containsExactly(19.0);
  }

  @Test
  void controlsBelongToTheGreenTheyNameWithinThirtyMetres() {
    Readings all =
        kept(
            "green_id,role,x,y,pos_src,pos_sd_m,vwc_raw\n"
                + "1,ctrl,500049.9,5316310,plan,0.1,18\n"
                + "1,ctrl,500050.1,5316310,plan,0.1,19\n"
                + "1,plan,500049.9,5316310,plan,0.1,20\n"
                + "1,ctrl,,,plan,,21\n");
    assertThat(all.readings())
        .extracting(r -> r.label().greenId() + " " + r.label().row())
        .containsExactly("1 2");
    assertThat(all.outside())
        .extracting(Readings.Outside::line)
        .containsExactly(
            "r.csv, row 3: 30.1 m outside green 1", "r.csv, row 4: 29.9 m outside green 1");
    Reading unplaced = all.unplaced().get(0);
    assertThat(unplaced.role()).isEqualTo(Reading.Role.CONTROL);
    assertThat(unplaced.label().greenId()).isEqualTo("1");
  }

  @Test
  void aMappingMeantForTheConditionsDoesNotStandInTheWay() {
    Readings all =
        kept(
            "r.csv",
            "green_id,surv_id,oper,vwc_raw\n1,S1,A,18\n",
            UTM.withColumns(Map.of("surv_id", "Visit", "oper", "Who", "rain_h", "Rain")));
    assertThat(all.unplaced().get(0).label().surveyId()).isEqualTo("S1");
    assertThat(all.unplaced().get(0).protocol().operator()).isEqualTo("A");
  }
}
