package org.mottle.export.verify;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;

/**
 * Reads a GeoTIFF of one uncompressed strip, as delivered. Anything else is told as changed.
 *
 * @param columns width
 * @param rows height
 * @param west x of the western edge
 * @param north y of the northern edge
 * @param cell side of a cell
 * @param epsg code of the projected CRS
 * @param cells cells that hold something else than the declared no-data value
 */
record GeoTiffReread(
    int columns, int rows, double west, double north, double cell, int epsg, long cells) {
  private static final int PROJECTED_CRS = 3072;
  private static final int GEODETIC_CRS = 2048;

  static GeoTiffReread of(Path file) throws IOException {
    ByteBuffer tiff = ByteBuffer.wrap(Files.readAllBytes(file)).order(ByteOrder.LITTLE_ENDIAN);
    try {
      if (tiff.getInt(0) != 0x002A4949) {
        throw new IOException("is no little-endian TIFF");
      }
      Map<Integer, Integer> entries = entries(tiff);
      int columns = number(tiff, entries, 256);
      int rows = number(tiff, entries, 257);
      int bits = number(tiff, entries, 258);
      if (number(tiff, entries, 259) != 1 || count(tiff, entries, 273) != 1) {
        throw new IOException("is not one uncompressed strip");
      }
      int scale = tiff.getInt(at(entries, 33550) + 8);
      int tie = tiff.getInt(at(entries, 33922) + 8);
      return new GeoTiffReread(
          columns,
          rows,
          tiff.getDouble(tie + 24),
          tiff.getDouble(tie + 32),
          tiff.getDouble(scale),
          epsg(tiff, entries),
          cells(tiff, entries, (long) columns * rows, bits));
    } catch (IndexOutOfBoundsException | NumberFormatException e) {
      throw new IOException("ends before its own directory says", e);
    }
  }

  private static Map<Integer, Integer> entries(ByteBuffer tiff) {
    int directory = tiff.getInt(4);
    Map<Integer, Integer> entries = new HashMap<>();
    for (int i = 0; i < tiff.getShort(directory); i++) {
      int at = directory + 2 + 12 * i;
      entries.put(tiff.getShort(at) & 0xFFFF, at);
    }
    return entries;
  }

  private static int at(Map<Integer, Integer> entries, int tag) throws IOException {
    Integer at = entries.get(tag);
    if (at == null) {
      throw new IOException("has no tag " + tag);
    }
    return at;
  }

  private static int number(ByteBuffer tiff, Map<Integer, Integer> entries, int tag)
      throws IOException {
    int at = at(entries, tag);
    return tiff.getShort(at + 2) == 3 ? tiff.getShort(at + 8) & 0xFFFF : tiff.getInt(at + 8);
  }

  private static int count(ByteBuffer tiff, Map<Integer, Integer> entries, int tag)
      throws IOException {
    return tiff.getInt(at(entries, tag) + 4);
  }

  private static int epsg(ByteBuffer tiff, Map<Integer, Integer> entries) throws IOException {
    int keys = tiff.getInt(at(entries, 34735) + 8);
    int found = 0;
    for (int k = 1; k <= tiff.getShort(keys + 6); k++) {
      int key = tiff.getShort(keys + 8 * k) & 0xFFFF;
      if (key == PROJECTED_CRS || key == GEODETIC_CRS && found == 0) {
        found = tiff.getShort(keys + 8 * k + 6) & 0xFFFF;
      }
    }
    return found;
  }

  private static long cells(ByteBuffer tiff, Map<Integer, Integer> entries, long size, int bits)
      throws IOException {
    int length = count(tiff, entries, 42113);
    int at = at(entries, 42113) + 8;
    byte[] text = new byte[length - 1];
    tiff.get(length > 4 ? tiff.getInt(at) : at, text);
    float noData = Float.parseFloat(new String(text, StandardCharsets.US_ASCII));
    int first = number(tiff, entries, 273);
    long cells = 0;
    for (int i = 0; i < size; i++) {
      float value = bits == 8 ? tiff.get(first + i) & 0xFF : tiff.getFloat(first + 4 * i);
      cells += value == noData ? 0 : 1;
    }
    return cells;
  }
}
