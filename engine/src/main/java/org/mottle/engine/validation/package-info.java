/**
 * Floor 3: how well a method predicts the observations it has not seen, and whether it is as sure
 * of them as it says.
 */
package org.mottle.engine.validation;
