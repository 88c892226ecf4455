package org.mottle.export.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One thread and four write the same bytes. */
class AnyThreadsTest {
  private static final long SEED = 20310502;
  private static final String POINTS = NumberTable.path("meuse_points.csv").toString();

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "variogram",
        "variogram --estimator cressie-hawkins --azimuth 30",
        "variogram --estimator dowd --model exponential",
        "estimate",
        "estimate --neighbours 20",
        "estimate --block 40x40",
        "estimate --method universal-kriging --drift x,y",
        "estimate --method inverse-distance --neighbours 12 --radius 500",
        "estimate --leave-one-out",
        "estimate --leave-one-out --neighbours 20"
      })
  void sameBytes(String command) {
    Ran one = Ran.mottle(args(command, "1"));
    Ran four = Ran.mottle(args(command, "4"));
    assertThat(one.exitCode()).as(one.err()).isEqualTo(ExitCode.DONE);
    assertThat(one.out()).hasSizeGreaterThan(1000);
    assertThat(four.out()).as("seed %d", SEED).isEqualTo(one.out());
    assertThat(four.exitCode()).isEqualTo(one.exitCode());
  }

  private List<String> args(String command, String threads) {
    List<String> args = new ArrayList<>(List.of(command.split(" ")));
    args.addAll(List.of("--points", POINTS, "--value", "logzinc", "--threads", threads, "--quiet"));
    if (command.startsWith("estimate")) {
      String model = Models.json(0.05, "spherical", 0.59, 897, 30, 0.7);
      args.addAll(List.of("--model", Models.write(folder, model).toString()));
      args.addAll(List.of("--at", places().toString()));
    }
    return args;
  }

  private Path places() {
    Random random = new Random(SEED);
    StringBuilder csv = new StringBuilder("x,y\n");
    for (int i = 0; i < 1500; i++) {
      csv.append(178600 + 2800 * random.nextDouble()).append(',');
      csv.append(329700 + 3900 * random.nextDouble()).append('\n');
    }
    return Models.text(folder, "places.csv", csv.toString());
  }
}
