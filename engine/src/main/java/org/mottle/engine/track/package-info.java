/** Positions of readings out of a receiver's track, by their times. */
package org.mottle.engine.track;
