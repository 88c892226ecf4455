/**
 * Floor 5: from the readings of greens to their maps, one direction: one population or two, one
 * variogram for greens built alike, then each green by itself, with what its map is good for.
 */
package org.mottle.engine.mapping;
