/**
 * From the working CRS to the grid of a site, and from the survey to an image: small fits over
 * points known in both.
 */
package org.mottle.engine.localgrid;
