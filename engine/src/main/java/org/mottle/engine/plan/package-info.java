/**
 * Floor 3: where to read: the stations that would tell most after a survey, the places round a spot
 * too small to outline, and the order in which to walk them.
 */
package org.mottle.engine.plan;
