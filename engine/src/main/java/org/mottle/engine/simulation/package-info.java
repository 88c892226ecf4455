/**
 * Floor 3: conditional realisations of the surface on the cells of a green, by Matheron's rule from
 * Gaussian fields on a lattice, and the exact mixture of their distributions over draws of the
 * parameters.
 */
package org.mottle.engine.simulation;
