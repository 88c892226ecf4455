package org.mottle.engine.variogram;

import java.util.Map;

class CircularTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Circular(1, 30);
  }

  @Override
  Map<String, VariogramModel> published() {
    return Map.of("Cir", model());
  }
}
