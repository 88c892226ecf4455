/**
 * Floor 6: several surveys of the same greens: what changed between two of them, how fast the
 * ground dried, and what a repair did.
 */
package org.mottle.engine.season;
