/** Floor 0: models of the variogram. {@code range()} is the parameter a of the written formula. */
package org.mottle.engine.variogram;
