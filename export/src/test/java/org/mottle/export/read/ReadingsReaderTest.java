package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.survey.Reading;
import org.mottle.export.crs.Crs;

class ReadingsReaderTest {
  private static final InputOptions UTM = InputOptions.NONE.withCrs(Crs.utm(28, true));

  @TempDir Path folder;

  private Greens greens() {
    String text =
        TestFiles.inUtm28(
            TestFiles.greens(
                "1", TestFiles.square(500000, 5316300, 20),
                "\"Grün 2\"", TestFiles.square(500100, 5316300, 20)));
    return GreensReader.read(
        TestFiles.write(folder, "greens.geojson", text), InputOptions.NONE, Optional.empty());
  }

  private Readings read(String text, InputOptions options) {
    return ReadingsReader.read(TestFiles.write(folder, "r.csv", text), options, greens());
  }

  @Test
  void everyFieldOfAReading() {
    Readings all =
        read(
            "green_id,surv_id,st_id,seq,rep,t_local,vwc_raw,vwc_adj,adj_note,rod_mm,probe,oper,calib,soil_c,ec_dsm,x,y,z_m,pos_src,pos_sd_m,role,qa_code,qa_stat,used\n"
                + "1,S1,A3,4,2,2031-05-14T07:31:00+01:00,18.4,17.9,drift,60,P1,A,sand,14.5,0.8,500001,5316301,40.25,rtk,0.03,pair,Q03,warn,0\n",
            UTM);
    Reading r = all.readings().get(0);
    assertThat(r.label()).isEqualTo(new Reading.Label("1", "S1", "A3", 4, 2, 2));
    assertThat(r.position()).isEqualTo(new Reading.Position(500001, 5316301, 40.25, "rtk", 0.03));
    assertThat(r.moisture()).isEqualTo(new Reading.Moisture(18.4, 17.9, "drift"));
    assertThat(r.protocol())
        .isEqualTo(
            new Reading.Protocol("2031-05-14T07:31:00+01:00", 60, "P1", "A", "sand", 14.5, 0.8));
    assertThat(r.role()).isEqualTo(Reading.Role.PAIR);
    assertThat(r.quality()).isEqualTo(new Reading.Quality("Q03", "warn", false));
  }

  @Test
  void whatIsNotThereHasItsDefault() {
    Reading r = read("x,y,vwc_raw\n500001,5316301,18.4\n", UTM).readings().get(0);
    assertThat(r.label()).isEqualTo(new Reading.Label("1", "", "", 0, 1, 2));
    assertThat(r.moisture()).isEqualTo(Reading.Moisture.raw(18.4));
    assertThat(r.protocol()).isEqualTo(Reading.Protocol.UNKNOWN);
    assertThat(r.role()).isEqualTo(Reading.Role.PLAN);
    assertThat(r.quality()).isEqualTo(Reading.Quality.NOT_REVIEWED);
    assertThat(r.position().z()).isNaN();
  }

  @Test
  void aReadingWithoutGreenBelongsToTheOneRoundIt() {
    Readings all =
        read(
            "x,y,vwc_raw\n500001,5316301,18\n500100,5316300,19\n500060,5316310,20\n500019,5316319,21\n",
            UTM);
    assertThat(all.readings())
        .extracting(r -> r.label().greenId())
        .containsExactly("1", "Grün 2", "1");
    assertThat(all.outside())
        .extracting(Readings.Outside::line)
        .containsExactly("r.csv, row 4: 40.0 m outside every green; the nearest is 1");
  }

  @Test
  void aReadingThatNamesItsGreenStaysWithItWithinReach() {
    Readings all =
        read(
            "green_id,x,y,pos_sd_m,vwc_raw\n1,500024.9,5316310,,18\n1,500025.1,5316310,,19\n1,500029,5316310,5,20\n1,500024,5316310,1,21\nGrün 2,500001,5316301,,22\n",
            UTM);
    assertThat(all.readings()).extracting(r -> r.label().row()).containsExactly(2, 4);
    assertThat(all.outside())
        .extracting(Readings.Outside::line)
        .containsExactly(
            "r.csv, row 3: 5.1 m outside green 1",
            "r.csv, row 5: 4.0 m outside green 1",
            "r.csv, row 6: names green Grün 2 but lies in green 1");
  }

  @Test
  void headingsOfTheFileAreMapped() {
    Readings all =
        read(
            "Bahn;Ost;Nord;Feuchte %\n1;500001;5316301;18,5\n",
            UTM.withColumns(
                Map.of("green_id", "Bahn", "x", "Ost", "y", "Nord", "vwc_raw", "Feuchte %")));
    assertThat(all.readings().get(0).pct()).isEqualTo(18.5);
    assertThat(all.readings().get(0).label().greenId()).isEqualTo("1");
  }

  @Test
  void degreesArriveInTheWorkingCrs() {
    Readings all = read("lon,lat,vwc_raw\n-14.9999,48.00005,18\n", InputOptions.NONE);
    // gdaltransform (PROJ 9.1.1) from EPSG:4326 to EPSG:32628
    assertThat(all.readings().get(0).x())
        .isCloseTo(500007.459543133, org.assertj.core.api.Assertions.within(1e-4));
    assertThat(all.readings().get(0).y())
        .isCloseTo(5316305.78174868, org.assertj.core.api.Assertions.within(1e-4));
  }

  @Test
  void greensInDegreesGoToTheirZoneAndSayIt() {
    String text = TestFiles.greens("\"1\"", TestFiles.square(-14.9999, 48, 0.0003));
    Greens greens =
        GreensReader.read(
            TestFiles.write(folder, "d.geojson", text), InputOptions.NONE, Optional.empty());
    assertThat(greens.working()).isEqualTo(Crs.utm(28, true));
    assertThat(greens.notes())
        .containsExactly("d.geojson: maps are computed in EPSG:32628 (WGS 84 / UTM zone 28N)");
    Greens asked =
        GreensReader.read(
            folder.resolve("d.geojson").toString(),
            InputOptions.NONE,
            Optional.of(Crs.ofEpsg(25828)));
    assertThat(asked.working().epsg()).isEqualTo(25828);
    assertThat(asked.notes())
        .containsExactly(
            "d.geojson: from EPSG:4326 (WGS 84) to EPSG:25828 (ETRS89 / UTM zone 28N) is good to about 1.0 m");
  }

  @Test
  void greensInFeetAreConvertedToTheirZone() {
    String ring =
        "[[6012526,2108410],[6012626,2108410],[6012626,2108510],[6012526,2108510],[6012526,2108410]]";
    String text = TestFiles.inUtm28(TestFiles.greens("\"1\"", ring)).replace("32628", "2227");
    Greens greens =
        GreensReader.read(
            TestFiles.write(folder, "ft.geojson", text), InputOptions.NONE, Optional.empty());
    assertThat(greens.working().epsg()).isEqualTo(32610);
    // 100 US survey feet a side, by the scale factors of the two grids
    assertThat(greens.greens().get(0).areaM2())
        .isCloseTo(
            Math.pow(100 * 1200 / 3937.0, 2),
            org.assertj.core.api.Assertions.withinPercentage(0.2));
    assertThat(greens.notes())
        .startsWith(
            "ft.geojson is in EPSG:2227 (NAD83 / California zone 3 (ftUS)); maps are computed in the UTM zone");
  }

  @Test
  void overlapsAreTold() {
    String text =
        TestFiles.inUtm28(
            TestFiles.greens(
                "1",
                TestFiles.square(500000, 5316300, 20),
                "2",
                TestFiles.square(500010, 5316300, 20)));
    Greens greens =
        GreensReader.read(
            TestFiles.write(folder, "o.geojson", text), InputOptions.NONE, Optional.empty());
    assertThat(greens.notes()).containsExactly("o.geojson: greens 1 and 2 overlap by 200.00 m²");
  }

  @Test
  void waypointsAreStations() {
    String gpx =
        "<gpx version=\"1.1\" creator=\"t\" xmlns=\"http://www.topografix.com/GPX/1/1\"><wpt lat=\"48.00005\" lon=\"-14.9999\"><name>A1</name><desc>18.5</desc></wpt></gpx>";
    Readings all =
        ReadingsReader.read(
            TestFiles.write(folder, "p.gpx", gpx),
            InputOptions.NONE.withColumns(Map.of("vwc_raw", "desc")),
            greens());
    assertThat(all.readings().get(0).label().stationId()).isEqualTo("A1");
    assertThat(all.readings().get(0).pct()).isEqualTo(18.5);
  }
}
