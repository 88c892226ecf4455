/** How many readings, and what they could tell, before any is taken. */
package org.mottle.engine.precision;
