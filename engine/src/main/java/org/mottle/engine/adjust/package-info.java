/**
 * Readings made comparable: drying while a survey lasts, offsets between operators. Every
 * adjustment is listed with its standard error, which goes into the kriging as an error in common.
 */
package org.mottle.engine.adjust;
