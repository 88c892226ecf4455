package org.mottle.engine.variogram;

import java.util.Map;

class UnboundedLinearTest extends VariogramModelLaws {

  @Override
  VariogramModel model() {
    return new Linear(1, 0);
  }

  @Override
  Map<String, VariogramModel> published() {
    return Map.of("Lin_unbounded", new Linear(0.05, 0));
  }
}
