/** Variogram models as JSON: what {@code variogram} writes and {@code estimate} reads. */
package org.mottle.export.model;
