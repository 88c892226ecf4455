package org.mottle.export.write;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * One entry of a TIFF directory (TIFF 6.0, section 2).
 *
 * @param id tag
 * @param type 2 text, 3 unsigned 16 bits, 4 unsigned 32 bits, 12 double
 * @param count number of values
 * @param value little endian, padded to four bytes at least and to an even length
 */
record TiffTag(int id, int type, int count, byte[] value) {
  static final int IMAGE_WIDTH = 256;
  static final int IMAGE_LENGTH = 257;
  static final int BITS_PER_SAMPLE = 258;
  static final int COMPRESSION = 259;
  static final int PHOTOMETRIC = 262;
  static final int STRIP_OFFSETS = 273;
  static final int SAMPLES_PER_PIXEL = 277;
  static final int ROWS_PER_STRIP = 278;
  static final int STRIP_BYTE_COUNTS = 279;
  static final int SAMPLE_FORMAT = 339;
  static final int PIXEL_SCALE = 33550;
  static final int TIE_POINT = 33922;
  static final int GEO_KEYS = 34735;
  static final int GEO_TEXTS = 34737;
  static final int GDAL_METADATA = 42112;
  static final int GDAL_NODATA = 42113;

  private static final int HEADER = 8;
  private static final int ENTRY = 12;

  static TiffTag shorts(int id, int... values) {
    ByteBuffer buffer = buffer(2 * values.length);
    for (int value : values) {
      buffer.putShort((short) value);
    }
    return new TiffTag(id, 3, values.length, buffer.array());
  }

  static TiffTag longs(int id, int value) {
    return new TiffTag(id, 4, 1, buffer(4).putInt(value).array());
  }

  static TiffTag doubles(int id, double... values) {
    ByteBuffer buffer = buffer(8 * values.length);
    for (double value : values) {
      buffer.putDouble(value);
    }
    return new TiffTag(id, 12, values.length, buffer.array());
  }

  static TiffTag text(int id, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    // one more for the NUL that ends it
    return new TiffTag(id, 2, bytes.length + 1, buffer(bytes.length + 1).put(bytes).array());
  }

  private static ByteBuffer buffer(int bytes) {
    int padded = Math.max(4, bytes + bytes % 2);
    return ByteBuffer.allocate(padded).order(ByteOrder.LITTLE_ENDIAN);
  }

  private boolean fitsEntry() {
    return value.length == 4;
  }

  /** Bytes from the start of the file to the first cell, which follows the directory. */
  static int directoryBytes(List<TiffTag> tags) {
    int bytes = HEADER + 2 + ENTRY * tags.size() + 4;
    for (TiffTag tag : tags) {
      bytes += tag.fitsEntry() ? 0 : tag.value.length;
    }
    return bytes + bytes % 2;
  }

  /**
   * Header, directory and the values too long for it. The tags come in ascending order; the strip
   * offset is filled in here.
   */
  static byte[] directory(List<TiffTag> tags) {
    int end = directoryBytes(tags);
    ByteBuffer out = ByteBuffer.allocate(end).order(ByteOrder.LITTLE_ENDIAN);
    out.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(HEADER);
    out.putShort((short) tags.size());
    int spill = HEADER + 2 + ENTRY * tags.size() + 4;
    for (TiffTag tag : tags) {
      out.putShort((short) tag.id).putShort((short) tag.type).putInt(tag.count);
      if (tag.id == STRIP_OFFSETS) {
        out.putInt(end);
      } else if (tag.fitsEntry()) {
        out.put(tag.value);
      } else {
        out.putInt(spill);
        out.put(spill, tag.value);
        spill += tag.value.length;
      }
    }
    return out.array();
  }
}
