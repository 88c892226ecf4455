package org.mottle.export.write;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.io.ByteOrderValues;
import org.locationtech.jts.io.WKBWriter;
import org.mottle.export.schema.GeometryKind;
import org.mottle.export.schema.Layer;

/**
 * GeoPackage geometry: the header "GP" (OGC 12-128r17, clause 2.1.3) with the envelope for all but
 * points, then well-known binary, little endian. One object a thread.
 */
final class GeometryBlob {
  private static final int HEADER = 8;
  private static final int ENVELOPE = 32;
  private static final byte LITTLE_ENDIAN_NO_ENVELOPE = 0b0001;
  private static final byte LITTLE_ENDIAN_XY_ENVELOPE = 0b0011;

  private final int srsId;
  private final WKBWriter wkb = new WKBWriter(2, ByteOrderValues.LITTLE_ENDIAN);

  GeometryBlob(int srsId) {
    this.srsId = srsId;
  }

  /** Declared type of a layer's geometry column. */
  static String type(Layer layer) {
    return switch (layer.kind()) {
      case POINT -> "POINT";
      case LINE -> "MULTILINESTRING";
      case AREA -> "MULTIPOLYGON";
      case NONE -> throw new IllegalArgumentException("a table has no geometry: " + layer.name());
    };
  }

  byte[] of(Geometry geometry, Layer layer) {
    Geometry stored = multi(geometry);
    byte[] body = wkb.write(stored);
    boolean point = layer.kind() == GeometryKind.POINT;
    ByteBuffer blob =
        ByteBuffer.allocate(HEADER + (point ? 0 : ENVELOPE) + body.length)
            .order(ByteOrder.LITTLE_ENDIAN);
    blob.put((byte) 'G').put((byte) 'P').put((byte) 0);
    blob.put(point ? LITTLE_ENDIAN_NO_ENVELOPE : LITTLE_ENDIAN_XY_ENVELOPE);
    blob.putInt(srsId);
    if (!point) {
      Envelope box = stored.getEnvelopeInternal();
      blob.putDouble(box.getMinX()).putDouble(box.getMaxX());
      blob.putDouble(box.getMinY()).putDouble(box.getMaxY());
    }
    return blob.put(body).array();
  }

  private static Geometry multi(Geometry geometry) {
    if (geometry instanceof Polygon polygon) {
      return geometry.getFactory().createMultiPolygon(new Polygon[] {polygon});
    }
    if (geometry instanceof LineString line) {
      return geometry.getFactory().createMultiLineString(new LineString[] {line});
    }
    return geometry;
  }
}
