/** Readings of which only the order is known, and perhaps the time, put to a plan's stations. */
package org.mottle.engine.order;
