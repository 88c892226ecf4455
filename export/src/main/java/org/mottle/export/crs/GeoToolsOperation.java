package org.mottle.export.crs;

import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.operation.CoordinateOperation;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.operation.AbstractCoordinateOperation;
import org.mottle.export.problem.InputRefused;

/** The operation GeoTools finds best between two systems, x east and y north in both. */
final class GeoToolsOperation implements CrsTransform.Step {
  private final MathTransform transform;
  private final double accuracyM;

  private GeoToolsOperation(MathTransform transform, double accuracyM) {
    this.transform = transform;
    this.accuracyM = accuracyM;
  }

  static GeoToolsOperation between(Crs from, Crs to) {
    EpsgDatabase.quiet();
    try {
      CoordinateOperation operation =
          CRS.getCoordinateOperationFactory(true)
              .createOperation(EpsgDatabase.decode(from.epsg()), EpsgDatabase.decode(to.epsg()));
      double accuracy = AbstractCoordinateOperation.getAccuracy(operation);
      return new GeoToolsOperation(
          operation.getMathTransform(), Double.isNaN(accuracy) ? 0 : accuracy);
    } catch (FactoryException e) {
      throw new InputRefused("no way is known from %s to %s; name another CRS".formatted(from, to));
    }
  }

  /** Standard error of the change of datum, m; 0 when there is none or none is stated. */
  double accuracyM() {
    return accuracyM;
  }

  @Override
  public boolean apply(double[] xy) {
    try {
      transform.transform(xy, 0, xy, 0, 1);
      return true;
    } catch (TransformException e) {
      return false;
    }
  }
}
