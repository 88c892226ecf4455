package org.mottle.export.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.mottle.engine.design.PlanSettings;
import org.mottle.export.plan.DesignChoice;
import org.mottle.export.plan.PlanRequest.MeanAim;
import org.mottle.export.problem.Problems;
import picocli.CommandLine.Option;

/** Options of {@code plan}: how the places are chosen and how many. */
final class PlanOptions {
  private static final int MOST_STATIONS = 500;

  @Option(
      names = "--design",
      paramLabel = "NAME",
      description =
          "transect, w, square-grid, triangular-grid, coverage, stratified, balanced, interest,"
              + " repeat or infill; default coverage, the best for a map. stratified is the best for"
              + " an unbiased mean.")
  String design = "coverage";

  @Option(
      names = "--stations",
      paramLabel = "N",
      description =
          "Stations a green, close pairs included, the control station not; default 18: 16 by the"
              + " design and 2 close pairs.")
  Integer stations;

  @Option(
      names = "--pairs",
      paramLabel = "N",
      description = "Stations 0.5 m from another, which tell the nugget; default 2.")
  int pairs = PlanSettings.DEFAULT.closePairs();

  @Option(
      names = "--twice",
      paramLabel = "N",
      description = "Stations where the probe goes in twice; default 3.")
  int twice = PlanSettings.DEFAULT.twice();

  @Option(names = "--no-control", description = "No control station to see the ground dry.")
  boolean noControl;

  @Option(
      names = "--inset",
      paramLabel = "M",
      description = "Least distance of a station from the outline, m; default 1.0.")
  double inset = PlanSettings.DEFAULT.insetM();

  @Option(
      names = "--bearing",
      paramLabel = "DEG",
      description =
          "Of a transect, degrees clockwise from grid north; default: along the green's long side.")
  Double bearing;

  @Option(
      names = "--earlier",
      paramLabel = "FILE",
      description = "Earlier plan for the designs repeat and infill, as stations.csv.")
  List<String> earlier = List.of();

  @Option(
      names = "--areas",
      paramLabel = "FILE",
      description = "Areas or points for the design interest: any format greens are read from.")
  String areas;

  @Option(
      names = "--sd",
      paramLabel = "PCT",
      description =
          "Standard deviation of the readings of a green, %% by volume: with --margin says how many"
              + " stations the mean needs.")
  Double sd;

  @Option(
      names = "--margin",
      paramLabel = "PCT",
      description = "Wanted half width of the mean's 95 %% interval, %% by volume.")
  Double margin;

  @Option(
      names = "--model",
      paramLabel = "FILE",
      description =
          "Variogram that 'mottle variogram' wrote, to say how good a map would be; default: the one"
              + " borrowed when a course has none.")
  Path model;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Seed of whatever is random; default 0. The same seed gives the same bytes.")
  long seed = PlanSettings.DEFAULT.seed();

  DesignChoice choice(Problems problems) {
    if (bearing != null && !(bearing >= 0 && bearing <= 360)) {
      problems.add("--bearing must be from 0 to 360 degrees, was %s", bearing);
    }
    DesignChoice choice =
        new DesignChoice(
            design.strip().toLowerCase(Locale.ROOT),
            bearing == null ? Double.NaN : bearing,
            earlier,
            Optional.ofNullable(areas));
    choice.check(problems);
    return choice;
  }

  Optional<MeanAim> aim(Problems problems) {
    if (sd == null && margin == null) {
      return Optional.empty();
    }
    if (sd == null || margin == null) {
      problems.add(
          "--sd and --margin go together: the standard deviation of the readings and the margin"
              + " wanted, as --sd 2 --margin 1");
      return Optional.empty();
    }
    problems.require(positive(sd), "--sd must be above 0 %%, was %s", sd);
    problems.require(positive(margin), "--margin must be above 0 %%, was %s", margin);
    return Optional.of(new MeanAim(sd, margin));
  }

  PlanSettings settings(Problems problems) {
    // stations beside earlier ones, and those chosen for what is seen, get no partners
    String name = design.strip().toLowerCase(Locale.ROOT);
    int pairs = List.of("infill", "interest").contains(name) ? 0 : this.pairs;
    problems.require(
        stations == null || !name.equals("repeat"),
        "--stations does not go with the design repeat: the earlier plan says how many");
    problems.require(
        stations == null || sd == null && margin == null,
        "--stations and --sd with --margin both say how many; give one of them");
    problems.require(pairs >= 0, "--pairs must be 0 or more, was %d", pairs);
    problems.require(twice >= 0, "--twice must be 0 or more, was %d", twice);
    problems.require(
        inset >= 0 && Double.isFinite(inset), "--inset must be 0 m or more, was %s", inset);
    int own = PlanSettings.DEFAULT.stations();
    if (stations != null) {
      own = stations - Math.max(0, pairs);
      problems.require(
          stations >= 1 && stations <= MOST_STATIONS,
          "--stations must be from 1 to %d, was %d",
          MOST_STATIONS,
          stations);
      problems.require(
          stations < 1 || own >= Math.max(1, pairs),
          "--stations %d leaves %d beside %d close pairs, and each pair needs one; use more"
              + " stations or --pairs 0",
          stations,
          Math.max(0, own),
          pairs);
    }
    if (!problems.isEmpty()) {
      return PlanSettings.DEFAULT;
    }
    return new PlanSettings(
        own, inset, pairs, PlanSettings.DEFAULT.pairM(), twice, !noControl, seed);
  }

  private static boolean positive(double value) {
    return value > 0 && Double.isFinite(value);
  }
}
