package org.mottle.export.schema;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

class LayersTest {
  private static final Geometry POINT = new GeometryFactory().createPoint(new Coordinate(1, 2));

  @Test
  void everyLayerBeginsWithWhatNamesItsRows() {
    for (Layer layer : Layers.ALL) {
      List<String> names = layer.fields().stream().map(Field::name).toList();
      assertThat(names).as(layer.name()).contains("run_id");
      if (layer != Layers.PROV) {
        assertThat(names.get(0)).as(layer.name()).isEqualTo("green_id");
      }
      if (!layer.isTable()) {
        assertThat(names).as(layer.name()).endsWith("crs_note");
      }
    }
    assertThat(Layers.ALL).extracting(Layer::name).doesNotHaveDuplicates();
  }

  @Test
  void rowsKeepNumbersAndDropWhatIsNotRecorded() {
    FeatureRow row =
        Layers.READING.row(
            POINT,
            Map.of("seq", 3, "vwc_raw", Double.NaN, "x", 5, "st_id", "", "y", -0.0, "oper", "A"));
    assertThat(value(row, "seq")).isEqualTo(3L);
    assertThat(value(row, "vwc_raw")).isNull();
    assertThat(value(row, "x")).isEqualTo(5.0);
    assertThat(value(row, "y")).isEqualTo(0.0);
    assertThat(value(row, "st_id")).isNull();
    assertThat(value(row, "oper")).isEqualTo("A");
    assertThat(row.values()).hasSameSizeAs(Layers.READING.fields());
  }

  private static Object value(FeatureRow row, String field) {
    return row.value(Layers.READING.indexOf(field));
  }

  @Test
  void rowsRefuseWhatTheLayerCannotHold() {
    assertThatThrownBy(() -> Layers.READING.row(POINT, Map.of("vwc", 1.0)))
        .hasMessage("layer reading has no field [vwc]");
    assertThatThrownBy(() -> Layers.READING.row(POINT, Map.of("seq", 1.5)))
        .hasMessage("field seq holds INTEGER, was given Double '1.5'");
    assertThatThrownBy(() -> Layers.READING.row(POINT, Map.of("x", "5")))
        .hasMessage("field x holds REAL, was given String '5'");
    assertThatThrownBy(() -> Layers.ZONE.row(POINT, Map.of()))
        .hasMessage("layer zone holds AREA, was given Point");
    assertThatThrownBy(() -> Layers.VGM.row(POINT, Map.of()))
        .hasMessage("layer vgm holds NONE, was given Point");
    assertThatThrownBy(
            () -> new LayerData(Layers.PATCH, List.of(new FeatureRow(null, Arrays.asList(1, 2)))))
        .hasMessageContaining("was given 2");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "elevenchars", "Upper", "1st", "höhe", "a b", "a-b"})
  void fieldNamesFitEveryFormat(String name) {
    assertThatThrownBy(() -> Field.whole(name, "", "x")).hasMessageContaining("'" + name + "'");
  }

  @Test
  void layersRefuseNamesThatClash() {
    Field field = Field.whole("n", "", "a number");
    assertThatThrownBy(() -> new Layer("t", "x", GeometryKind.NONE, List.of(field, field)))
        .hasMessageContaining("n is reserved or used twice");
    assertThatThrownBy(
            () ->
                new Layer("t", "x", GeometryKind.AREA, List.of(Field.whole("fid", "", "a number"))))
        .hasMessageContaining("fid is reserved");
  }

  @Test
  void stampsOnlyFieldsTheLayerHas() {
    LayerData data = new LayerData(Layers.PROV, List.of(Layers.PROV.row(Map.of())));
    FeatureRow row = data.stamped(Map.of("run_id", "r", "crs_note", "c")).rows().get(0);
    assertThat(row.value(0)).isEqualTo("r");
    assertThat(row.values()).filteredOn(v -> v != null).hasSize(1);
  }

  @Test
  void dictionaryNamesEveryField() {
    String page = DataDictionary.markdown(Layers.ALL);
    for (Layer layer : Layers.ALL) {
      assertThat(page).contains("## " + layer.name() + "\n");
      for (Field field : layer.fields()) {
        assertThat(page).contains("| `" + field.name() + "` | ");
        assertThat(DataDictionary.fields(layer)).containsKey(field.name());
      }
    }
    assertThat(page).contains("| `area_m2` | number, 4 decimals | m² | area |");
  }
}
