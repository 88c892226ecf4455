package org.mottle.samples.picture;

import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import org.locationtech.jts.awt.ShapeWriter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;

/**
 * From metres to pixels: east is right, north is up.
 *
 * @param centre what lies in the middle of the frame, m
 * @param frame pixels
 * @param pixelsPerM scale
 */
record Ground(Coordinate centre, Rectangle frame, double pixelsPerM) {

  static Ground of(Geometry outline, Rectangle frame, double pixelsPerM) {
    Envelope extent = outline.getEnvelopeInternal();
    return new Ground(extent.centre(), frame, pixelsPerM);
  }

  Point2D pixel(double x, double y) {
    return new Point2D.Double(
        frame.getCenterX() + (x - centre.x) * pixelsPerM,
        frame.getCenterY() - (y - centre.y) * pixelsPerM);
  }

  Shape shape(Geometry geometry) {
    ShapeWriter writer = new ShapeWriter((at, pixel) -> pixel.setLocation(pixel(at.x, at.y)));
    return new Path2D.Double(writer.toShape(geometry));
  }
}
