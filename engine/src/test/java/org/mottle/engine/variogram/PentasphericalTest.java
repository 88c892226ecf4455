package org.mottle.engine.variogram;

import java.util.Map;

class PentasphericalTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Pentaspherical(1, 30);
  }

  @Override
  Map<String, VariogramModel> published() {
    return Map.of("Pen", model());
  }
}
