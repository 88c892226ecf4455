package org.mottle.export.read;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/** A GeoTIFF of one strip of doubles, byte by byte, so that each tag can be wrong. */
final class TinyTiff {
  private final Map<Integer, Object> tags = new TreeMap<>();
  private final double[] cells;

  /** Cells of 0.5 m, pixel is area, EPSG:32628; the corner is the north-western. */
  TinyTiff(int columns, double west, double north, double... cells) {
    this.cells = cells;
    with(256, new int[] {columns});
    with(257, new int[] {cells.length / columns});
    with(258, new int[] {64});
    with(259, new int[] {1});
    with(262, new int[] {1});
    with(273, new long[] {8});
    with(277, new int[] {1});
    with(278, new int[] {cells.length / columns});
    with(279, new long[] {8L * cells.length});
    with(339, new int[] {3});
    with(33550, new double[] {0.5, 0.5, 0});
    with(33922, new double[] {0, 0, 0, west, north, 0});
    keys(1024, 1, 1025, 1, 3072, 32628);
  }

  /** Codes by key. */
  TinyTiff keys(int... keysAndCodes) {
    int[] directory = new int[4 + keysAndCodes.length * 2];
    directory[0] = 1;
    directory[1] = 1;
    directory[3] = keysAndCodes.length / 2;
    for (int i = 0; i < keysAndCodes.length; i += 2) {
      directory[4 + 2 * i] = keysAndCodes[i];
      directory[6 + 2 * i] = 1;
      directory[7 + 2 * i] = keysAndCodes[i + 1];
    }
    return with(34735, directory);
  }

  /** Shorts as int[], longs, doubles or text; null takes the tag away. */
  TinyTiff with(int tag, Object value) {
    if (value == null) {
      tags.remove(tag);
    } else {
      tags.put(tag, value);
    }
    return this;
  }

  byte[] bytes() {
    ByteBuffer out = ByteBuffer.allocate(1 << 16).order(ByteOrder.LITTLE_ENDIAN);
    int directory = 8 + 8 * cells.length;
    out.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(directory);
    for (double cell : cells) {
      out.putDouble(cell);
    }
    int far = directory + 2 + 12 * tags.size() + 4;
    out.putShort((short) tags.size());
    for (Map.Entry<Integer, Object> tag : tags.entrySet()) {
      ByteBuffer value = value(tag.getValue());
      int size = value.limit();
      out.putShort(tag.getKey().shortValue());
      out.putShort((short) type(tag.getValue()));
      out.putInt(size / width(tag.getValue()));
      if (size <= 4) {
        out.put(value);
        out.position(out.position() + 4 - size);
      } else {
        out.putInt(far);
        int back = out.position();
        out.position(far);
        out.put(value);
        far = out.position();
        out.position(back);
      }
    }
    out.putInt(0);
    out.limit(far);
    byte[] bytes = new byte[far];
    out.position(0);
    out.get(bytes);
    return bytes;
  }

  private static int type(Object value) {
    return value instanceof int[]
        ? 3
        : value instanceof long[] ? 4 : value instanceof String ? 2 : 12;
  }

  private static int width(Object value) {
    return value instanceof int[]
        ? 2
        : value instanceof long[] ? 4 : value instanceof String ? 1 : 8;
  }

  private static ByteBuffer value(Object value) {
    ByteBuffer bytes = ByteBuffer.allocate(4096).order(ByteOrder.LITTLE_ENDIAN);
    if (value instanceof int[] shorts) {
      for (int s : shorts) {
        bytes.putShort((short) s);
      }
    } else if (value instanceof long[] longs) {
      for (long l : longs) {
        bytes.putInt((int) l);
      }
    } else if (value instanceof double[] doubles) {
      for (double d : doubles) {
        bytes.putDouble(d);
      }
    } else {
      bytes.put((value + "\0").getBytes(StandardCharsets.ISO_8859_1));
    }
    return bytes.flip();
  }
}
