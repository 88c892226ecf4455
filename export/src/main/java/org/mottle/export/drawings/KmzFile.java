package org.mottle.export.drawings;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A KMZ: {@code doc.kml} first, pictures beside it. Nothing is compressed (pictures are already),
 * and entries have one fixed date, so that the bytes depend on the content alone.
 */
final class KmzFile {
  private static final LocalDateTime DATE = LocalDateTime.of(1980, 1, 1, 0, 0);

  private KmzFile() {}

  static void write(Path file, String kml, Map<String, byte[]> pictures) throws IOException {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    entries.put("doc.kml", kml.getBytes(StandardCharsets.UTF_8));
    entries.putAll(pictures);
    try (OutputStream out = Files.newOutputStream(file);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> e : entries.entrySet()) {
        CRC32 crc = new CRC32();
        crc.update(e.getValue());
        ZipEntry entry = new ZipEntry(e.getKey());
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(e.getValue().length);
        entry.setCrc(crc.getValue());
        entry.setTimeLocal(DATE);
        zip.putNextEntry(entry);
        zip.write(e.getValue());
        zip.closeEntry();
      }
    }
  }
}
