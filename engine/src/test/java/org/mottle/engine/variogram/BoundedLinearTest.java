package org.mottle.engine.variogram;

import java.util.Map;

class BoundedLinearTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Linear(1, 30);
  }

  @Override
  Map<String, VariogramModel> published() {
    return Map.of("Lin_bounded", model());
  }
}
