#!/usr/bin/env python3
"""Opens delivered folders with QGIS and checks that every layer comes up in its default style.

usage: QT_QPA_PLATFORM=offscreen /usr/bin/python3 .ci/cross-style.py [--pictures FOLDER] FOLDER...
(needs Debian's python3-qgis). Prints each failure and, last, "N passed, N failed"; exits 1 on any
failure or when nothing was drawn.
"""
import json
import os
import sqlite3
import sys
import tempfile
import xml.etree.ElementTree as ElementTree
from contextlib import closing

from qgis.core import (
    QgsApplication,
    QgsMapRendererParallelJob,
    QgsMapSettings,
    QgsRasterLayer,
    QgsRectangle,
    QgsSettings,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QSize
from qgis.PyQt.QtGui import QColor

WITHOUT = {"terrain"}  # points of a grid: their rasters are drawn
RASTERS_WITHOUT = ("_z.tif",)


class Tally:
    def __init__(self):
        self.passed, self.failed, self.where = 0, 0, ""

    def check(self, ok, what):
        if ok:
            self.passed += 1
        else:
            self.failed += 1
            print(f"FAILED {self.where}: {what}")

    def equal(self, found, wanted, what):
        self.check(found == wanted, f"{what} is {found!r}, wanted {wanted!r}")


T = Tally()


def expected(qml):
    """Type of the renderer, and its classes as (value or lower end, label), read from the XML itself."""
    renderer = ElementTree.fromstring(qml).find("renderer-v2")
    kind = renderer.get("type")
    if kind == "categorizedSymbol":
        return kind, [(c.get("value"), c.get("label")) for c in renderer.iter("category")]
    if kind == "graduatedSymbol":
        return kind, [(float(r.get("lower")), r.get("label")) for r in renderer.iter("range")]
    return kind, []


def found_in(renderer):
    kind = renderer.type()
    if kind == "categorizedSymbol":
        return kind, [(str(c.value()), c.label()) for c in renderer.categories()]
    if kind == "graduatedSymbol":
        return kind, [(r.lowerValue(), r.label()) for r in renderer.ranges()]
    return kind, []


def check_renderer(layer, qml):
    T.equal(found_in(layer.renderer()), expected(qml), "renderer and classes")
    root = ElementTree.fromstring(qml)
    T.equal(layer.labelsEnabled(), root.get("labelsEnabled") == "1", "labels")
    if layer.labelsEnabled():
        settings = layer.labeling().settings()
        T.equal(settings.fieldName, root.find(".//text-style").get("fieldName"), "field of the label")


def check_covered(layer, name):
    """Every feature with a value of the class field belongs to a class that is drawn."""
    renderer = layer.renderer()
    if renderer.type() != "categorizedSymbol":
        return
    field = renderer.classAttribute()
    classes = {str(c.value()) for c in renderer.categories()}
    if classes & {"", "NULL", "None"}:
        return  # one class takes the rest
    values = {str(f[field]) for f in layer.getFeatures() if str(f[field]) != "NULL"}
    T.check(values <= classes, f"{name}: {field} has {sorted(values - classes)}, which no class draws")


def geopackage(folder, summary, pictures):
    path = os.path.join(folder, "mottle.gpkg")
    if not os.path.exists(path):
        return
    with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as db:
        stored = dict(db.execute("SELECT f_table_name, styleQML FROM layer_styles"))
    layers = {}
    for name, entry in summary["layers"].items():
        T.where = f"{path}, layer {name}"
        if entry["kind"] == "NONE":
            T.check(name not in stored, "a table has a style")
            continue
        T.equal(name in stored, name not in WITHOUT, "has a style")
        if name not in stored:
            continue
        # loads the default style, as a person's first look does
        layer = QgsVectorLayer(f"{path}|layername={name}", name, "ogr")
        T.check(layer.isValid(), "cannot be opened")
        message, loaded = layer.loadDefaultStyle()
        T.check(loaded, f"default style: {message}")
        check_renderer(layer, stored[name])
        check_covered(layer, name)
        count, ids, names, _, _ = layer.listStylesInDatabase()
        T.check(count >= 1 and names[0] == name, f"styles in the database: {count}, {names}")
        layers[name] = layer
    for wanted in (["patch", "zone"], ["spot", "reading", "patch", "zone"]):
        shown = [layers[n] for n in wanted if n in layers and layers[n].featureCount()]
        if "zone" in layers and shown:
            picture(folder, shown, layers["zone"], "-".join(wanted), pictures)


def picture(folder, shown, zone, title, pictures):
    """Zones and patches of one green and survey: several of the class colours are seen in the picture."""
    first = max(zone.getFeatures(), key=lambda f: len({g["cls_no"] for g in zone.getFeatures() if (g["green_id"], g["surv_id"]) == (f["green_id"], f["surv_id"])}))
    for layer in shown:
        layer.setSubsetString(f"\"green_id\" = '{first['green_id']}' AND \"surv_id\" = '{first['surv_id']}'")
    extent = QgsRectangle(zone.extent()).buffered(2)
    settings = QgsMapSettings()
    settings.setLayers(shown)
    settings.setDestinationCrs(zone.crs())
    settings.setOutputSize(QSize(900, 900))
    settings.setOutputDpi(120)
    settings.setBackgroundColor(QColor("white"))
    settings.setExtent(extent)
    job = QgsMapRendererParallelJob(settings)
    job.start()
    job.waitForFinished()
    image = job.renderedImage()
    target = os.path.join(pictures, f"{os.path.basename(folder)}-{title}.png")
    image.save(target)
    seen = {}
    for y in range(0, image.height(), 2):
        for x in range(0, image.width(), 2):
            rgb = image.pixel(x, y) & 0xFFFFFF
            seen[rgb] = seen.get(rgb, 0) + 1
    held = {str(f["cls_no"]) for f in zone.getFeatures()}
    drawn, coloured = 0, 0
    for category in zone.renderer().categories():
        if str(category.value()) in held:
            wanted = blended(category.symbol().symbolLayer(0).fillColor())
            pixels = sum(n for rgb, n in seen.items() if near(rgb, wanted))
            drawn += pixels > 20
            coloured += pixels > 20 and max(wanted) - min(wanted) > 20
    T.where = target
    T.equal(drawn, len(held), "classes whose colour is seen")
    T.check(coloured >= min(2, len(held) - 1), f"{coloured} classes in colour, the rest grey")
    for layer in shown:
        layer.setSubsetString("")


def blended(colour):
    """On white."""
    a = colour.alphaF()
    return tuple(round(255 * (1 - a) + a * c) for c in (colour.red(), colour.green(), colour.blue()))


def near(rgb, wanted):
    return all(abs(a - b) <= 3 for a, b in zip((rgb >> 16, rgb >> 8 & 255, rgb & 255), wanted))


def beside(folder, summary):
    """The style beside each file comes up by itself."""
    for place, end in (("geojson", "geojson"), ("shapefile", "shp")):
        for name, entry in summary["layers"].items():
            path = os.path.join(folder, place, f"{name}.{end}")
            T.where = path
            if entry["kind"] == "NONE" or name in WITHOUT or not os.path.exists(path):
                continue
            with open(os.path.join(folder, place, name + ".qml"), encoding="utf-8") as file:
                qml = file.read()
            layer = QgsVectorLayer(path, name, "ogr")
            # a GeoJSON without a feature has no geometry type, so nothing to draw
            if entry["rows"] and entry.get("placed"):
                check_renderer(layer, qml)
                fresh = QgsVectorLayer(path, name, "ogr")
                message, loaded = fresh.loadSldStyle(os.path.join(folder, place, name + ".sld"))
                T.check(loaded, f"SLD: {message}")
                rules = len(expected(qml)[1]) or 1
                renderer = fresh.renderer()
                children = len(renderer.rootRule().children()) if renderer.type() == "RuleRenderer" else 1
                T.equal(children, rules, "rules of the SLD")


def rasters(folder, summary):
    for entry in summary.get("rasters", []):
        path = os.path.join(folder, entry["file"])
        T.where = path
        if path.endswith(RASTERS_WITHOUT):
            continue
        layer = QgsRasterLayer(path, "raster")
        root = ElementTree.parse(path[:-4] + ".qml").getroot()
        kind = root.find("pipe/rasterrenderer").get("type")
        T.equal(layer.renderer().type(), kind, "renderer")
        if kind == "paletted":
            found = [(c.value, c.label) for c in layer.renderer().classes()]
            wanted = [(int(e.get("value")), e.get("label")) for e in root.iter("paletteEntry")]
        else:
            items = layer.renderer().shader().rasterShaderFunction().colorRampItemList()
            found = [(i.value, i.label) for i in items]
            wanted = [(float(e.get("value")), e.get("label")) for e in root.iter("item")]
        T.equal(found, wanted, "classes")


def main(arguments):
    pictures = tempfile.mkdtemp()
    if arguments[0] == "--pictures":
        pictures, arguments = arguments[1], arguments[2:]
        os.makedirs(pictures, exist_ok=True)
    QgsApplication.setPrefixPath("/usr", True)
    application = QgsApplication([], False)
    application.initQgis()
    # no write-ahead log beside the files that are looked at
    QgsSettings().setValue("/qgis/walForSqlite3", False)
    for folder in map(os.path.abspath, arguments):
        with open(os.path.join(folder, "summary.json"), encoding="utf-8") as file:
            summary = json.load(file)
        geopackage(folder, summary, pictures)
        beside(folder, summary)
        rasters(folder, summary)
    print(f"{T.passed} passed, {T.failed} failed")
    return 0 if T.passed and not T.failed else 1


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    status = main(sys.argv[1:])
    sys.stdout.flush()
    # QGIS may fall over its own plugins while it is taken down
    os._exit(status)
