/**
 * Floor 1: the form of the ground from an elevation model: smoothing to its noise, slope and
 * curvature, hollows by flooding, where water gathers, flow lines and contours.
 */
package org.mottle.engine.terrain;
