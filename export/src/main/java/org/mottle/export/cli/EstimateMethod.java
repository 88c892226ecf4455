package org.mottle.export.cli;

/** How {@code estimate} makes its estimates. */
enum EstimateMethod {
  ORDINARY_KRIGING,
  SIMPLE_KRIGING,
  UNIVERSAL_KRIGING,
  INVERSE_DISTANCE
}
