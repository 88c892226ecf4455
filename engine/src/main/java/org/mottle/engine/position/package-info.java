/** Floor 1: what errors of the recorded places do to a variogram. */
package org.mottle.engine.position;
