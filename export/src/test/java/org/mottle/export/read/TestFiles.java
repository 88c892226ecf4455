package org.mottle.export.read;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Files of the test resources and files written on the spot. */
final class TestFiles {
  private TestFiles() {}

  static Path resource(String name) {
    try {
      return Path.of(TestFiles.class.getResource("/" + name).toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(name, e);
    }
  }

  static String path(String name) {
    return resource(name).toString();
  }

  static String write(Path folder, String name, String text) {
    return write(folder, name, text.getBytes(StandardCharsets.UTF_8));
  }

  static String write(Path folder, String name, String text, Charset charset) {
    return write(folder, name, text.getBytes(charset));
  }

  static String write(Path folder, String name, byte[] bytes) {
    try {
      return Files.write(folder.resolve(name), bytes).toString();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A FeatureCollection of polygons with a green_id each. */
  static String greens(String... idsAndRings) {
    StringBuilder text = new StringBuilder("{\"type\":\"FeatureCollection\",\"features\":[");
    for (int i = 0; i < idsAndRings.length; i += 2) {
      text.append(i == 0 ? "" : ",")
          .append("{\"type\":\"Feature\",\"properties\":{\"green_id\":")
          .append(idsAndRings[i])
          .append("},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[")
          .append(idsAndRings[i + 1])
          .append("]}}");
    }
    return text.append("]}").toString();
  }

  static String square(double x, double y, double side) {
    return "[[%s,%s],[%s,%s],[%s,%s],[%s,%s],[%s,%s]]"
        .formatted(x, y, x + side, y, x + side, y + side, x, y + side, x, y);
  }

  static String inUtm28(String featureCollection) {
    return featureCollection.replaceFirst(
        "\\{",
        "{\"crs\":{\"type\":\"name\",\"properties\":{\"name\":\"urn:ogc:def:crs:EPSG::32628\"}},");
  }
}
