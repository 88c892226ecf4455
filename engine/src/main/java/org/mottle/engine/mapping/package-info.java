/**
 * Floor 5: from the readings of greens to their maps, one direction: one variogram, then each green
 * by itself.
 */
package org.mottle.engine.mapping;
