package org.mottle.engine.variogram;

import java.util.Map;

class PowerTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Power(1, 1.5);
  }

  @Override
  Map<String, VariogramModel> published() {
    return Map.of("Pow1.5", new Power(0.02, 1.5), "Pow0.7", new Power(0.02, 0.7));
  }
}
