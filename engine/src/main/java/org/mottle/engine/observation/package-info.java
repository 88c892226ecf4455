/** Floor 0: sets of point observations and what to do when two share a place. */
package org.mottle.engine.observation;
