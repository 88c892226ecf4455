/**
 * One variogram from many small surveys: restricted maximum likelihood over all greens of a kind
 * and all their surveys, each with its own mean, with the parameters that the readings leave open
 * drawn from what they leave open. Knows position error and replicate insertions.
 */
package org.mottle.engine.likelihood;
