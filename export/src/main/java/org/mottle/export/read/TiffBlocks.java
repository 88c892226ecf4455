package org.mottle.export.read;

import java.io.IOException;
import java.nio.ByteOrder;
import java.nio.file.Path;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;

/**
 * Where the blocks of a TIFF's first image lie, from its directory (TIFF 6.0; with the offsets of 8
 * bytes of BigTIFF). The image library keeps them to itself, and fills up what is cut off or left
 * out without a word.
 *
 * @param bigEndian byte order
 * @param count strips or tiles
 * @param empty those of no bytes, which are left out
 * @param end where the last one ends, bytes
 */
record TiffBlocks(boolean bigEndian, int count, int empty, long end) {
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int LONG_8 = 16;
  private static final int IFD_8 = 18;

  static TiffBlocks of(Path path) throws IOException {
    try (FileImageInputStream in = new FileImageInputStream(path.toFile())) {
      boolean bigEndian = in.readUnsignedByte() == 'M';
      in.setByteOrder(bigEndian ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
      in.seek(2);
      boolean large = in.readUnsignedShort() == 43;
      in.seek(large ? 8 : 4);
      in.seek(large ? in.readLong() : in.readUnsignedInt());
      long tags = large ? in.readLong() : in.readUnsignedShort();
      long first = in.getStreamPosition();
      long[] offsets = {};
      long[] bytes = {};
      for (long i = 0; i < tags; i++) {
        in.seek(first + i * (large ? 20 : 12));
        int tag = in.readUnsignedShort();
        if (tag == GeoKeys.STRIP_OFFSETS || tag == GeoKeys.TILE_OFFSETS) {
          offsets = values(in, large);
        } else if (tag == GeoKeys.STRIP_BYTES || tag == GeoKeys.TILE_BYTES) {
          bytes = values(in, large);
        }
      }
      return of(bigEndian, offsets, bytes);
    }
  }

  private static TiffBlocks of(boolean bigEndian, long[] offsets, long[] bytes) throws IOException {
    if (offsets.length == 0 || offsets.length != bytes.length) {
      throw new IOException(
          "its directory names %d blocks and the sizes of %d"
              .formatted(offsets.length, bytes.length));
    }
    int empty = 0;
    long end = 0;
    for (int i = 0; i < bytes.length; i++) {
      empty += bytes[i] == 0 ? 1 : 0;
      end = Math.max(end, offsets[i] + bytes[i]);
    }
    return new TiffBlocks(bigEndian, bytes.length, empty, end);
  }

  private static long[] values(ImageInputStream in, boolean large) throws IOException {
    int type = in.readUnsignedShort();
    long count = large ? in.readLong() : in.readUnsignedInt();
    int width = type == SHORT ? 2 : type == LONG_8 || type == IFD_8 ? 8 : 4;
    if (type != SHORT && width == 4 && type != LONG || count < 0 || count * width > in.length()) {
      throw new IOException("its directory is damaged");
    }
    if (count * width > (large ? 8 : 4)) {
      in.seek(large ? in.readLong() : in.readUnsignedInt());
    }
    long[] values = new long[(int) count];
    for (int i = 0; i < values.length; i++) {
      values[i] =
          width == 2 ? in.readUnsignedShort() : width == 4 ? in.readUnsignedInt() : in.readLong();
    }
    return values;
  }
}
