package org.mottle.export.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBWriter;
import org.locationtech.jts.io.WKTReader;

class GeoPackageBlobTest {

  /** Written by sf (R 4.2.2) through GDAL 3.6. */
  @Test
  void aBlobOfAnotherWriter() throws ParseException {
    byte[] blob =
        HexFormat.of().parseHex("47500001767f000001010000000000000080841e4100000000880c5641");
    assertThat(GeoPackageBlob.geometry(blob).toText()).isEqualTo("POINT (500000 5780000)");
  }

  @ParameterizedTest
  @CsvSource({"0,0", "1,32", "2,48", "3,48", "4,64"})
  void everyKindOfEnvelopeAndByteOrder(int kind, int bytes) throws ParseException {
    Geometry g =
        new WKTReader()
            .read(
                "MULTIPOLYGON(((0 0, 9 0, 9 9, 0 0), (5 1, 6 1, 6 2, 5 1)), ((20 0, 21 0, 21 1, 20 0)))");
    for (int order : new int[] {ByteOrderValues.LITTLE_ENDIAN, ByteOrderValues.BIG_ENDIAN}) {
      byte[] wkb = new WKBWriter(2, order).write(g);
      ByteBuffer blob = ByteBuffer.allocate(8 + bytes + wkb.length);
      blob.put(new byte[] {'G', 'P', 0, (byte) (kind << 1 | 1)}).order(ByteOrder.LITTLE_ENDIAN);
      blob.putInt(32630).position(8 + bytes);
      blob.put(wkb);
      assertThat(GeoPackageBlob.geometry(blob.array()).equalsExact(g)).isTrue();
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "00|it is not a GeoPackage geometry",
        "0103000000000000000000000000000000|it is not a GeoPackage geometry",
        "47500003767f00000101000000|it is cut off",
        "4750000b767f00000101000000|its kind of geometry is an extension",
        "47500021767f00000101000000|its kind of geometry is an extension",
        "47500001767f0000010a000000|it is curved; turn curves into straight segments",
        "47500001767f000001f2030000|it is curved; turn curves into straight segments"
      })
  void whatCannotBeRead(String hex, String message) {
    byte[] blob = HexFormat.of().parseHex(hex);
    assertThatThrownBy(() -> GeoPackageBlob.geometry(blob)).hasMessage(message);
  }
}
