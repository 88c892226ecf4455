package org.mottle.export.drawings;

import java.awt.image.BufferedImage;
import java.util.Optional;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Location;
import org.mottle.engine.grid.CellGrid;
import org.mottle.engine.grid.Raster;
import org.mottle.export.crs.Crs;
import org.mottle.export.crs.CrsTransform;
import org.mottle.export.write.PictureFrame;

/**
 * A map as a picture in some CRS, two pixels a cell: each pixel has the colour of the cell its
 * middle lies in, and is clear where that middle lies outside the green or the cell has no value.
 * So a picture in another CRS lies within half a pixel of the outlines carried over to it.
 *
 * @param frame where it lies
 * @param picture red, green, blue, opacity
 */
record Overlay(PictureFrame frame, BufferedImage picture) {
  private static final int PIXELS_A_CELL = 2;
  private static final int ALONG_AN_EDGE = 8;

  /** By how much pictures are moved, m of the working CRS. */
  record Shift(double east, double north) {
    static final Shift NONE = new Shift(0, 0);
  }

  /** Draws in {@code target}; the same as {@code working} needs no change of coordinates. */
  static Overlay of(
      Raster raster, Geometry green, Colouring colours, Shift shift, Crs working, Crs target) {
    CellGrid grid = raster.grid();
    boolean same = working.equals(target);
    Optional<CrsTransform> back =
        same ? Optional.empty() : Optional.of(CrsTransform.between(target, working));
    PictureFrame frame =
        same
            ? new PictureFrame(
                grid.west() + shift.east(),
                grid.north() + shift.north(),
                grid.cell() / PIXELS_A_CELL,
                grid.cell() / PIXELS_A_CELL,
                grid.columns() * PIXELS_A_CELL,
                grid.rows() * PIXELS_A_CELL)
            : frame(grid, shift, CrsTransform.between(working, target));
    IndexedPointInAreaLocator inside = new IndexedPointInAreaLocator(green);
    BufferedImage picture =
        new BufferedImage(frame.columns(), frame.rows(), BufferedImage.TYPE_INT_ARGB);
    for (int row = 0; row < frame.rows(); row++) {
      for (int column = 0; column < frame.columns(); column++) {
        Coordinate middle = new Coordinate(frame.x(column), frame.y(row));
        Coordinate at = back.isPresent() ? back.get().apply(middle) : middle;
        at = new Coordinate(at.x - shift.east(), at.y - shift.north());
        double value = value(raster, at);
        if (!Double.isNaN(value) && inside.locate(at) != Location.EXTERIOR) {
          picture.setRGB(column, row, 0xff000000 | colours.colour().applyAsInt(value));
        }
      }
    }
    return new Overlay(frame, picture);
  }

  private static double value(Raster raster, Coordinate at) {
    CellGrid grid = raster.grid();
    int column = (int) Math.floor((at.x - grid.west()) / grid.cell());
    int row = (int) Math.floor((grid.north() - at.y) / grid.cell());
    boolean within = column >= 0 && column < grid.columns() && row >= 0 && row < grid.rows();
    return within ? raster.value(row, column) : Double.NaN;
  }

  /** The box of the grid's edges in the other CRS, with pixels of about the same size. */
  private static PictureFrame frame(CellGrid grid, Shift shift, CrsTransform to) {
    Envelope box = new Envelope();
    double width = grid.columns() * grid.cell();
    double height = grid.rows() * grid.cell();
    for (int i = 0; i <= ALONG_AN_EDGE; i++) {
      for (int j = 0; j <= ALONG_AN_EDGE; j++) {
        box.expandToInclude(
            to.apply(
                new Coordinate(
                    grid.west() + shift.east() + width * i / ALONG_AN_EDGE,
                    grid.north() + shift.north() - height * j / ALONG_AN_EDGE)));
      }
    }
    int columns = grid.columns() * PIXELS_A_CELL;
    int rows = grid.rows() * PIXELS_A_CELL;
    return new PictureFrame(
        box.getMinX(),
        box.getMaxY(),
        box.getWidth() / columns,
        box.getHeight() / rows,
        columns,
        rows);
  }
}
