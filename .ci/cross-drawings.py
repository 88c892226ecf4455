#!/usr/bin/env python3
"""Drawings of a delivery read by GDAL: DXF against the layers, overlays and KMZ against the greens.

    cross-drawings.py DELIVERY DRAWINGS

Every opaque pixel must lie on its green to within half a pixel and half a metre, and the middle of all
on the middle of the green to within half a pixel.
"""

import glob
import math
import os
import re
import sys
import zipfile

from osgeo import gdal, ogr, osr

gdal.UseExceptions()
ogr.UseExceptions()
passed = 0
faults = []


def check(good, what):
    global passed
    passed += bool(good)
    if not good:
        faults.append(what)


def polygons(geometry):
    """Rings live as long as what they belong to: areas of all rings of a polygon or several."""
    parts = (
        [geometry.GetGeometryRef(i).Clone() for i in range(geometry.GetGeometryCount())]
        if geometry.GetGeometryName() == "MULTIPOLYGON"
        else [geometry]
    )
    return [abs(p.GetGeometryRef(k).GetArea()) for p in parts for k in range(p.GetGeometryCount())]


def rings(path, layer):
    """Area enclosed by the closed lines of a layer; holes count as what they enclose."""
    areas = []
    drawing = ogr.Open(path)
    for feature in drawing.GetLayer("entities"):
        if feature["Layer"] == layer:
            line = feature.GetGeometryRef()
            if line.GetGeometryName() in ("LINESTRING", "POLYGON"):
                if line.GetGeometryName() == "LINESTRING":
                    ring = ogr.Geometry(ogr.wkbLinearRing)
                    for i in range(line.GetPointCount()):
                        ring.AddPoint_2D(*line.GetPoint_2D(i))
                    ring.CloseRings()
                    area = ogr.Geometry(ogr.wkbPolygon)
                    area.AddGeometry(ring)
                else:
                    area = line
                areas.append(area.GetArea())
    return areas


def main(delivery, drawings):
    package = ogr.Open(os.path.join(delivery, "mottle.gpkg"))
    greens = {}
    for f in package.GetLayer("green"):
        greens[f["green_id"]] = f.GetGeometryRef().Clone()
    working = package.GetLayer("green").GetSpatialRef().Clone()
    working.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)

    drawn = rings(os.path.join(drawings, "dxf", "site.dxf"), "GREEN")
    wanted = [area for g in greens.values() for area in polygons(g)]
    check(len(drawn) == len(wanted), f"site.dxf: {len(drawn)} outlines of greens, wanted {len(wanted)}")
    for a, b in zip(sorted(drawn), sorted(wanted)):
        check(abs(a - b) <= 1e-6 * b, f"site.dxf: an outline encloses {a}, wanted {b}")
    for dxf in glob.glob(os.path.join(drawings, "dxf", "survey_*.dxf")):
        if dxf.endswith("_local.dxf"):
            continue
        for kind in ("dry", "wet"):
            rows = [f.GetGeometryRef().Clone() for f in package.GetLayer("patch") if f["kind"] == kind]
            outer = sorted(area for g in rows for area in polygons(g))
            seen = sorted(rings(dxf, "PATCH_" + kind.upper()))
            check(len(seen) == len(outer), f"{dxf}: {len(seen)} rings of {kind} patches, wanted {len(outer)}")
            for a, b in zip(seen, outer):
                check(abs(a - b) <= 1e-6 * b + 1e-6, f"{dxf}: a {kind} patch encloses {a}, wanted {b}")

    overlays = glob.glob(os.path.join(drawings, "overlay", "*.tif"))
    check(overlays, "no overlays")
    boxes = {}
    for path in overlays:
        name = os.path.basename(path)[:-4]
        green = greens[name.split("_")[0]]
        raster = gdal.Open(path)
        check(raster.RasterCount == 4, f"{name}.tif: {raster.RasterCount} bands, wanted 4")
        place = raster.GetGeoTransform()
        alpha = raster.GetRasterBand(4).ReadAsArray()
        reach = place[1] * math.sqrt(0.5) + 0.5
        near = green.Buffer(reach)
        rows, columns = alpha.nonzero()
        check(len(rows) > 0, f"{name}.tif: nothing is drawn")
        for row, column in list(zip(rows, columns))[:: max(1, len(rows) // 400)]:
            point = ogr.Geometry(ogr.wkbPoint)
            point.AddPoint_2D(place[0] + (column + 0.5) * place[1], place[3] + (row + 0.5) * place[5])
            check(near.Contains(point), f"{name}.tif: pixel {row}, {column} is drawn off its green")
        middle = green.Centroid()
        off = (
            place[0] + (columns.mean() + 0.5) * place[1] - middle.GetX(),
            place[3] + (rows.mean() + 0.5) * place[5] - middle.GetY(),
        )
        check(
            max(map(abs, off)) < place[1] / 2,
            f"{name}.tif: the middle of what is drawn lies {off[0]:.3f}, {off[1]:.3f} m off the green's",
        )
        share = len(rows) * place[1] * -place[5] / green.GetArea()
        check(0.9 < share < 1.1, f"{name}.tif: {share:.2f} of the green is drawn")
        world = [float(v) for v in open(path[:-4] + ".pgw").read().split()]
        first = (place[0] + place[1] / 2, place[3] + place[5] / 2)
        check(
            abs(world[0] - place[1]) < 1e-9 and abs(world[4] - first[0]) < 1e-6 and abs(world[5] - first[1]) < 1e-6,
            f"{name}.pgw does not lie as {name}.tif does",
        )
        picture = gdal.Open(path[:-4] + ".png")
        check(
            (picture.RasterXSize, picture.RasterYSize) == (raster.RasterXSize, raster.RasterYSize),
            f"{name}.png is not of the size of {name}.tif",
        )
        boxes[name] = (green, place[1])

    degrees = osr.SpatialReference()
    degrees.ImportFromEPSG(4326)
    degrees.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
    back = osr.CoordinateTransformation(degrees, working)
    archives = glob.glob(os.path.join(drawings, "kmz", "*.kmz"))
    check(archives, "no KMZ")
    for path in archives:
        archive = zipfile.ZipFile(path)
        text = archive.read("doc.kml").decode("utf-8")
        overlay = re.compile(
            r"<href>pictures/(\w[^<]*)\.png</href></Icon>\s*<LatLonBox><north>([^<]+)</north><south>([^<]+)"
            r"</south><east>([^<]+)</east><west>([^<]+)</west>"
        )
        found = overlay.findall(text)
        check(found, f"{path}: no overlay")
        for name, north, south, east, west in found:
            north, south, east, west = map(float, (north, south, east, west))
            gdal.FileFromMemBuffer("/vsimem/p.png", archive.read(f"pictures/{name}.png"))
            picture = gdal.Open("/vsimem/p.png")
            alpha = picture.GetRasterBand(picture.RasterCount).ReadAsArray()
            green, cell = boxes[name]
            high, wide = alpha.shape
            rows, columns = alpha.nonzero()
            pixel = max((north - south) / high * 111320, (east - west) / wide * 74500)
            x, y, _ = back.TransformPoint(
                west + (columns.mean() + 0.5) * (east - west) / wide,
                north - (rows.mean() + 0.5) * (north - south) / high,
            )
            middle = green.Centroid()
            check(
                max(abs(x - middle.GetX()), abs(y - middle.GetY())) < cell / 2,
                f"{path}, {name}: the middle of what is drawn lies {x - middle.GetX():.3f},"
                f" {y - middle.GetY():.3f} m off the green's",
            )
            near = green.Buffer(pixel * math.sqrt(0.5) + cell * math.sqrt(0.5) + 0.5)
            for row, column in list(zip(rows, columns))[:: max(1, len(rows) // 200)]:
                x, y, _ = back.TransformPoint(
                    west + (column + 0.5) * (east - west) / wide, north - (row + 0.5) * (north - south) / high
                )
                point = ogr.Geometry(ogr.wkbPoint)
                point.AddPoint_2D(x, y)
                check(near.Contains(point), f"{path}, {name}: pixel {row}, {column} is drawn off its green")

    for fault in faults[:20]:
        print("FAILED", fault)
    print(f"drawings: {passed} passed, {len(faults)} failed")
    return 1 if faults or not passed else 0


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit("usage: cross-drawings.py DELIVERY DRAWINGS")
    sys.exit(main(sys.argv[1], sys.argv[2]))
