/** Floor 2: models of the variogram fitted to experimental variograms by weighted least squares. */
package org.mottle.engine.fit;
