package org.mottle.export.read;

import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageMetadata;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.locationtech.jts.geom.Envelope;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/**
 * Aerial images to lie beneath the map of a page: GeoTIFF, or PNG and JPEG with a world file, of
 * eight bits a band. North up, in the working CRS; a world file that comes without a .prj is taken
 * to be, and that is told. What is not mapped is cut off but for {@value #AROUND_M} m, and the rest
 * made coarser until its longest side has {@value #LONGEST} pixels, fewer where there are several
 * images. Nothing is resampled into another system: such an image is refused.
 */
public final class AerialImageReader {
  private static final double AROUND_M = 30;
  private static final int LONGEST = 2400;
  private static final float QUALITY = 0.82f;

  /** x = a + b column, y = d + f row, of the outer corner. */
  private record Place(double west, double north, double wide, double high, Optional<Crs> crs) {}

  private final Path path;
  private final String name;
  private final InputOptions options;
  private final List<String> notes = new ArrayList<>();

  private AerialImageReader(Path path, InputOptions options) {
    this.path = path;
    this.name = path.getFileName().toString();
    this.options = options;
  }

  /**
   * @param file GeoTIFF, PNG or JPEG
   * @param working CRS of the maps
   * @param ground all that is mapped, m
   * @param images how many there are on the page
   * @throws InputRefused when it does not say where it lies, is in another CRS, lies elsewhere or
   *     is no picture
   */
  public static AerialImage read(
      String file, InputOptions options, Crs working, Envelope ground, int images)
      throws IOException {
    Path path = Path.of(file);
    if (!Files.isRegularFile(path)) {
      throw new InputRefused("--imagery: there is no file %s".formatted(file));
    }
    return new AerialImageReader(path, options).read(working, ground, images);
  }

  private AerialImage read(Crs working, Envelope ground, int images) throws IOException {
    ImageReader reader = reader();
    try (FileImageInputStream stream = new FileImageInputStream(path.toFile())) {
      reader.setInput(stream);
      int columns = reader.getWidth(0);
      int rows = reader.getHeight(0);
      Place place = place(reader);
      check(place, working);
      Rectangle part = part(place, columns, rows, ground);
      int longest = (int) (LONGEST / Math.sqrt(images));
      BufferedImage image = cut(reader, part, longest);
      Envelope extent =
          new Envelope(
              place.west + part.x * place.wide,
              place.west + (part.x + part.width) * place.wide,
              place.north - (part.y + part.height) * place.high,
              place.north - part.y * place.high);
      notes.add(
          String.format(
              Locale.ROOT,
              "%s lies beneath the map of the report, %d x %d pixels of %.2f m",
              name,
              image.getWidth(),
              image.getHeight(),
              extent.getWidth() / image.getWidth()));
      return new AerialImage(
          name,
          "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg(image)),
          extent,
          String.join("; ", notes));
    } catch (InputRefused e) {
      throw e;
    } catch (RuntimeException | IOException e) {
      throw new InputRefused(
          "%s cannot be read as a picture (%s); gdal_translate -ot Byte -co COMPRESS=DEFLATE -b 1 -b"
                  .formatted(name, e.getClass().getSimpleName())
              + " 2 -b 3 makes one that can");
    } finally {
      reader.dispose();
    }
  }

  private boolean tiff() {
    String ending = name.toLowerCase(Locale.ROOT);
    return ending.endsWith(".tif") || ending.endsWith(".tiff");
  }

  private ImageReader reader() throws IOException {
    if (tiff()) {
      return new TIFFImageReaderSpi().createReaderInstance();
    }
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    Iterator<ImageReader> readers =
        List.of("png", "jpg", "jpeg").contains(ending)
            ? ImageIO.getImageReadersBySuffix(ending)
            : List.<ImageReader>of().iterator();
    if (!readers.hasNext()) {
      throw new InputRefused(
          "--imagery: %s is none of GeoTIFF, PNG and JPEG; convert it with gdal_translate"
              .formatted(name));
    }
    return readers.next();
  }

  private Place place(ImageReader reader) throws IOException {
    if (tiff()) {
      TIFFImageMetadata metadata = (TIFFImageMetadata) reader.getImageMetadata(0);
      GeoKeys keys = new GeoKeys(metadata.getRootIFD());
      int bands = keys.number(GeoKeys.SAMPLES, 1);
      int bits = keys.number(GeoKeys.BITS, 1);
      if (bits != 8 || bands == 2 || bands > 4) {
        throw new InputRefused(
            "%s has %d bands of %d bits; a picture of red, green and blue of 8 bits is wanted:"
                    .formatted(name, bands, bits)
                + " gdal_translate -ot Byte -scale -b 1 -b 2 -b 3");
      }
      double[] m = GeoTiffFile.matrix(keys);
      if (m.length > 0) {
        double half = keys.code(GeoKeys.RASTER_TYPE).orElse(1) == 2 ? 0.5 : 0;
        Optional<Crs> crs = GeoTiffFile.own(name, keys, metadata, options, notes);
        return straight(
            new double[] {m[0] - half * m[1], m[1], m[2], m[3] - half * m[5], m[4], m[5]}, crs);
      }
    }
    return straight(worldFile(), PrjFile.crs(path, options, notes));
  }

  /** As {@link GeoTiffFile#matrix}, of the outer corner; a world file names a pixel's centre. */
  private double[] worldFile() throws IOException {
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    String shortened = "" + ending.charAt(0) + ending.charAt(ending.length() - 1) + "w";
    for (String world : List.of(shortened, ending + "w", "wld")) {
      Optional<Path> file = PrjFile.sibling(path, world);
      if (file.isPresent()) {
        return worldFile(file.get());
      }
    }
    throw new InputRefused(
        "%s does not say where it lies: no world file %s beside it; give it one, or a GeoTIFF made"
                .formatted(name, "." + shortened)
            + " with gdal_translate -a_srs -a_ullr");
  }

  private static double[] worldFile(Path file) throws IOException {
    String[] words = Files.readString(file, StandardCharsets.ISO_8859_1).strip().split("\\s+");
    double[] w = new double[6];
    try {
      for (int i = 0; i < 6; i++) {
        w[i] = Double.parseDouble(words[i]);
      }
    } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
      throw new InputRefused(
          "%s is no world file: it needs six numbers, a line each, and has %d lines"
              .formatted(file.getFileName(), words.length));
    }
    return new double[] {
      w[4] - (w[0] + w[2]) / 2, w[0], w[2], w[5] - (w[1] + w[3]) / 2, w[1], w[3]
    };
  }

  private Place straight(double[] m, Optional<Crs> crs) {
    boolean turned =
        Math.abs(m[2]) > 1e-6 * Math.abs(m[1]) || Math.abs(m[4]) > 1e-6 * Math.abs(m[1]);
    if (turned || !(m[1] > 0) || !(m[5] < 0)) {
      throw new InputRefused(
          "%s is not north up (matrix terms %s, %s, %s, %s); straighten it with gdalwarp"
              .formatted(name, m[1], m[2], m[4], m[5]));
    }
    return new Place(m[0], m[3], m[1], -m[5], crs);
  }

  private void check(Place place, Crs working) {
    if (place.crs.isEmpty()) {
      notes.add("%s names no CRS; it is taken to be in %s".formatted(name, working));
    } else if (!place.crs.get().equals(working)) {
      throw new InputRefused(
          "%s is in %s, the maps are in %s; bring it there with gdalwarp -t_srs %s"
              .formatted(name, place.crs.get(), working, working.code()));
    }
  }

  private Rectangle part(Place place, int columns, int rows, Envelope ground) {
    Envelope wanted = new Envelope(ground);
    wanted.expandBy(AROUND_M);
    int left = (int) Math.max(0, Math.floor((wanted.getMinX() - place.west) / place.wide));
    int right = (int) Math.min(columns, Math.ceil((wanted.getMaxX() - place.west) / place.wide));
    int top = (int) Math.max(0, Math.floor((place.north - wanted.getMaxY()) / place.high));
    int bottom = (int) Math.min(rows, Math.ceil((place.north - wanted.getMinY()) / place.high));
    if (right <= left || bottom <= top) {
      throw new InputRefused(
          String.format(
              Locale.ROOT,
              "%s shows none of the greens: it lies about E %.0f N %.0f, they about E %.0f N %.0f;"
                  + " check its CRS and world file",
              name,
              place.west + columns * place.wide / 2,
              place.north - rows * place.high / 2,
              ground.centre().x,
              ground.centre().y));
    }
    return new Rectangle(left, top, right - left, bottom - top);
  }

  private static BufferedImage cut(ImageReader reader, Rectangle part, int longest)
      throws IOException {
    double shrink = Math.max(1, Math.max(part.width, part.height) / (double) longest);
    int skip = Math.max(1, (int) (shrink / 2));
    ImageReadParam param = reader.getDefaultReadParam();
    param.setSourceRegion(part);
    param.setSourceSubsampling(skip, skip, 0, 0);
    BufferedImage read = reader.read(0, param);
    int wide = Math.max(1, (int) Math.round(part.width / shrink));
    int high = Math.max(1, (int) Math.round(part.height / shrink));
    BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, wide, high);
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.drawImage(read, 0, 0, wide, high, null);
    g.dispose();
    return image;
  }

  private static byte[] jpeg(BufferedImage image) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(QUALITY);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), param);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
