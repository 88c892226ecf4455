/**
 * Floor 1: whether the readings of a green come from one population or two (water-repellent spots
 * among ordinary ground), whether the low readings lie scattered or together, and how probable the
 * low population is at each place.
 */
package org.mottle.engine.population;
