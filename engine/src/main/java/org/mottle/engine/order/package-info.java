/**
 * Readings of which only the order is known, and perhaps the time, put to the stations of a plan or
 * along a line.
 */
package org.mottle.engine.order;
