package org.mottle.engine.localgrid;

import java.util.List;
import org.mottle.engine.survey.Refusal;

/** A local grid, or why there is none. */
public sealed interface LocalGridOutcome {

  /**
   * @param similarity from the system of the survey to the local grid
   * @param residuals given less fitted, in the order of the controls, m of the local grid
   * @param rmse root of the mean squared length of the residuals, m
   * @param unitSd standard deviation of a coordinate, the root of the sum of squares over 2 n - 4,
   *     m; more than the RMSE says of few controls
   */
  record Fitted(Similarity similarity, List<Residual> residuals, double rmse, double unitSd)
      implements LocalGridOutcome {
    public Fitted {
      residuals = List.copyOf(residuals);
    }
  }

  /**
   * @param why what stands in the way, all of it
   */
  record NotFitted(List<Refusal> why) implements LocalGridOutcome {
    public NotFitted {
      why = List.copyOf(why);
    }
  }
}
