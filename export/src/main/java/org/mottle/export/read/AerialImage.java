package org.mottle.export.read;

import org.locationtech.jts.geom.Envelope;

/**
 * An aerial image of the user's own, in the working CRS, cut to the ground that is mapped and made
 * small enough for a page.
 *
 * @param name of the file
 * @param dataUri the picture itself
 * @param extent its outer edges, m
 * @param note what was done to it
 */
public record AerialImage(String name, String dataUri, Envelope extent, String note) {}
