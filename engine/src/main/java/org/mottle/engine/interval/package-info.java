/** Floor 0: figures with their intervals. */
package org.mottle.engine.interval;
