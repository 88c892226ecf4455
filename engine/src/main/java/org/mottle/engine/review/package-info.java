/**
 * Whether the readings of a survey can be trusted and compared: what was found, how the values were
 * adjusted and with what uncertainty, and a grade. Nothing is dropped in silence, and nothing for
 * being extreme.
 */
package org.mottle.engine.review;
