/**
 * Floor 0: symmetric positive definite systems, many right-hand sides at once, with an estimate of
 * the condition.
 */
package org.mottle.engine.solve;
