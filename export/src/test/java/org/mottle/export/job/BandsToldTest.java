package org.mottle.export.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.GeometryFactory;
import org.mottle.engine.mapping.GreenSurvey;
import org.mottle.engine.mapping.MappingSettings;
import org.mottle.engine.mapping.SurveyMap;
import org.mottle.engine.mapping.SurveyMapper;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.engine.survey.Reading;
import org.mottle.engine.survey.RootZone;
import org.mottle.export.schema.LayerData;
import org.mottle.export.schema.Layers;
import org.mottle.export.settings.Bands;
import org.mottle.export.settings.SettingsReader;

/** What is told of the bands of a run, once each; and what the survey table has of them. */
class BandsToldTest {

  private static Green green(String id, double fc, double wp) {
    return new Green(
        id,
        "",
        new GeometryFactory().toGeometry(new Envelope(0, 20, 0, 20)),
        new RootZone("", "", Double.NaN, fc, wp, Double.NaN),
        Green.Boundary.UNKNOWN);
  }

  private static List<GreenSurvey> subjects(Bands bands, Green... greens) {
    return Stream.of("S1", "S2")
        .flatMap(
            survey ->
                Stream.of(greens)
                    .map(
                        g -> {
                          List<Reading> one = List.of(Reading.of(g.id(), "1", 5, 5, 20));
                          return new GreenSurvey(g, survey, one, bands.bandOf(g, one));
                        }))
        .toList();
  }

  private static Bands bands(String yaml) throws IOException {
    return SettingsReader.parse("s.yml", yaml).bands();
  }

  private static List<String> told(String yaml, Green... greens) throws IOException {
    return BandsTold.of(subjects(bands(yaml), greens), bands(yaml));
  }

  @Test
  void eachThingOnceForAllItsGreens() throws IOException {
    assertThat(
            told(
                """
                bands:
                  default: {purpose: saving water}
                  greens:
                    "4": {purpose: play, lo_pct: 15, hi_pct: 27, by: site agronomist, on: 2025-05-01}
                """,
                green("1", 26, 10),
                green("2", Double.NaN, 10),
                green("3", 30, 12),
                green("4", 26, 10),
                green("5", Double.NaN, 11)))
        .containsExactly(
            "no classes for green 2, 5: a band for saving water needs field capacity (fc_pct), not"
                + " recorded there; give fc_pct in the outlines' file or under bands in the"
                + " settings, or lo_pct and hi_pct",
            "provisional band for green 1, 3: it is not recorded who set it, nor when",
            "band of green 4: the upper limit 27.0 % is above field capacity (26.0 %): ground that"
                + " has not drained counts as in band; check the limit, or its purpose");
  }

  @Test
  void nothingIsToldOfABandThatIsAllThere() throws IOException {
    assertThat(
            told(
                "bands: {default: {purpose: ball roll, by: site agronomist, on: 2025-05-01}}",
                green("1", 26, 10)))
        .isEmpty();
  }

  @Test
  void noBandAtAll() throws IOException {
    assertThat(told("", green("1", 26, 10)))
        .containsExactly(
            "no classes: no band is set; the site's agronomist sets it in the settings");
  }

  @Test
  void theSurveyTableHasAuthorDateAndDoubt() throws IOException {
    Bands bands =
        bands(
            """
            bands:
              default: {purpose: ball roll, by: site agronomist, on: 2025-05-01}
              greens:
                "2":
                  purpose: ball roll
                  texture: {sand_pct: 62, clay_pct: 14, organic_pct: 3.5}
                  on: 2025-05-01
            """);
    SurveyMap map =
        new SurveyMapper(MappingSettings.defaults())
            .map(subjects(bands, green("1", 26, 10), green("2", 26, 10)), 1, Progress.NONE);
    LayerData survey =
        new LayerData(Layers.SURVEY, map.outcomes().stream().map(SurveyRows::of).toList());
    List<Map<String, Object>> rows = MapFigures.rows(survey);
    assertThat(rows.get(0))
        .containsEntry("band_by", "site agronomist")
        .containsEntry("band_on", "2025-05-01")
        .doesNotContainKey("band_prov");
    assertThat(rows.get(1)).doesNotContainKey("band_by").containsEntry("band_on", "2025-05-01");
    assertThat(rows.get(1).get("band_prov").toString())
        .startsWith("its anchors (wilt ")
        .endsWith(
            "estimated from texture, not from readings of the site; it is not recorded who"
                + " set it");
  }
}
