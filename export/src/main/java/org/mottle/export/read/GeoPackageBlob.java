package org.mottle.export.read;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.io.ParseException;
import org.locationtech.jts.io.WKBReader;

/**
 * The geometry blob of a GeoPackage: "GP", version, flags, the SRS, an envelope of a size the flags
 * say, then ISO WKB (OGC 12-128r18, clause 2.1.3).
 */
final class GeoPackageBlob {
  private static final int[] ENVELOPE_BYTES = {0, 32, 48, 48, 64};
  private static final int HEADER = 8;

  private GeoPackageBlob() {}

  static Geometry geometry(byte[] blob) throws ParseException {
    if (blob.length < HEADER + 5 || blob[0] != 'G' || blob[1] != 'P') {
      throw new IllegalArgumentException("it is not a GeoPackage geometry");
    }
    int flags = blob[3];
    int envelope = (flags >> 1) & 7;
    if (envelope >= ENVELOPE_BYTES.length || (flags & 0x20) != 0) {
      throw new IllegalArgumentException("its kind of geometry is an extension");
    }
    int start = HEADER + ENVELOPE_BYTES[envelope];
    if (blob.length < start + 5) {
      throw new IllegalArgumentException("it is cut off");
    }
    byte[] wkb = Arrays.copyOfRange(blob, start, blob.length);
    int kind = ByteBuffer.wrap(wkb).order(order(wkb)).getInt(1) % 1000;
    if (kind >= 8 && kind <= 14) {
      throw new IllegalArgumentException("it is curved; turn curves into straight segments");
    }
    return new WKBReader().read(wkb);
  }

  private static ByteOrder order(byte[] wkb) {
    return wkb[0] == 0 ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
  }
}
