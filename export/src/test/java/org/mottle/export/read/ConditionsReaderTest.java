package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.mottle.engine.survey.Conditions;
import org.mottle.export.problem.InputRefused;

class ConditionsReaderTest {
  private final List<String> notes = new ArrayList<>();

  @TempDir Path folder;

  private List<Conditions> read(String text, Map<String, String> columns) {
    return ConditionsReader.read(
        TestFiles.write(folder, "c.csv", text), InputOptions.NONE.withColumns(columns), notes);
  }

  private List<Conditions> read(String text) {
    return read(text, Map.of());
  }

  private List<String> refused(String text) {
    InputRefused e = catchThrowableOfType(InputRefused.class, () -> read(text));
    assertThat(e).as("nothing was refused").isNotNull();
    return e.lines();
  }

  @Test
  void everyFieldOfARecord() {
    Conditions c =
        read("surv_id,green_id,t_start,t_end,oper,probe,rod_mm,calib,rain_h,rain_mm,irr_h,irr_mm,et0_mm_d,dew,soil_c,ec_dsm,maint,pos_src,shift_sd_m,plan_id,note\n"
                + "S1,1,2031-05-14T07:30:00+01:00,2031-05-14T08:00:00+01:00,A,P1,60,sand,36,18,10,5,3.1,y,12.5,0.8,mown 2031-05-13,sbas,1.2,base+infill,windy\n")
            .get(0);
    assertThat(c)
        .isEqualTo(
            new Conditions(
                "S1",
                "1",
                new Conditions.Visit(
                    "2031-05-14T07:30:00+01:00",
                    "2031-05-14T08:00:00+01:00",
                    "base+infill",
                    "sbas",
                    1.2),
                new Conditions.Crew("A", "P1", 60, "sand"),
                new Conditions.Water(36, 18, 10, 5, 3.1),
                new Conditions.Ground("y", 12.5, 0.8, "mown 2031-05-13", "windy")));
    assertThat(notes).isEmpty();
  }

  @Test
  void nothingIsAssumedForWhatIsMissing() {
    Conditions c = read("surv_id\nS1\n").get(0);
    assertThat(c)
        .isEqualTo(
            new Conditions(
                "S1",
                "",
                new Conditions.Visit("", "", "", "", Double.NaN),
                new Conditions.Crew("", "", Double.NaN, ""),
                new Conditions.Water(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN),
                new Conditions.Ground("", Double.NaN, Double.NaN, "", "")));
    assertThat(c.isOf("S1", "7")).isTrue();
  }

  @Test
  void everyProblemOfTheFileAtOnce() {
    assertThat(
            refused(
                "surv_id,green_id,t_start,t_end,rain_h,et0_mm_d\n"
                    + "S1,1,2031-05-14 07:30,,-3,two\n"
                    + "S1,1,2031-05-14T09:00:00+01:00,2031-05-14T08:30:00+01:00,5,3\n"
                    + ",2,,,,\n"))
        .containsExactlyInAnyOrder(
            "c.csv, row 2: t_start is no time with offset, was '2031-05-14 07:30'; write it like 2031-05-14T07:30:00+01:00",
            "c.csv, row 2: rain_h must not be below 0, was -3.0; leave it empty where it is not known",
            "c.csv: et0_mm_d is not a number in row 2 ('two')",
            "c.csv: no surv_id in row 4; say which survey the record is of",
            "c.csv: survey S1, green 1 stands in rows 2 and 3; keep one, or name their greens",
            "c.csv, row 3: t_end 2031-05-14T08:30:00+01:00 is before t_start 2031-05-14T09:00:00+01:00; correct one");
  }

  @Test
  void aTimeWithoutOffsetIsNone() {
    assertThat(refused("surv_id,t_start\nS1,2031-05-14T07:30:00\n"))
        .containsExactly(
            "c.csv, row 2: t_start is no time with offset, was '2031-05-14T07:30:00'; write it like 2031-05-14T07:30:00+01:00");
  }

  @Test
  void timesAreComparedAcrossOffsets() {
    assertThat(
            read("surv_id,t_start,t_end\nS1,2031-05-14T09:00:00+02:00,2031-05-14T08:00:00+00:00\n"))
        .hasSize(1);
  }

  @Test
  void columnsThatAreNotReadAreTold() {
    read("surv_id,rain_hrs,weather\nS1,36,fine\n");
    assertThat(notes)
        .containsExactly(
            "c.csv: column rain_hrs is not read; did you mean rain_h?",
            "c.csv: column weather is not read");
  }

  @Test
  void mappedHeadingsAreReadAndNotTold() {
    Conditions c =
        read("Visit;Regen h\nS1;36,5\n", Map.of("surv_id", "Visit", "rain_h", "Regen h")).get(0);
    assertThat(c.surveyId()).isEqualTo("S1");
    assertThat(c.water().rainHours()).isEqualTo(36.5);
    assertThat(notes).isEmpty();
    InputRefused e =
        catchThrowableOfType(
            InputRefused.class, () -> read("surv_id\nS1\n", Map.of("rain_h", "Regen h")));
    assertThat(e.lines())
        .containsExactly(
            "c.csv has no column 'Regen h' (mapped to rain_h); its columns are surv_id");
  }

  @Test
  void whatIsRecordedOfAGreenCountsBeforeWhatIsRecordedOfAll() {
    List<Conditions> all = read("surv_id,green_id,rain_h\nS1,,36\nS1,2,5\nS2,,7\n");
    Conditions first = all.stream().filter(c -> c.isOf("S1", "2")).findFirst().orElseThrow();
    assertThat(first.water().rainHours()).isEqualTo(5);
    assertThat(all)
        .extracting(c -> c.surveyId() + "/" + c.greenId())
        .containsExactly("S1/2", "S1/", "S2/");
  }

  @Test
  void filesThatAreNoTableOfConditions() {
    assertThat(refused("green_id,rain_h\n1,36\n"))
        .containsExactly(
            "c.csv has no column surv_id; its columns are green_id, rain_h: add it, or map it in the settings, like columns: {surv_id: Visit}");
    String none = folder.resolve("none.csv").toString();
    InputRefused missing =
        catchThrowableOfType(
            InputRefused.class, () -> ConditionsReader.read(none, InputOptions.NONE, notes));
    assertThat(missing.lines()).containsExactly(none + ": no such file");
    String gis = TestFiles.write(folder, "c.geojson", "{}");
    InputRefused format =
        catchThrowableOfType(
            InputRefused.class, () -> ConditionsReader.read(gis, InputOptions.NONE, notes));
    assertThat(format.lines())
        .containsExactly(
            "c.geojson: a table without positions is read as CSV only; save it as .csv");
  }
}
