package org.mottle.export.plan;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.locationtech.jts.geom.Geometry;
import org.mottle.engine.design.Design;
import org.mottle.engine.design.PlanOutcome;
import org.mottle.engine.design.PlanOutcome.NotPlanned;
import org.mottle.engine.design.PlanOutcome.Planned;
import org.mottle.engine.design.PlanSettings;
import org.mottle.engine.design.StationPlan;
import org.mottle.engine.design.StationPlanner;
import org.mottle.engine.progress.Progress;
import org.mottle.engine.survey.Green;
import org.mottle.export.crs.Crs;
import org.mottle.export.job.MapFigures;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.Greens;
import org.mottle.export.read.GreensReader;
import org.mottle.export.read.InputOptions;
import org.mottle.export.read.PlansReader;
import org.mottle.export.record.Provenance;
import org.mottle.export.record.SideBySide;
import org.mottle.export.schema.LayerData;
import org.mottle.export.settings.SiteSettings;
import org.mottle.export.write.Delivered;
import org.mottle.export.write.Delivery;
import org.mottle.export.write.Format;

/**
 * Planning from files to files: read, choose the places, say what they could tell, deliver. Greens
 * are planned side by side, each by itself. Nothing is written before the end, and nothing at all
 * when no green can be planned.
 */
public final class PlanJob {
  private final PlanRequest request;

  public PlanJob(PlanRequest request) {
    this.request = request;
  }

  /**
   * @throws InputRefused when nothing can be planned; nothing has been written then
   * @throws IOException when a file cannot be read
   */
  public PlanReport run(Progress progress) throws IOException {
    request.choice().check(new Problems()).throwIfAny();
    Delivery delivery =
        Delivery.of(
                request.output().folder(),
                request.output().overwrite(),
                EnumSet.of(Format.GEOPACKAGE))
            .withDocumentsAt(PlanFiles.PLACES)
            .withThreads(request.threads());
    delivery.check();
    Prospects prospects = Prospects.of(request);
    Greens greens = greens();
    List<String> told = new ArrayList<>(greens.notes());
    PlanSettings settings = prospects.settings(told);
    told.add(prospects.basis());
    List<Green> wanted = greens.greens();
    List<Geometry> areas = List.of();
    if (request.choice().areas().isPresent()) {
      InterestAreas found =
          InterestAreas.read(request.choice().areas().get(), inputOptions(), greens);
      told.addAll(found.notes());
      wanted = found.greens();
      areas = found.shapes();
    }
    Design design = request.choice().design(earlier(greens, told), areas);
    List<Result> results = plan(wanted, new StationPlanner(design, settings), prospects, progress);
    List<GreenPlan> plans = results.stream().flatMap(r -> r.plan().stream()).toList();
    List<NotPlanned> without = results.stream().flatMap(r -> r.without().stream()).toList();
    if (plans.isEmpty()) {
      throw new InputRefused(without.stream().map(PlanLine::of).toList());
    }
    Provenance provenance = PlanRecord.of(request, settings, greens.working());
    List<LayerData> layers = PlanRows.of(wanted, plans, without, request.choice().name());
    Map<String, Object> figures = figures(plans, without, told, layers);
    progress.check();
    Delivered delivered =
        delivery.write(
            layers,
            List.of(),
            PlanFiles.of(plans, greens.working(), provenance, request.threads()),
            greens.working(),
            provenance,
            figures);
    return new PlanReport(plans, without, told, figures, delivered);
  }

  /** Either of both. */
  private record Result(Optional<GreenPlan> plan, Optional<NotPlanned> without) {}

  private List<Result> plan(
      List<Green> greens, StationPlanner planner, Prospects prospects, Progress progress)
      throws IOException {
    List<Callable<Result>> work = new ArrayList<>();
    for (Green green : greens) {
      work.add(
          () -> {
            progress.check();
            return result(planner.plan(green), prospects);
          });
    }
    return SideBySide.run(work, request.threads());
  }

  private Result result(PlanOutcome outcome, Prospects prospects) {
    if (outcome instanceof Planned planned) {
      StationPlan plan = planned.plan();
      GreenPlan green =
          new GreenPlan(
              planned.green(),
              plan,
              request.choice().name(),
              request.settings().insetM(),
              planned.note(),
              prospects.of(planned.green(), plan));
      return new Result(Optional.of(green), Optional.empty());
    }
    return new Result(Optional.empty(), Optional.of((NotPlanned) outcome));
  }

  private List<StationPlan> earlier(Greens greens, List<String> told) {
    List<StationPlan> plans = new ArrayList<>();
    for (String file : request.choice().earlier()) {
      plans.addAll(PlansReader.read(file, inputOptions(), greens.working()));
    }
    List<String> known = greens.greens().stream().map(Green::id).toList();
    List<String> unknown =
        plans.stream()
            .map(StationPlan::greenId)
            .filter(id -> !known.contains(id))
            .distinct()
            .toList();
    if (!unknown.isEmpty()) {
      told.add("the earlier plan also holds green " + Problems.listed(unknown) + "; not planned");
    }
    return plans;
  }

  private Greens greens() {
    Optional<Crs> working = request.site().workingCrs().map(Crs::parse);
    return GreensReader.read(request.inputs().greens(), inputOptions(), working);
  }

  private InputOptions inputOptions() {
    SiteSettings site = request.site();
    return site.inputOptions();
  }

  private static Map<String, Object> figures(
      List<GreenPlan> plans, List<NotPlanned> without, List<String> told, List<LayerData> layers) {
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("greens_asked", plans.size() + without.size());
    figures.put("greens_planned", plans.size());
    figures.put("not_planned", without.stream().map(PlanJob::notPlanned).toList());
    figures.put("told", told);
    figures.put("plan", MapFigures.rows(layers.get(layers.size() - 1)));
    return figures;
  }

  private static Map<String, Object> notPlanned(NotPlanned without) {
    Map<String, Object> one = new LinkedHashMap<>();
    one.put("green_id", without.green().id());
    one.put("reason", without.why().reason());
    one.put("remedy", without.why().remedy());
    return one;
  }
}
