/**
 * Floor 2: kriging of a surface or of areal means from observations and a variogram, with the
 * variance of the error and a word on how sound the system was.
 */
package org.mottle.engine.kriging;
