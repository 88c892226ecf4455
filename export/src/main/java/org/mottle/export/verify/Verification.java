package org.mottle.export.verify;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.mottle.export.record.Fingerprint;
import org.mottle.export.record.Json;

/**
 * What came of reading a delivered folder back against its {@code summary.json}.
 *
 * @param files files that were read
 * @param faults what is missing, has changed or disagrees, one line each; empty when all is well
 * @param notes what is no fault but worth telling: files beside the delivered ones
 */
public record Verification(int files, List<String> faults, List<String> notes) {
  /** What a delivered folder calls its record. */
  public static final String SUMMARY = "summary.json";

  public Verification {
    faults = List.copyOf(faults);
    notes = List.copyOf(notes);
  }

  public boolean isFine() {
    return faults.isEmpty();
  }

  /** Ends a delivery that does not read back as it was meant. */
  public void orThrow() {
    if (!isFine()) {
      throw new IllegalStateException(
          "what was written does not read back, nothing was delivered: "
              + String.join("; ", faults));
    }
  }

  /** The whole check: every file there and unchanged, and what they hold agrees. */
  public static Verification of(Path folder) throws IOException {
    Map<String, Map<?, ?>> recorded = files(folder);
    List<String> faults = new ArrayList<>();
    for (Map.Entry<String, Map<?, ?>> entry : recorded.entrySet()) {
      Path file = folder.resolve(entry.getKey());
      if (!Files.isRegularFile(file)) {
        faults.add(entry.getKey() + " is missing");
      } else {
        compare(entry.getKey(), entry.getValue(), Fingerprint.of(file), faults);
      }
    }
    Verification contents = contents(folder, 1);
    faults.addAll(contents.faults);
    return new Verification(recorded.size(), faults, beside(folder, recorded));
  }

  private static void compare(
      String path, Map<?, ?> recorded, Fingerprint found, List<String> faults) {
    if (!found.sha256().equals(recorded.get("sha256"))) {
      faults.add(
          path
              + " has changed since it was delivered: "
              + recorded.get("bytes")
              + " bytes then, "
              + found.bytes()
              + " now, SHA-256 "
              + recorded.get("sha256")
              + " then, "
              + found.sha256()
              + " now");
    }
  }

  private static List<String> beside(Path folder, Map<String, Map<?, ?>> recorded)
      throws IOException {
    List<String> notes = new ArrayList<>();
    try (Stream<Path> walk = Files.walk(folder)) {
      walk.filter(Files::isRegularFile)
          .map(file -> folder.relativize(file).toString().replace('\\', '/'))
          .filter(path -> !recorded.containsKey(path) && !path.equals(SUMMARY))
          .sorted()
          .forEach(path -> notes.add(path + " is not of this delivery"));
    }
    return notes;
  }

  /** Whether counts, fields, areas, lengths and cells agree between the formats and the record. */
  public static Verification contents(Path folder, int threads) throws IOException {
    return new ContentCheck(folder, summary(folder)).run(threads);
  }

  /** Paths the record of a folder names, itself last; none when the folder has no record. */
  public static List<String> recorded(Path folder) throws IOException {
    if (!Files.isRegularFile(folder.resolve(SUMMARY))) {
      return List.of();
    }
    List<String> paths = new ArrayList<>(files(folder).keySet());
    paths.add(SUMMARY);
    return paths;
  }

  /** Those of {@link #recorded} that are still as they were delivered. */
  public static List<String> untouched(Path folder) throws IOException {
    List<String> paths = new ArrayList<>();
    if (!recorded(folder).isEmpty()) {
      for (Map.Entry<String, Map<?, ?>> entry : files(folder).entrySet()) {
        Path file = folder.resolve(entry.getKey());
        if (Files.isRegularFile(file)
            && Fingerprint.of(file).sha256().equals(entry.getValue().get("sha256"))) {
          paths.add(entry.getKey());
        }
      }
      paths.add(SUMMARY);
    }
    return paths;
  }

  private static Map<String, Map<?, ?>> files(Path folder) throws IOException {
    Map<String, Map<?, ?>> files = new TreeMap<>();
    if (summary(folder).get("files") instanceof Map<?, ?> entries) {
      for (Map.Entry<?, ?> entry : entries.entrySet()) {
        Path path = folder.resolve((String) entry.getKey()).normalize();
        // a record is input too: it must not lead out of its folder
        if (path.startsWith(folder.normalize()) && entry.getValue() instanceof Map<?, ?> print) {
          files.put((String) entry.getKey(), print);
        }
      }
    }
    return files;
  }

  private static Map<?, ?> summary(Path folder) throws IOException {
    Path file = folder.resolve(SUMMARY);
    if (!Files.isRegularFile(file)) {
      throw new IOException(folder + " has no " + SUMMARY + ": it is not a delivered folder");
    }
    try {
      if (Json.read(file) instanceof Map<?, ?> map) {
        return map;
      }
    } catch (IOException e) {
      String why =
          e instanceof JsonProcessingException p && p.getLocation() != null
              ? "damaged in line " + p.getLocation().getLineNr()
              : e.getMessage();
      throw new UnreadableRecord(file + " cannot be read as JSON: " + why, e);
    }
    throw new UnreadableRecord(file + " is not the record of a delivery", null);
  }
}
