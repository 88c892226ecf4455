package org.mottle.engine.variogram;

import java.util.Map;

class GaussianTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Gaussian(1, 30);
  }

  @Override
  Map<String, VariogramModel> published() {
    return Map.of("Gau", model());
  }
}
