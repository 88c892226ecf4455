package org.mottle.engine.empirical;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.mottle.engine.observation.Observations;
import org.mottle.engine.parallel.Panels;
import org.mottle.engine.progress.Progress;

/**
 * Every pair within the cutoff of several groups, in pieces that several threads share. How the
 * points are cut into pieces depends on their number and never on the threads.
 */
final class PairScan {
  private static final int SMALLEST_PIECE = 64;
  private static final int MOST_PIECES = 256;
  private static final int MOST_SUMS = 4_000_000;
  private static final int WORTH_A_THREAD = 1000;

  private final LagBins bins;
  private final int threads;
  private final Progress progress;
  private final List<Piece> pieces = new ArrayList<>();

  private record Piece(CellList points, int from, int to) {}

  PairScan(List<Observations> groups, LagBins bins, int threads, Progress progress) {
    this.bins = bins;
    this.progress = progress;
    int points = 0;
    int most = Math.max(1, Math.min(MOST_PIECES, MOST_SUMS / bins.count()));
    for (Observations group : groups) {
      CellList list = new CellList(group, bins.cutoff());
      int length = Math.max(SMALLEST_PIECE, (list.size() + most - 1) / most);
      for (int from = 0; from < list.size(); from += length) {
        pieces.add(new Piece(list, from, Math.min(list.size(), from + length)));
      }
      points += list.size();
    }
    this.threads = points < WORTH_A_THREAD ? 1 : Math.min(threads, pieces.size());
  }

  LagBins bins() {
    return bins;
  }

  /** A sink for each piece, in the order of the pieces: for sums, whose order matters. */
  <S extends PairSink> List<S> byPiece(Direction direction, Supplier<S> newSink) {
    List<S> sinks = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      sinks.add(newSink.get());
    }
    AtomicInteger next = new AtomicInteger();
    onThreads(() -> work(next, direction, null, sinks));
    return sinks;
  }

  /** A sink for each thread, in no order: for counts, whose order does not matter. */
  <S extends PairSink> List<S> byThread(Direction direction, Supplier<S> newSink) {
    List<S> sinks = new ArrayList<>();
    AtomicInteger next = new AtomicInteger();
    List<Runnable> jobs = new ArrayList<>();
    for (int t = 0; t < threads; t++) {
      S sink = newSink.get();
      sinks.add(sink);
      jobs.add(() -> work(next, direction, sink, List.of()));
    }
    run(jobs);
    return sinks;
  }

  private <S extends PairSink> void work(
      AtomicInteger next, Direction direction, S own, List<S> byPiece) {
    for (int i = next.getAndIncrement(); i < pieces.size(); i = next.getAndIncrement()) {
      progress.check();
      Piece piece = pieces.get(i);
      piece.points.scan(piece.from, piece.to, direction, own != null ? own : byPiece.get(i));
      progress.report("variogram", i + 1L, pieces.size());
    }
  }

  private void onThreads(Runnable job) {
    List<Runnable> jobs = new ArrayList<>();
    for (int t = 0; t < threads; t++) {
      jobs.add(job);
    }
    run(jobs);
  }

  private static void run(List<Runnable> jobs) {
    Panels.run(
        jobs.size(),
        1,
        jobs.size(),
        "variogram",
        Progress.NONE, // the jobs tell theirs themselves
        () -> (from, to) -> jobs.subList(from, to).forEach(Runnable::run));
  }
}
