/**
 * How many readings, and what they could tell, before any is taken: of the mean ({@link
 * org.mottle.engine.precision.SampleSize}), of the map ({@link
 * org.mottle.engine.precision.Prediction}), of spots ({@link
 * org.mottle.engine.precision.SpotDetection}). Metres and % by volume.
 */
package org.mottle.engine.precision;
