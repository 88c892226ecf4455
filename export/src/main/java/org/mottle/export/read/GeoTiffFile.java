package org.mottle.export.read;

import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageMetadata;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.awt.Rectangle;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.GeoTiffCrs;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;

/**
 * A GeoTIFF of one band of numbers (OGC 19-008r4), in strips or tiles, by GeoTools' image library;
 * corner by tie point and scale or by matrix, pixel is area or point, no value by GDAL's tag or
 * NaN. Read in bands of rows: memory for one band of the columns wanted.
 */
final class GeoTiffFile implements CellFile {
  /** Rows of a band, if the file's own blocks are lower. */
  private static final int BAND = 256;

  private static final int PIXEL_IS_POINT = 2;
  private static final int FLOATS = 3;
  private static final List<Integer> READABLE = List.of(1, 5, 8, 32773, 32946);

  private final Path path;
  private final String name;
  private final CellFrame frame;
  private final Optional<Double> noData;
  private final boolean floats;
  private final double scale;
  private final double offset;
  private final Optional<Crs> crs;
  private final HeightFacts heights;
  private final List<String> notes;

  private GeoTiffFile(Path path, InputOptions options) throws IOException {
    this.path = path;
    this.name = path.getFileName().toString();
    Problems problems = new Problems();
    List<String> found = new ArrayList<>();
    TiffBlocks blocks = TiffBlocks.of(path);
    ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
    try (FileImageInputStream stream = new FileImageInputStream(path.toFile())) {
      reader.setInput(stream);
      TIFFImageMetadata metadata = (TIFFImageMetadata) reader.getImageMetadata(0);
      GeoKeys keys = new GeoKeys(metadata.getRootIFD());
      requireNumbers(keys, blocks, problems);
      requireWhole(blocks, problems);
      this.frame = frame(keys, reader.getWidth(0), reader.getHeight(0), problems);
      this.crs = crs(keys, metadata, options, found, problems);
      this.heights = keys.heights();
      this.noData = keys.noData();
      this.floats =
          keys.number(GeoKeys.SAMPLE_FORMAT, 1) == FLOATS && keys.number(GeoKeys.BITS, 0) == 32;
      this.scale = factor(keys, "scale", 1);
      this.offset = factor(keys, "offset", 0);
      boolean steps = keys.number(GeoKeys.SAMPLE_FORMAT, 1) != FLOATS && scale >= 0.1;
      if (steps) {
        found.add(
            "%s holds heights in steps of %s; too coarse for the slopes of a green"
                .formatted(name, Double.toString(scale)));
      }
    } catch (InputRefused e) {
      throw e;
    } catch (RuntimeException e) {
      throw new IOException(damaged(e), e);
    } finally {
      reader.dispose();
    }
    problems.throwIfAny();
    this.notes = List.copyOf(found);
  }

  /**
   * @throws InputRefused with every problem of its tags
   */
  static GeoTiffFile open(Path path, InputOptions options) throws IOException {
    return new GeoTiffFile(path, options);
  }

  static String notSquare(double x, double y) {
    return String.format(
        Locale.ROOT,
        "its cells are %s by %s, not square; resample it with gdalwarp -tr %s %s -r bilinear",
        x,
        y,
        Math.max(x, y),
        Math.max(x, y));
  }

  private static String damaged(RuntimeException e) {
    return "it is not a whole TIFF (" + e.getClass().getSimpleName() + ")";
  }

  private void requireNumbers(GeoKeys keys, TiffBlocks blocks, Problems problems) {
    int bands = keys.number(GeoKeys.SAMPLES, 1);
    int bits = keys.number(GeoKeys.BITS, 1);
    problems.require(
        bands == 1 && bits >= 16,
        "%s is a picture, not elevation: %d band(s) of %d bits; give one band of heights",
        name,
        bands,
        bits);
    int compression = keys.number(GeoKeys.COMPRESSION, 1);
    int predictor = keys.number(GeoKeys.PREDICTOR, 1);
    boolean readable = READABLE.contains(compression);
    problems.require(
        readable,
        "%s is compressed by scheme %d, which is not read here; gdal_translate -co COMPRESS=DEFLATE",
        name,
        compression);
    boolean floating = keys.number(GeoKeys.SAMPLE_FORMAT, 1) == FLOATS;
    // the library misreads the latter and does not say so
    boolean misread = floating && (predictor == 2 || predictor == 3 && blocks.bigEndian());
    problems.require(
        !readable || !(misread || predictor > 3),
        "%s uses predictor %d, which is not read here for its cells; gdal_translate -co"
            + " COMPRESS=DEFLATE -co PREDICTOR=1",
        name,
        predictor);
  }

  private void requireWhole(TiffBlocks blocks, Problems problems) throws IOException {
    long size = Files.size(path);
    problems.require(
        blocks.end() <= size,
        "%s is cut off: it has %d of %d bytes; copy it again",
        name,
        size,
        blocks.end());
    problems.require(
        blocks.empty() == 0,
        "%s leaves out %d of its %d blocks, which is not read here; gdal_translate -co"
            + " COMPRESS=DEFLATE fills them",
        name,
        blocks.empty(),
        blocks.count());
  }

  private CellFrame frame(GeoKeys keys, int columns, int rows, Problems problems) {
    double[] matrix = matrix(keys);
    if (matrix.length == 0) {
      problems.add(
          "%s does not say where it lies (no tie point with a scale, no matrix); give it its place"
              + " with gdal_translate -a_srs -a_ullr, or gdalwarp when it has control points",
          name);
      return new CellFrame(0, 0, 1, columns, rows);
    }
    double x = matrix[1];
    double y = -matrix[5];
    boolean turned =
        Math.abs(matrix[2]) > 1e-9 * Math.abs(x) || Math.abs(matrix[4]) > 1e-9 * Math.abs(x);
    problems.require(
        !turned,
        "%s is rotated (matrix terms %s and %s); straighten it with gdalwarp",
        name,
        matrix[2],
        matrix[4]);
    boolean northUp = x > 0 && y > 0;
    problems.require(
        turned || northUp,
        "%s does not run from west to east and north to south (cell %s by %s); turn it with"
            + " gdalwarp",
        name,
        x,
        y);
    problems.require(
        turned || !northUp || Math.abs(x - y) <= 1e-6 * x, "%s: %s", name, notSquare(x, y));
    double half = keys.code(GeoKeys.RASTER_TYPE).orElse(1) == PIXEL_IS_POINT ? 0.5 : 0;
    return new CellFrame(matrix[0] - half * x, matrix[3] + half * y, x, columns, rows);
  }

  /** x = m0 + m1 column + m2 row, y = m3 + m4 column + m5 row; empty when nothing says so. */
  static double[] matrix(GeoKeys keys) {
    double[] given = keys.numbers(GeoKeys.TRANSFORMATION);
    if (given.length >= 8) {
      return new double[] {given[3], given[0], given[1], given[7], given[4], given[5]};
    }
    double[] tie = keys.numbers(GeoKeys.TIE_POINTS);
    double[] size = keys.numbers(GeoKeys.PIXEL_SCALE);
    if (tie.length < 6 || size.length < 2) {
      return new double[0];
    }
    double west = tie[3] - tie[0] * size[0];
    double north = tie[4] + tie[1] * size[1];
    return new double[] {west, size[0], 0, north, 0, -size[1]};
  }

  private Optional<Crs> crs(
      GeoKeys keys,
      TIFFImageMetadata metadata,
      InputOptions options,
      List<String> found,
      Problems problems) {
    try {
      return GivenCrs.choose(name, own(name, keys, metadata, options, found), options, found);
    } catch (InputRefused e) {
      e.lines().forEach(line -> problems.add("%s: %s", name, line));
      return Optional.empty();
    }
  }

  /** The system a TIFF names; empty when it names none. */
  static Optional<Crs> own(
      String name,
      GeoKeys keys,
      TIFFImageMetadata metadata,
      InputOptions options,
      List<String> found) {
    OptionalInt projected = keys.code(GeoKeys.PROJECTED);
    OptionalInt code = projected.isPresent() ? projected : keys.code(GeoKeys.GEOGRAPHIC);
    if (keys.isEmpty() || code.isEmpty() && keys.systemName().isEmpty()) {
      return Optional.empty();
    }
    if (code.isPresent() && code.getAsInt() > 0 && code.getAsInt() < GeoKeys.USER_DEFINED) {
      return Optional.of(Crs.ofEpsg(code.getAsInt()));
    }
    try {
      return Optional.of(described(keys, metadata));
    } catch (InputRefused e) {
      if (options.crs().isEmpty()) {
        throw e;
      }
      found.add(
          "the CRS of %s is not understood (%s); --crs is used"
              .formatted(name, String.join(" ", e.lines())));
      return Optional.empty();
    }
  }

  private static Crs described(GeoKeys keys, TIFFImageMetadata metadata) {
    String text = keys.systemName();
    int from = text.indexOf("PROJCS[");
    return from >= 0 ? Crs.parse(text.substring(from)) : GeoTiffCrs.of(metadata, text);
  }

  private double factor(GeoKeys keys, String role, double fallback) {
    try {
      return keys.role(role).map(Double::parseDouble).orElse(fallback);
    } catch (NumberFormatException e) {
      return fallback;
    }
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public CellFrame frame() {
    return frame;
  }

  @Override
  public Optional<Crs> crs() {
    return crs;
  }

  @Override
  public HeightFacts heights() {
    return heights;
  }

  @Override
  public List<String> notes() {
    return notes;
  }

  @Override
  public void read(Part part, RowSink sink) throws IOException {
    ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
    try (FileImageInputStream stream = new FileImageInputStream(path.toFile())) {
      reader.setInput(stream);
      int block = reader.getTileHeight(0);
      int band = block * Math.max(1, BAND / block);
      double[] values = new double[part.columns()];
      int first = part.firstRow();
      while (first < part.endRow()) {
        int end = Math.min(part.endRow(), (first / band + 1) * band);
        ImageReadParam param = reader.getDefaultReadParam();
        param.setSourceRegion(
            new Rectangle(part.firstColumn(), first, part.columns(), end - first));
        Raster cells = reader.read(0, param).getRaster();
        for (int row = first; row < end; row++) {
          cells.getSamples(0, row - first, values.length, 1, 0, values);
          convert(values);
          sink.row(row, values);
        }
        first = end;
      }
    } catch (InputRefused e) {
      throw e;
    } catch (RuntimeException e) {
      throw new IOException(damaged(e), e);
    } finally {
      reader.dispose();
    }
  }

  private void convert(double[] values) {
    double none = noData.orElse(Double.NaN);
    for (int i = 0; i < values.length; i++) {
      // a text of 15 digits does not give the float back that was meant
      boolean isNone = floats ? (float) values[i] == (float) none : values[i] == none;
      values[i] = isNone ? Double.NaN : offset + scale * values[i];
    }
  }
}
