package org.mottle.export.write;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FileNamesTest {
  @Test
  void keepsPlainIds() {
    assertThat(names("7", "S1", "G_3", "2031-05-02", "putting-green", ""))
        .containsExactly("7_S1_vwc", "G_3_2031-05-02_vwc", "putting-green_none_vwc");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../x",
        "a/b",
        "a\\b",
        "..",
        ".",
        "con",
        "nul.tif",
        "a:b",
        "a\"b'c",
        " ",
        "7 ",
        "-rf",
        "é",
        "\u0000",
        "a\nb",
        "緑",
        "x.",
        "%2e%2e",
        "*?",
        "\u202Egnp"
      })
  void isSafeForEverySystem(String id) {
    String name = names(id, id).get(0);
    assertThat(name).matches("[A-Za-z0-9_-]{1,140}").endsWith("_vwc");
    // no device of any system: those are names by themselves or up to the first dot
    assertThat(name.toLowerCase(Locale.ROOT)).isNotIn("con", "nul", "aux", "prn");
    assertThat(name).isEqualTo(names(id, id).get(0));
  }

  @Test
  void tellsApartWhatLooksTheSame() {
    List<String> names =
        names(
            "a/b",
            "1",
            "a\\b",
            "1",
            "a-b",
            "1",
            "G1",
            "1",
            "g1",
            "1",
            "é",
            "1",
            "è",
            "1",
            "e",
            "1",
            "a_b",
            "c",
            "a",
            "b_c",
            "",
            "1",
            "none",
            "1",
            "x".repeat(60),
            "1",
            "x".repeat(61),
            "1");
    assertThat(names.stream().map(n -> n.toLowerCase(Locale.ROOT))).doesNotHaveDuplicates();
  }

  @Test
  void refusesTheSameRasterTwice() {
    assertThatThrownBy(() -> names("1", "S1", "1", "S1", "1", "S1"))
        .hasMessage("two vwc rasters of green '1' and survey 'S1'");
  }

  private static List<String> names(String... greensAndSurveys) {
    List<NamedRaster> rasters = new ArrayList<>();
    for (int i = 0; i < greensAndSurveys.length; i += 2) {
      rasters.add(Examples.raster(greensAndSurveys[i], greensAndSurveys[i + 1], RasterKind.VWC));
    }
    return FileNames.of(rasters);
  }
}
