/**
 * Zones that tile a green by its target band, and the wet and dry patches in it, with area, width,
 * mean and the standard error of the mean.
 */
package org.mottle.engine.patch;
