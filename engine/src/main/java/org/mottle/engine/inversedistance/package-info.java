/** Floor 2: inverse distance weighting, where the readings do not carry a variogram. */
package org.mottle.engine.inversedistance;
