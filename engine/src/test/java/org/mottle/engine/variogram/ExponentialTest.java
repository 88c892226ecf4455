package org.mottle.engine.variogram;

import java.util.Map;

class ExponentialTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Exponential(1, 30);
  }

  @Override
  Map<String, VariogramModel> published() {
    return Map.of("Exp", model());
  }
}
