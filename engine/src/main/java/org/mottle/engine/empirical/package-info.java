/** Floor 1: lag bins, estimators and experimental variograms of one or several groups of points. */
package org.mottle.engine.empirical;
