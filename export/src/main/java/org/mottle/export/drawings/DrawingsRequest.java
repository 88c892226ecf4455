package org.mottle.export.drawings;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.mottle.export.crs.Crs;
import org.mottle.export.drawings.Colouring.MoistureScale;

/**
 * What is to be drawn.
 *
 * @param from a delivered folder
 * @param layers delivered layers to draw; empty for all that can be
 * @param local grid of the site, if drawings are wanted in it too
 * @param imagery what is known of the imagery
 * @param scale ends of the colours of moisture
 * @param output where to
 */
public record DrawingsRequest(
    Path from,
    List<String> layers,
    Optional<Local> local,
    Imagery imagery,
    MoistureScale scale,
    Output output) {

  /**
   * @param controls file of points in both systems
   * @param limitM greatest RMSE that is taken without consent, m
   * @param accepted whether a greater one is consented to
   */
  public record Local(String controls, double limitM, boolean accepted) {}

  /**
   * @param image an image to lay the overlays over
   * @param crs of an image that names none
   * @param marks file of marks seen in the image and in the survey
   * @param applyShift whether the overlays may be moved by the shift of the marks
   */
  public record Imagery(
      Optional<String> image, Optional<Crs> crs, Optional<String> marks, boolean applyShift) {}

  /**
   * @param folder the folder to be
   * @param overwrite whether earlier drawings may be replaced
   * @param threads to write with
   */
  public record Output(Path folder, boolean overwrite, int threads) {}

  public DrawingsRequest {
    layers = List.copyOf(layers);
  }

  /** With the usual scale of moisture, or these ends. */
  public static MoistureScale scale(Optional<double[]> ends) {
    return ends.map(e -> new MoistureScale(e[0], e[1])).orElse(MoistureScale.USUAL);
  }
}
