package org.mottle.export.drawings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.mottle.engine.localgrid.LocalGrid;
import org.mottle.engine.localgrid.LocalGridOutcome;
import org.mottle.engine.localgrid.PointPair;
import org.mottle.engine.localgrid.Registration;
import org.mottle.engine.localgrid.Residual;
import org.mottle.engine.localgrid.Similarity;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.problem.InputRefused;
import org.mottle.export.problem.Problems;
import org.mottle.export.read.ImagePlace;
import org.mottle.export.read.InputOptions;
import org.mottle.export.read.PointPairsReader;

/**
 * Where drawings and overlays go: the grid of the site, the CRS of the image, the shift of the
 * marks. Every problem is collected; what was found is told and recorded.
 */
final class Placing {
  /** Controls and marks farther from the greens than this are in another system, m. */
  private static final double FAR_M = 20_000;

  private final Crs working;
  private final Envelope site;
  private final Problems problems = new Problems();
  private final List<String> told = new ArrayList<>();
  private final Map<String, Object> record = new LinkedHashMap<>();
  private Optional<Similarity> local = Optional.empty();
  private Overlay.Shift shift = Overlay.Shift.NONE;
  private Crs overlays;

  /**
   * @param site box of the greens in the working CRS
   */
  Placing(DrawingsRequest request, Crs working, Envelope site) {
    this.working = working;
    this.site = site;
    this.overlays = working;
    request.local().ifPresent(wanted -> collected(() -> fit(wanted)));
    request.imagery().image().ifPresent(file -> collected(() -> image(file, request.imagery())));
    request.imagery().marks().ifPresent(file -> collected(() -> marks(file, request.imagery())));
    problems.throwIfAny();
  }

  Optional<Similarity> local() {
    return local;
  }

  Overlay.Shift shift() {
    return shift;
  }

  /** CRS of the overlays. */
  Crs overlays() {
    return overlays;
  }

  List<String> told() {
    return told;
  }

  Map<String, Object> record() {
    return record;
  }

  private void collected(Runnable step) {
    try {
      step.run();
    } catch (InputRefused e) {
      problems.add(e);
    }
  }

  private void tell(String format, Object... values) {
    told.add(String.format(Locale.ROOT, format, values));
  }

  private void fit(DrawingsRequest.Local wanted) {
    List<PointPair> controls = PointPairsReader.controls(wanted.controls());
    requireNear(wanted.controls(), controls);
    LocalGridOutcome outcome = LocalGrid.fit(controls);
    if (outcome instanceof LocalGridOutcome.NotFitted not) {
      not.why().forEach(why -> problems.add("%s: %s", wanted.controls(), why));
      return;
    }
    LocalGridOutcome.Fitted fit = (LocalGridOutcome.Fitted) outcome;
    boolean fine = fit.rmse() <= wanted.limitM();
    if (!fine && !wanted.accepted()) {
      problems.add(
          "%s: the controls fit with an RMSE of %.3f m, more than %s m; residuals %s%s. Check them,"
              + " or accept with --accept-residuals",
          wanted.controls(),
          fit.rmse(),
          wanted.limitM(),
          listed(fit.residuals()),
          LocalGrid.betterExchanged(controls, fit.rmse())
              ? "; they fit far better with local_e and local_n exchanged: consider whether they"
                  + " are"
              : "");
      return;
    }
    local = Optional.of(fit.similarity());
    tell(
        "local grid from %d controls: scale %.8f, rotation %.6f degrees clockwise, RMSE %.3f m"
            + " (standard deviation of a coordinate %.3f m)%s",
        controls.size(),
        fit.similarity().scale(),
        fit.similarity().rotationDeg(),
        fit.rmse(),
        fit.unitSd(),
        fine ? "" : ", above the limit and accepted");
    tell("residuals of the controls, m east and north: %s", listed(fit.residuals()));
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("controls", controls.size());
    figures.put("scale", fit.similarity().scale());
    figures.put("rotation_deg", fit.similarity().rotationDeg());
    figures.put("rmse_m", fit.rmse());
    figures.put("unit_sd_m", fit.unitSd());
    figures.put("limit_m", wanted.limitM());
    figures.put("accepted", !fine);
    figures.put("residuals", maps(fit.residuals()));
    record.put("local_grid", figures);
  }

  private void image(String file, DrawingsRequest.Imagery imagery) {
    InputOptions options = imagery.crs().map(InputOptions.NONE::withCrs).orElse(InputOptions.NONE);
    ImagePlace image = ImagePlace.of(file, options);
    told.addAll(image.notes());
    Envelope box =
        image.crs().equals(working)
            ? site
            : CrsTransform.between(working, image.crs())
                .apply(new org.locationtech.jts.geom.GeometryFactory().toGeometry(site))
                .getEnvelopeInternal();
    if (!image.box().intersects(box)) {
      problems.add(
          "%s shows none of the greens: it covers %s of %s, they lie in %s; check its CRS",
          image.name(), box(image.box()), image.crs(), box(box));
      return;
    }
    overlays = image.crs();
    tell(
        image.crs().equals(working)
            ? "%s is in the CRS of the map, %s: overlays are drawn as they are"
            : "%s is in another CRS than the map: overlays are reprojected to its %s; the image is"
                + " left as it is",
        image.name(),
        image.crs());
    if (!image.box().contains(box)) {
      tell("%s does not cover all greens", image.name());
    }
    record.put("image", Map.of("name", image.name(), "crs_code", image.crs().code()));
  }

  private static String box(Envelope box) {
    return String.format(
        Locale.ROOT,
        "%.6g to %.6g east, %.7g to %.7g north",
        box.getMinX(),
        box.getMaxX(),
        box.getMinY(),
        box.getMaxY());
  }

  private void marks(String file, DrawingsRequest.Imagery imagery) {
    List<PointPair> marks = PointPairsReader.marks(file);
    requireNear(file, marks);
    Registration found = Registration.of(marks);
    boolean applied = imagery.applyShift();
    problems.require(
        !applied || marks.size() >= LocalGrid.LEAST,
        "%s: a shift is applied from %d marks or more, found %d",
        file,
        LocalGrid.LEAST,
        marks.size());
    tell(
        "the image lies %.3f m east and %.3f m north of the survey at %d marks (RMSE %.3f m, with"
            + " that taken out %.3f m)",
        found.shiftEast(), found.shiftNorth(), marks.size(), found.rmseBefore(), found.rmseAfter());
    tell("left at the marks, m east and north: %s", listed(found.residuals()));
    if (found.shift() <= found.rmseAfter()) {
      tell("the shift is no larger than what is left at the marks: consider leaving it");
    }
    tell(
        applied
            ? "overlays and KMZ are moved by that shift; drawings and points are not"
            : "nothing is moved; --apply-shift moves overlays and KMZ onto the image");
    if (applied) {
      shift = new Overlay.Shift(found.shiftEast(), found.shiftNorth());
    }
    Map<String, Object> figures = new LinkedHashMap<>();
    figures.put("marks", marks.size());
    figures.put("shift_e_m", found.shiftEast());
    figures.put("shift_n_m", found.shiftNorth());
    figures.put("rmse_before_m", found.rmseBefore());
    figures.put("rmse_after_m", found.rmseAfter());
    figures.put("applied", applied);
    figures.put("residuals", maps(found.residuals()));
    record.put("registration", figures);
  }

  private void requireNear(String file, List<PointPair> pairs) {
    Envelope around = new Envelope(site);
    around.expandBy(FAR_M);
    List<String> far =
        pairs.stream().filter(p -> !around.contains(p.from())).map(PointPair::name).toList();
    problems.require(
        far.isEmpty(),
        "%s: e, n of %s lie more than %.0f km from the greens; give them in metres of %s",
        file,
        Problems.listed(far),
        FAR_M / 1000,
        working);
  }

  private static String listed(List<Residual> residuals) {
    return String.join(
        "; ",
        residuals.stream()
            .map(r -> String.format(Locale.ROOT, "%s %+.3f %+.3f", r.name(), r.east(), r.north()))
            .toList());
  }

  private static List<Map<String, Object>> maps(List<Residual> residuals) {
    List<Map<String, Object>> maps = new ArrayList<>();
    for (Residual r : residuals) {
      Map<String, Object> map = new LinkedHashMap<>();
      map.put("name", r.name());
      map.put("e_m", r.east());
      map.put("n_m", r.north());
      maps.add(map);
    }
    return maps;
  }
}
