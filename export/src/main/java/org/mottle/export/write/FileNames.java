package org.mottle.export.write;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.mottle.export.record.Fingerprint;

/**
 * Names of the rasters of a delivery, from ids that people typed: {@code <green>_<survey>_<kind>}.
 * Only ASCII letters, digits, '-' and '_' are left, so that no id can leave the folder, hide a file
 * or be a device of some system. An id that had to be changed carries eight digits of its SHA-256;
 * names that would still be the same, in capitals or not, carry those of all their ids. The same
 * rasters get the same names on every machine.
 */
public final class FileNames {
  private static final int LONGEST = 48;
  private static final int HASH_DIGITS = 8;
  private static final String NONE = "none";

  private FileNames() {}

  /** Names without extension, in the order of the rasters, none twice. */
  static List<String> of(List<NamedRaster> rasters) {
    List<String> names = new ArrayList<>();
    Set<String> taken = new HashSet<>();
    Set<List<String>> ids = new HashSet<>();
    for (NamedRaster raster : rasters) {
      if (!ids.add(List.of(raster.greenId(), raster.surveyId(), raster.kind().code()))) {
        throw new IllegalArgumentException(
            "two "
                + raster.kind().code()
                + " rasters of green '"
                + raster.greenId()
                + "' and survey '"
                + raster.surveyId()
                + "'");
      }
      String stem = safe(raster.greenId()) + "_" + safe(raster.surveyId());
      String end = "_" + raster.kind().code();
      if (!taken.add((stem + end).toLowerCase(Locale.ROOT))) {
        stem += "-" + Fingerprint.ofText(raster.greenId() + '\0' + raster.surveyId(), HASH_DIGITS);
        taken.add((stem + end).toLowerCase(Locale.ROOT));
      }
      names.add(stem + end);
    }
    return names;
  }

  /** Names without extension for ids that differ, in their order, none twice. */
  public static List<String> ofIds(List<String> ids) {
    List<String> names = new ArrayList<>();
    Set<String> taken = new HashSet<>();
    for (String id : ids) {
      String name = safe(id);
      if (!taken.add(name.toLowerCase(Locale.ROOT))) {
        name += "-" + Fingerprint.ofText(id, HASH_DIGITS);
        taken.add(name.toLowerCase(Locale.ROOT));
      }
      names.add(name);
    }
    return names;
  }

  /** One id as a name: unchanged where it can be one. */
  static String safe(String id) {
    if (id.isEmpty()) {
      return NONE;
    }
    String plain =
        Normalizer.normalize(id, Normalizer.Form.NFKD)
            .replaceAll("\\p{M}", "")
            .replaceAll("[^A-Za-z0-9_-]+", "-");
    if (plain.equals(id) && id.length() <= LONGEST) {
      return id;
    }
    String kept = plain.substring(0, Math.min(LONGEST, plain.length()));
    return kept + "-" + Fingerprint.ofText(id, HASH_DIGITS);
  }
}
