package org.mottle.export.read;

import it.geosolutions.imageio.plugins.tiff.TIFFField;
import it.geosolutions.imageio.plugins.tiff.TIFFTag;
import it.geosolutions.imageioimpl.plugins.tiff.TIFFIFD;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The tags and GeoKeys of a TIFF that say what and where its cells are (OGC 19-008r4). */
final class GeoKeys {
  static final int WIDTH = 256;
  static final int BITS = 258;
  static final int COMPRESSION = 259;
  static final int PHOTOMETRIC = 262;
  static final int STRIP_OFFSETS = 273;
  static final int SAMPLES = 277;
  static final int STRIP_BYTES = 279;
  static final int PREDICTOR = 317;
  static final int TILE_OFFSETS = 324;
  static final int TILE_BYTES = 325;
  static final int SAMPLE_FORMAT = 339;
  static final int PIXEL_SCALE = 33550;
  static final int TIE_POINTS = 33922;
  static final int TRANSFORMATION = 34264;

  static final int RASTER_TYPE = 1025;
  static final int GEOGRAPHIC = 2048;
  static final int PROJECTED = 3072;
  static final int PROJECTED_CITATION = 3073;
  static final int USER_DEFINED = 32767;

  private static final int DIRECTORY = 34735;
  private static final int TEXTS = 34737;
  private static final int GDAL_METADATA = 42112;
  private static final int GDAL_NO_DATA = 42113;
  private static final int CITATION = 1026;
  private static final int VERTICAL = 4096;
  private static final int VERTICAL_CITATION = 4097;
  private static final int VERTICAL_UNIT = 4099;

  /** NAVD88 heights in US survey feet and in feet; the codes are from memory. */
  private static final int NAVD_88_US_FOOT = 6360;

  private static final int NAVD_88_FOOT = 8228;

  private final TIFFIFD tags;

  GeoKeys(TIFFIFD tags) {
    this.tags = tags;
  }

  /** The numbers of a tag; none where it is missing. */
  double[] numbers(int tag) {
    TIFFField field = tags.getTIFFField(tag);
    if (field == null || field.getType() == TIFFTag.TIFF_ASCII) {
      return new double[0];
    }
    double[] values = new double[field.getCount()];
    for (int i = 0; i < values.length; i++) {
      values[i] = field.getAsDouble(i);
    }
    return values;
  }

  int number(int tag, int fallback) {
    double[] values = numbers(tag);
    return values.length == 0 ? fallback : (int) values[0];
  }

  private String text(int tag) {
    TIFFField field = tags.getTIFFField(tag);
    if (field == null || field.getType() != TIFFTag.TIFF_ASCII) {
      return "";
    }
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < field.getCount(); i++) {
      text.append(field.getAsString(i));
    }
    return text.toString().replace("\0", "").strip();
  }

  /** A key that holds a code. */
  OptionalInt code(int key) {
    double[] entry = entry(key);
    return entry.length == 4 && entry[1] == 0
        ? OptionalInt.of((int) entry[3])
        : OptionalInt.empty();
  }

  /** A key that holds a text; empty where it is missing. */
  String citation(int key) {
    double[] entry = entry(key);
    if (entry.length < 4 || entry[1] != TEXTS) {
      return "";
    }
    String texts = text(TEXTS);
    int from = (int) Math.min(texts.length(), entry[3]);
    int end = (int) Math.min(texts.length(), entry[3] + entry[2]);
    return texts.substring(from, end).replace('|', ' ').strip();
  }

  private double[] entry(int key) {
    double[] directory = numbers(DIRECTORY);
    for (int i = 4; i + 3 < directory.length; i += 4) {
      if (directory[i] == key) {
        return Arrays.copyOfRange(directory, i, i + 4);
      }
    }
    return new double[0];
  }

  boolean isEmpty() {
    return numbers(DIRECTORY).length == 0;
  }

  /** What stands for no value; empty when nothing is declared. */
  Optional<Double> noData() {
    String text = text(GDAL_NO_DATA);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (text.toLowerCase(java.util.Locale.ROOT).contains("nan")) {
      return Optional.of(Double.NaN);
    }
    try {
      return Optional.of(Double.parseDouble(text));
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }

  /** An item of GDAL's metadata with a role, like "unittype" or "scale", of the first band. */
  Optional<String> role(String role) {
    Matcher item =
        Pattern.compile("(?s)<Item[^>]*role=\"" + role + "\"[^>]*>([^<]*)</Item>")
            .matcher(text(GDAL_METADATA));
    return item.find() ? Optional.of(item.group(1).strip()) : Optional.empty();
  }

  HeightFacts heights() {
    OptionalInt system = code(VERTICAL);
    List<String> datum = new ArrayList<>();
    if (!citation(VERTICAL_CITATION).isEmpty()) {
      datum.add(citation(VERTICAL_CITATION));
    }
    if (system.isPresent() && system.getAsInt() > 0 && system.getAsInt() < USER_DEFINED) {
      datum.add("EPSG:" + system.getAsInt());
    }
    Optional<ElevationUnit> unit =
        code(VERTICAL_UNIT).stream()
            .boxed()
            .findFirst()
            .flatMap(ElevationUnit::ofEpsg)
            .or(() -> unitOf(system))
            .or(() -> role("unittype").flatMap(ElevationUnit::named));
    return new HeightFacts(String.join(", ", datum), unit);
  }

  private static Optional<ElevationUnit> unitOf(OptionalInt system) {
    return switch (system.orElse(0)) {
      case NAVD_88_US_FOOT -> Optional.of(ElevationUnit.US_FOOT);
      case NAVD_88_FOOT -> Optional.of(ElevationUnit.FOOT);
      default -> Optional.empty();
    };
  }

  /** How the file names its system, for messages. */
  String systemName() {
    String projected = citation(PROJECTED_CITATION);
    return projected.isEmpty() ? citation(CITATION) : projected;
  }
}
