package org.mottle.engine.water;

import org.mottle.engine.interval.Interval;

/**
 * Water that a piece of ground wants, with 90 % intervals from the realisations.
 *
 * @param depthMm mean depth that reaches the roots, passes not counted, mm
 * @param litres to be given in one pass, losses included, L
 * @param passes that bring the whole depth, at least 1; 0 where nothing is wanted
 */
public record WaterWanted(Interval depthMm, Interval litres, int passes) {}
