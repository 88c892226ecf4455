package org.mottle.export.write;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.mottle.export.verify.Verification;

/**
 * A folder beside the wanted one in which a delivery is drafted, and the move from there. Files of
 * an earlier delivery are set aside first and come back if the move fails half-way; {@code
 * summary.json} moves last. Ended by {@link #close}, by an interrupt of the process, or, after a
 * kill that leaves no time for that, by the next delivery to the same folder.
 */
final class Placement implements AutoCloseable {
  private static final String MARK = ".mottle-";
  private static final String DRAFT = "draft";
  private static final String EARLIER = "earlier";
  private static final String SUMMARY = Verification.SUMMARY;

  private final Path out;
  private final Path workshop;
  private final Thread atExit;
  private boolean closed;

  private Placement(Path out, Path workshop) {
    this.out = out;
    this.workshop = workshop;
    this.atExit = new Thread(this::clear, "mottle-clear");
    Runtime.getRuntime().addShutdownHook(atExit);
  }

  /**
   * Refuses an existing delivery without leave to overwrite, and a folder that cannot be made.
   *
   * @param places files and folders of the delivery at its top, the summary among them
   */
  static void check(Path out, boolean overwrite, Set<String> places) {
    List<String> lines = new ArrayList<>();
    if (Files.exists(out) && !Files.isDirectory(out)) {
      lines.add(out + " is a file; --out needs a folder");
    } else if (!overwrite) {
      for (String name : places) {
        if (Files.exists(out.resolve(name))) {
          lines.add(out.resolve(name) + " exists; use --overwrite to replace it, or another --out");
        }
      }
    }
    Path parent = existingParent(out);
    if (!Files.isDirectory(parent) || !Files.isWritable(parent)) {
      lines.add(parent + " cannot be written; use another --out");
    }
    if (!lines.isEmpty()) {
      throw new OutputRefused(lines);
    }
  }

  private static Path existingParent(Path out) {
    Path parent = Files.isDirectory(out) ? out : out.getParent();
    while (parent != null && !Files.exists(parent)) {
      parent = parent.getParent();
    }
    return parent == null ? out.getRoot() : parent;
  }

  /** Makes the draft folder. */
  static Placement beside(Path out, boolean overwrite, Set<String> places) {
    check(out, overwrite, places);
    try {
      Files.createDirectories(out.getParent());
      sweep(out);
      String name = "." + out.getFileName() + MARK + ProcessHandle.current().pid();
      Placement placement = new Placement(out, Files.createDirectory(out.resolveSibling(name)));
      Files.createDirectory(placement.draft());
      return placement;
    } catch (IOException e) {
      throw refused(out, e);
    }
  }

  /** Brings to an end what a killed process left beside the folder. */
  private static void sweep(Path out) throws IOException {
    String mark = "." + out.getFileName() + MARK;
    List<Path> left;
    try (Stream<Path> siblings = Files.list(out.getParent())) {
      left = siblings.filter(p -> abandoned(p, mark)).sorted().toList();
    }
    for (Path workshop : left) {
      Path draft = workshop.resolve(DRAFT);
      // the summary moves last: where it is still in the draft, the move was not finished
      if (Files.exists(workshop.resolve(EARLIER)) && Files.exists(draft.resolve(SUMMARY))) {
        for (String path : Verification.recorded(draft)) {
          if (!Files.exists(draft.resolve(path))) {
            Files.deleteIfExists(out.resolve(path));
          }
        }
        restore(workshop.resolve(EARLIER), out);
      }
      delete(workshop);
    }
  }

  private static boolean abandoned(Path sibling, String mark) {
    String name = sibling.getFileName().toString();
    if (!name.startsWith(mark) || !name.substring(mark.length()).matches("[0-9]{1,18}")) {
      return false;
    }
    return ProcessHandle.of(Long.parseLong(name.substring(mark.length()))).isEmpty();
  }

  Path draft() {
    return workshop.resolve(DRAFT);
  }

  private Path earlier() {
    return workshop.resolve(EARLIER);
  }

  /**
   * Moves the drafted files to the wanted folder.
   *
   * @param paths relative to the draft, the last one last
   * @return what an earlier delivery left there because it was changed since, one line a file
   */
  synchronized List<String> moveIntoPlace(List<String> paths) throws IOException {
    if (closed) {
      throw new IOException("stopped before the files were in place");
    }
    if (!Files.exists(out)) {
      Files.move(draft(), out, StandardCopyOption.ATOMIC_MOVE);
      return List.of();
    }
    Set<String> before = new TreeSet<>(Verification.recorded(out));
    Deque<Path> moved = new ArrayDeque<>();
    try {
      setAside(paths);
      for (String path : paths) {
        Path target = out.resolve(path);
        Files.createDirectories(target.getParent());
        Files.move(draft().resolve(path), target);
        moved.push(target);
      }
    } catch (IOException e) {
      for (Path target : moved) {
        Files.deleteIfExists(target);
      }
      restore(earlier(), out);
      throw e;
    }
    paths.forEach(before::remove);
    List<String> told = new ArrayList<>(removed(before));
    delete(earlier());
    dropEmptyFolders(before);
    before.removeIf(path -> !Files.exists(out.resolve(path)));
    before.forEach(
        path ->
            told.add(
                path
                    + " of an earlier delivery was changed since and stays; it is not of this"
                    + " run"));
    return told;
  }

  /** What the earlier delivery had, and this one has not: by folder, since it may be a lot. */
  private List<String> removed(Set<String> before) {
    Map<String, Long> places =
        before.stream()
            .filter(path -> Files.exists(earlier().resolve(path)))
            .collect(
                Collectors.groupingBy(
                    path -> path.contains("/") ? path.substring(0, path.indexOf('/')) : path,
                    TreeMap::new,
                    Collectors.counting()));
    return places.isEmpty()
        ? List.of()
        : List.of(
            "removed what an earlier delivery had and this one has not: "
                + places.entrySet().stream()
                    .map(
                        e ->
                            before.contains(e.getKey())
                                ? e.getKey()
                                : e.getKey()
                                    + "/ ("
                                    + e.getValue()
                                    + (e.getValue() == 1 ? " file)" : " files)"))
                    .collect(Collectors.joining(", ")));
  }

  /** The folders at the top that held what this delivery has not. */
  private void dropEmptyFolders(Set<String> gone) throws IOException {
    Set<String> folders = new TreeSet<>();
    gone.forEach(path -> folders.add(path.substring(0, Math.max(0, path.indexOf('/')))));
    folders.remove("");
    for (String folder : folders) {
      Path place = out.resolve(folder);
      if (Files.isDirectory(place)) {
        try (Stream<Path> content = Files.list(place)) {
          if (content.findAny().isPresent()) {
            continue;
          }
        }
        Files.delete(place);
      }
    }
  }

  /** What would be replaced, and what the earlier delivery has and this one has not. */
  private void setAside(List<String> paths) throws IOException {
    Set<String> old = new TreeSet<>(paths);
    old.addAll(Verification.untouched(out));
    for (String path : old) {
      Path from = out.resolve(path);
      if (Files.isRegularFile(from)) {
        Path to = earlier().resolve(path);
        Files.createDirectories(to.getParent());
        Files.move(from, to);
      }
    }
  }

  private static void restore(Path earlier, Path out) throws IOException {
    if (!Files.isDirectory(earlier)) {
      return;
    }
    for (String path : Summary.paths(earlier)) {
      Path target = out.resolve(path);
      Files.createDirectories(target.getParent());
      Files.move(earlier.resolve(path), target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  OutputRefused refused(IOException cause) {
    return refused(out, cause);
  }

  private static OutputRefused refused(Path out, IOException cause) {
    String why = cause.getMessage();
    if (cause instanceof FileSystemException system && system.getReason() == null) {
      why = system.getFile() + " (" + cause.getClass().getSimpleName() + ")";
    }
    return new OutputRefused(
        List.of(
            "cannot deliver to "
                + out
                + ": "
                + why
                + "; nothing was delivered, earlier output is as it was."
                + " Make room or use another --out"),
        cause);
  }

  @Override
  public void close() {
    clear();
    try {
      Runtime.getRuntime().removeShutdownHook(atExit);
    } catch (IllegalStateException e) {
      // the process is ending and the hook has run or will find nothing
      closed = true;
    }
  }

  private synchronized void clear() {
    closed = true;
    // a writer stopped in the middle may add a file while the folder is emptied: try again
    for (int attempt = 0; attempt < 5 && Files.exists(workshop); attempt++) {
      try {
        delete(workshop);
      } catch (IOException e) {
        Thread.onSpinWait();
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> deepestFirst;
    try (Stream<Path> walk = Files.walk(folder)) {
      deepestFirst = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : deepestFirst) {
      Files.deleteIfExists(path);
    }
  }
}
