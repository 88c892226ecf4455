#!/usr/bin/env python3
"""09: opens a delivery in QGIS by its own scripting, without a screen, and draws one green.

    python3 samples/open_in_qgis.py mottle-demo/mottle.gpkg picture.png [GREEN]

Needs QGIS with its Python binding (Debian: python3-qgis, run with /usr/bin/python3). The layers come
with the styles that are in the file; nothing is styled here. Ends with 1 where a layer does not open,
has no style of its own in the file, or the picture shows fewer than three colours.
"""

import os
import sys

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from qgis.core import (  # noqa: E402 - the platform is chosen before Qt is loaded
    QgsApplication,
    QgsMapRendererParallelJob,
    QgsMapSettings,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QSize  # noqa: E402
from qgis.PyQt.QtGui import QColor  # noqa: E402

DRAWN = ["reading", "patch", "zone", "green"]


def main(package, picture, wanted):
    QgsApplication.setPrefixPath("/usr", True)
    app = QgsApplication([], False)
    app.initQgis()
    faults = []
    layers = []
    for name in DRAWN:
        layer = QgsVectorLayer(f"{package}|layername={name}", name, "ogr")
        if not layer.isValid():
            faults.append(f"{name}: does not open")
            continue
        _, styled = layer.loadDefaultStyle()
        print(f"{name}: {layer.featureCount()} features, renderer {layer.renderer().type()}")
        if not styled:
            faults.append(f"{name}: no style in the file")
        layers.append(layer)
    green = next(
        f for f in layers[-1].getFeatures() if wanted is None or f["green_id"] == wanted
    )
    settings = QgsMapSettings()
    settings.setLayers(layers)
    settings.setBackgroundColor(QColor("white"))
    settings.setOutputSize(QSize(900, 900))
    settings.setExtent(green.geometry().boundingBox().buffered(3))
    settings.setDestinationCrs(layers[-1].crs())
    job = QgsMapRendererParallelJob(settings)
    job.start()
    job.waitForFinished()
    image = job.renderedImage()
    image.save(picture)
    colours = {
        image.pixelColor(x, y).name() for x in range(0, 900, 6) for y in range(0, 900, 6)
    }
    coloured = [c for c in colours if QColor(c).saturation() > 20]
    if len(coloured) < 3:
        faults.append(f"the picture shows {len(coloured)} colours")
    print(f"green {green['green_id']} drawn to {picture}")
    for fault in faults:
        print(fault, file=sys.stderr)
    del job, layers, layer
    app.exitQgis()
    return 1 if faults else 0


if __name__ == "__main__":
    if len(sys.argv) not in (3, 4):
        sys.exit("usage: open_in_qgis.py FILE.gpkg PICTURE.png [GREEN]")
    sys.exit(main(sys.argv[1], sys.argv[2], sys.argv[3] if len(sys.argv) == 4 else None))
