/**
 * Floor 0: sets of point observations with their errors, of measurement, of position and in common,
 * and what to do when two share a place.
 */
package org.mottle.engine.observation;
