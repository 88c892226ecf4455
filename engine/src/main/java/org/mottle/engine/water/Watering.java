package org.mottle.engine.water;

import java.util.List;
import org.mottle.engine.survey.Refusal;

/** The water a green wants, or why that cannot be said. */
public sealed interface Watering {

  /**
   * @param deficit by which depths are found
   * @param efficiency share of the water given that reaches the roots' depth
   * @param dryGround all ground below the band, wherever it lies
   * @param patches one each dry patch, in their order
   */
  record Wanted(Deficit deficit, double efficiency, WaterWanted dryGround, List<PatchWater> patches)
      implements Watering {
    public Wanted {
      patches = List.copyOf(patches);
    }
  }

  /**
   * @param patch number of the patch
   * @param wanted what it wants
   */
  record PatchWater(int patch, WaterWanted wanted) {}

  /**
   * @param why which figure is missing, and where to give it
   */
  record NotWorkedOut(Refusal why) implements Watering {}
}
