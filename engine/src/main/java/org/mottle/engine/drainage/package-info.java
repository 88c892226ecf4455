/**
 * Floor 5: why a place stays wet. Seven hypotheses, what speaks for and against each, which test
 * would decide next; and whether wetness goes with the lie of the land more than chance would have
 * it. Evidence, not verdicts.
 */
package org.mottle.engine.drainage;
