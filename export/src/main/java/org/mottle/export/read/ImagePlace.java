package org.mottle.export.read;

import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageMetadata;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFImageReaderSpi;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import org.locationtech.jts.geom.Envelope;
import org.mottle.export.crs.Crs;
import org.mottle.export.problem.InputRefused;

/**
 * Where an image lies and in which CRS; its pixels are not read. GeoTIFF by its tags; PNG and JPEG
 * (and TIFF without tags) by a world file and a {@code .prj} beside it.
 *
 * @param name of the file
 * @param crs its own or the given
 * @param box outer edges in its CRS
 * @param notes what was decided on the way
 */
public record ImagePlace(String name, Crs crs, Envelope box, List<String> notes) {
  private static final List<String> WORLD_FILES =
      List.of("pgw", "pngw", "jgw", "jpgw", "tfw", "tifw", "wld");

  public ImagePlace {
    box = new Envelope(box);
    notes = List.copyOf(notes);
  }

  /**
   * @throws InputRefused for an image that does not say where it lies, or in which CRS
   */
  public static ImagePlace of(String file, InputOptions options) {
    Path path = FeatureFile.existing(file);
    String name = path.getFileName().toString();
    try {
      return of(path, name, options);
    } catch (IOException | RuntimeException e) {
      if (e instanceof InputRefused refused) {
        throw refused;
      }
      throw new InputRefused("%s cannot be read as an image: %s".formatted(name, e.getMessage()));
    }
  }

  private static ImagePlace of(Path path, String name, InputOptions options) throws IOException {
    List<String> notes = new ArrayList<>();
    String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    int[] size;
    double[] matrix = {};
    Optional<Crs> crs = Optional.empty();
    if (ending.equals("tif") || ending.equals("tiff")) {
      ImageReader reader = new TIFFImageReaderSpi().createReaderInstance();
      try (FileImageInputStream stream = new FileImageInputStream(path.toFile())) {
        reader.setInput(stream);
        size = new int[] {reader.getWidth(0), reader.getHeight(0)};
        TIFFImageMetadata tags = (TIFFImageMetadata) reader.getImageMetadata(0);
        GeoKeys keys = new GeoKeys(tags.getRootIFD());
        matrix = GeoTiffFile.matrix(keys);
        crs = GeoTiffFile.own(name, keys, tags, options, notes);
      } finally {
        reader.dispose();
      }
    } else if (List.of("png", "jpg", "jpeg").contains(ending)) {
      size = size(path, name);
    } else {
      throw new InputRefused(
          name + ": an image is a GeoTIFF, or a PNG or JPEG with a world file and a .prj");
    }
    if (matrix.length == 0) {
      matrix = worldFile(path, name);
    }
    if (crs.isEmpty()) {
      crs = PrjFile.crs(path, options, notes);
    } else {
      crs = GivenCrs.choose(name, crs, options, notes);
    }
    Crs found =
        crs.orElseThrow(() -> GivenCrs.missing(name, "says where it lies but not in which CRS"));
    return new ImagePlace(name, found, box(matrix, size), notes);
  }

  private static int[] size(Path path, String name) throws IOException {
    try (ImageInputStream stream = ImageIO.createImageInputStream(path.toFile())) {
      var readers = ImageIO.getImageReaders(stream);
      if (!readers.hasNext()) {
        throw new InputRefused(name + " is not an image that can be read here");
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(stream);
        return new int[] {reader.getWidth(0), reader.getHeight(0)};
      } finally {
        reader.dispose();
      }
    }
  }

  /** Lines A, D, B, E, C, F; C and F are the middle of the first pixel. */
  private static double[] worldFile(Path path, String name) throws IOException {
    for (String ending : WORLD_FILES) {
      Optional<Path> world = PrjFile.sibling(path, ending);
      if (world.isPresent()) {
        String file = world.get().getFileName().toString();
        String[] lines = Files.readString(world.get()).strip().split("\\s+");
        double[] m = new double[6];
        try {
          for (int i = 0; i < 6; i++) {
            m[i] = Double.parseDouble(lines[i]);
          }
        } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
          throw new InputRefused(file + " is not a world file: six numbers are wanted");
        }
        return new double[] {
          m[4] - (m[0] + m[2]) / 2, m[0], m[2], m[5] - (m[1] + m[3]) / 2, m[1], m[3]
        };
      }
    }
    throw new InputRefused(
        name
            + " does not say where it lies: it has no georeference inside and no world file beside"
            + " it; georeference it in a GIS first");
  }

  private static Envelope box(double[] m, int[] size) {
    Envelope box = new Envelope();
    for (int i = 0; i < 4; i++) {
      double column = i % 2 * size[0];
      double row = i / 2 * size[1];
      box.expandToInclude(m[0] + m[1] * column + m[2] * row, m[3] + m[4] * column + m[5] * row);
    }
    return box;
  }
}
