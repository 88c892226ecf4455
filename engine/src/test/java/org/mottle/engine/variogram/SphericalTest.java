package org.mottle.engine.variogram;

import java.util.Map;

class SphericalTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Spherical(1, 30);
  }

  @Override
  Map<String, VariogramModel> published() {
    return Map.of("Sph", model());
  }
}
