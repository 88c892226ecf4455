#!/usr/bin/env python3
"""Reads every file of delivered folders with GDAL and holds it against summary.json and the other formats.

usage: /usr/bin/python3 .ci/cross-read.py FOLDER...      (needs Debian's python3-gdal)
Prints each failure and, last, "N passed, N failed"; exits 1 on any failure or when nothing was read.
"""
import hashlib
import json
import math
import os
import re
import struct
import sys
from collections import Counter, defaultdict

from osgeo import gdal, ogr, osr
from osgeo_utils.samples import validate_gpkg

gdal.UseExceptions()
ogr.UseExceptions()
osr.UseExceptions()

METRIC, DEGREES = 0.01, 0.05  # m2 (m for lines) allowed between formats
SHIFT = 3e-8  # by which areas differ where two libraries change the datum, each in its own way
DATE = re.compile(r"\d{4}/\d\d/\d\d")  # how GDAL prints its date type
CHANCES = ("p_dry", "p_wet", "p_low")
MISSING = -9999  # stands for a number not recorded in a shapefile


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

    def near(self, found, wanted, tolerance, what):
        if tolerance == DEGREES:
            tolerance += SHIFT * abs(wanted)
        self.check(abs(found - wanted) <= tolerance, f"{what} is {found}, wanted {wanted} within {tolerance}")


T = Tally()


def srs_of(code):
    srs = osr.SpatialReference()
    srs.SetFromUserInput(code)
    srs.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
    return srs


def area(geometry):
    return geometry.GetArea() if geometry.GetDimension() == 2 else 0.0


def rows_of(layer):
    """Attribute values by field name, and geometry, of every feature in order."""
    definition = layer.GetLayerDefn()
    names = [definition.GetFieldDefn(i).GetName() for i in range(definition.GetFieldCount())]
    rows = []
    layer.ResetReading()
    for feature in layer:
        values = {n: feature.GetField(i) if feature.IsFieldSetAndNotNull(i) else None for i, n in enumerate(names)}
        geometry = feature.GetGeometryRef()
        rows.append((values, geometry.Clone() if geometry is not None else None))
    return names, rows


def check_layer(name, rows, wanted, tolerance, to_metres=None):
    T.equal(len(rows), wanted["rows"], f"{name}: rows")
    placed = [g for _, g in rows if g is not None]
    if "placed" in wanted:
        T.equal(len(placed), wanted["placed"], f"{name}: features with a geometry")
    for geometry in placed:
        if to_metres:
            geometry.Transform(to_metres)
    if wanted["kind"] == "AREA":
        T.near(sum(g.GetArea() for g in placed), wanted["area_m2"], tolerance, f"{name}: area")
    if wanted["kind"] == "LINE":
        T.near(sum(g.Length() for g in placed), wanted["length_m"], tolerance, f"{name}: length")
    # every area by itself, not only their sum: what one loses another must not gain
    invalid = sum(0 if g.IsValid() else 1 for g in placed)
    T.equal(invalid, 0, f"{name}: invalid geometries")


def read_geopackage(folder, summary, code):
    path = os.path.join(folder, "mottle.gpkg")
    if not os.path.exists(path):
        return {}
    T.where = path
    try:
        validate_gpkg.check(path, extra_checks=True, warning_as_error=True)
        T.check(True, "")
    except Exception as fault:  # the validator has an exception class of its own
        T.check(False, f"validate_gpkg: {fault}")
    data = gdal.OpenEx(path, gdal.OF_VECTOR)
    # the meaning of the fields and the styles are tables too
    T.equal(data.GetLayerCount(), len(summary["layers"]) + 2, "layers and tables")
    reference, srs = {}, srs_of(code)
    for name, wanted in summary["layers"].items():
        layer = data.GetLayerByName(name)
        if layer is None:
            T.check(False, f"no layer {name}")
            continue
        names, rows = rows_of(layer)
        check_layer(name, rows, wanted, METRIC)
        if wanted["kind"] == "NONE":
            T.check(layer.GetGeomType() == ogr.wkbNone, f"{name} has a geometry column")
        else:
            T.check(layer.GetSpatialRef().IsSame(srs), f"{name}: CRS is not {code}")
            placed = [g for _, g in rows if g is not None]
            if placed:
                boxes = [g.GetEnvelope() for g in placed]
                box = (min(b[0] for b in boxes), max(b[1] for b in boxes), min(b[2] for b in boxes), max(b[3] for b in boxes))
                # GDAL reads the stored extent with 15 digits
                T.check(all(abs(a - b) < 1e-6 for a, b in zip(layer.GetExtent(), box)), f"{name}: extent {layer.GetExtent()}, not {box}")
                layer.SetSpatialFilterRect(box[0], box[2], box[1], box[3])
                T.equal(layer.GetFeatureCount(), len(placed), f"{name}: features found by the index")
        for field in names:
            T.check(len(field) <= 10 and field.isascii() and field == field.lower(), f"{name}: field name {field}")
        reference[name] = (names, rows)
    return reference


def same(format_name, value, reference, decimals):
    if reference is None:
        if format_name == "shapefile":
            return value in (None, "", MISSING)
        return value is None
    if isinstance(reference, float):
        # half a unit of the last decimal, and the last bit of a number with many digits
        return value is not None and abs(value - reference) <= 0.5000001 * 10 ** -decimals + 1e-15 * abs(reference)
    if isinstance(reference, str) and format_name == "shapefile" and len(reference.encode()) > 254:
        return isinstance(value, str) and len(value) > 0 and reference.startswith(value)
    if isinstance(reference, str) and DATE.fullmatch(reference) and isinstance(value, str):
        return value.replace("-", "/") == reference
    return value == reference


def compare_values(name, format_name, names, rows, reference, decimals):
    if name not in reference or not rows:
        return
    T.equal(names, reference[name][0], f"{name}: fields")
    for number, ((values, geometry), (wanted, other)) in enumerate(zip(rows, reference[name][1]), 1):
        different = [
            f"{f}={values.get(f)!r} instead of {wanted[f]!r}"
            for f in wanted
            if not same(format_name, values.get(f), wanted[f], decimals.get(f, 3))
        ]
        T.check(not different, f"{name} row {number}: {'; '.join(different)}")
        T.equal(geometry is None, other is None, f"{name} row {number}: no geometry")
        if geometry is not None and other is not None and ogr.GT_Flatten(other.GetGeometryType()) in (ogr.wkbPolygon, ogr.wkbMultiPolygon):
            T.near(geometry.GetArea(), other.GetArea(), METRIC if format_name == "shapefile" else DEGREES, f"{name} row {number}: area")


def read_shapefiles(folder, summary, code, reference):
    place = os.path.join(folder, "shapefile")
    if not os.path.isdir(place):
        return
    srs = srs_of(code)
    for name, wanted in summary["layers"].items():
        table = wanted["kind"] == "NONE"
        T.where = os.path.join(place, name + (".dbf" if table else ".shp"))
        data = gdal.OpenEx(T.where, gdal.OF_VECTOR)
        layer = data.GetLayer(0)
        names, rows = rows_of(layer)
        check_layer(name, rows, wanted, METRIC)
        T.equal(open(os.path.join(place, name + ".cpg")).read(), "UTF-8", f"{name}.cpg")
        decimals = {}
        for i in range(layer.GetLayerDefn().GetFieldCount()):
            field = layer.GetLayerDefn().GetFieldDefn(i)
            decimals[field.GetName()] = field.GetPrecision()
        if not table:
            T.check(layer.GetSpatialRef() is not None and layer.GetSpatialRef().IsSame(srs), f"{name}.prj is not {code}")
        compare_values(name, "shapefile", names, rows, reference, decimals)


def winding_faults(geometry):
    if geometry is None or "Polygon" not in geometry["type"]:
        return 0
    polygons = [geometry["coordinates"]] if geometry["type"] == "Polygon" else geometry["coordinates"]
    faults = 0
    for polygon in polygons:
        for index, ring in enumerate(polygon):
            x0, y0 = ring[0]
            twice = sum((a[0] - x0) * (b[1] - y0) - (b[0] - x0) * (a[1] - y0) for a, b in zip(ring, ring[1:]))
            faults += ring[0] != ring[-1] or len(ring) < 4 or (twice > 0) != (index == 0)
    return faults


def read_geojson(folder, summary, code, reference):
    place = os.path.join(folder, "geojson")
    if not os.path.isdir(place):
        return
    wgs84, srs = srs_of("EPSG:4326"), srs_of(code)
    to_metres = osr.CoordinateTransformation(wgs84, srs)
    for name, wanted in summary["layers"].items():
        T.where = os.path.join(place, name + ".geojson")
        with open(T.where, encoding="utf-8") as file:
            plain = json.load(file)
        T.check("crs" not in plain, "has a crs member")
        T.equal(plain["prov"]["run_id"], summary["prov"]["run_id"], "run_id in prov")
        T.equal(sum(winding_faults(f["geometry"]) for f in plain["features"]), 0, "rings of the wrong direction")
        # as written: GDAL would otherwise make its own date type of any text that looks like one
        data = gdal.OpenEx(T.where, gdal.OF_VECTOR, open_options=["DATE_AS_STRING=YES"])
        layer = data.GetLayer(0)
        T.equal(layer.GetName(), name, "layer name")
        if layer.GetSpatialRef() is not None:
            T.check(layer.GetSpatialRef().IsSame(wgs84), "CRS is not WGS 84")
        names, rows = rows_of(layer)
        check_layer(name, rows, wanted, DEGREES, to_metres)
        # a column without a single value may be any type, and every number has 3 decimals or more
        compare_values(name, "geojson", names, rows, reference, defaultdict(lambda: 3, root_mm=1, rod_mm=1, soil_c=2))


def read_rasters(folder, summary, code, reference):
    srs = srs_of(code)
    expected = summary.get("expected_cells", {})
    found = defaultdict(dict)
    for wanted in summary.get("rasters", []):
        T.where = os.path.join(folder, wanted["file"])
        data = gdal.Open(T.where)
        band = data.GetRasterBand(1)
        byte = wanted["kind"] == "cls"
        cell = wanted["cell_m"]
        T.equal((data.RasterXSize, data.RasterYSize), (wanted["columns"], wanted["rows"]), "size")
        T.equal(data.GetGeoTransform(), (wanted["west"], cell, 0.0, wanted["north"], 0.0, -cell), "corner and cell")
        T.check(data.GetSpatialRef() is not None and data.GetSpatialRef().IsSame(srs), f"CRS is not {code}")
        T.equal(data.GetMetadataItem("AREA_OR_POINT"), "Area", "pixel is")
        T.equal(data.GetMetadataItem("run_id"), summary["prov"]["run_id"], "run_id")
        T.equal(data.GetMetadataItem("green_id"), wanted["green_id"], "green_id")
        T.equal(json.loads(data.GetMetadataItem("prov"))["seed"], summary["prov"]["seed"], "seed in prov")
        T.equal(gdal.GetDataTypeName(band.DataType), "Byte" if byte else "Float32", "type of a cell")
        T.equal(band.GetNoDataValue(), 255.0 if byte else -9999.0, "no-data")
        cells = cells_of(band)
        T.equal(sum(v is not None for v in cells), wanted["cells"], "cells with a value")
        T.check(not any(v is not None and math.isnan(v) for v in cells), "NaN in cells")
        if wanted["kind"] in expected:
            T.equal(cells, expected[wanted["kind"]], "cells")
        if wanted["kind"] in CHANCES:
            T.check(all(v is None or 0 <= v <= 1 for v in cells), "a probability outside 0 to 1")
        found[(wanted["green_id"], wanted["surv_id"])][wanted["kind"]] = cells
        if byte:
            compare_classes(cells, wanted, reference)
    for key, kinds in found.items():
        T.where = os.path.join(folder, f"raster, green {key[0]}, survey {key[1]}")
        compare_chances(kinds, key, reference)


def compare_chances(kinds, key, reference):
    """Classes follow from the probabilities and nothing else but the limit of the SD (class 6)."""
    if "p_dry" not in kinds:
        return
    odd, least_unknown, most_known = 0, math.inf, 0.0
    for dry, wet, sd, cls in zip(kinds["p_dry"], kinds["p_wet"], kinds["sd"], kinds["cls"]):
        T.equal({dry is None, wet is None, sd is None, cls is None}, {dry is None}, "cells with and without a value")
        if dry is None:
            continue
        band = 1 - dry - wet
        if min(abs(p - limit) for p, limit in ((dry, 0.8), (dry, 0.5), (wet, 0.8), (wet, 0.5), (band, 0.8), (band, 0.45))) < 1e-6:
            continue  # float32 may fall on the other side
        sure = 1 if dry > 0.8 else 5 if wet > 0.8 else 3 if band > 0.8 else 0
        likely = 2 if dry > 0.5 else 4 if wet > 0.5 else 3 if band > 0.45 else 6
        odd += cls != sure if sure else cls not in (likely, 6)
        if not sure and likely != 6:
            least_unknown = min(least_unknown, sd) if cls == 6 else least_unknown
            most_known = max(most_known, sd) if cls != 6 else most_known
    T.equal(odd, 0, "cells whose class is not that of their probabilities")
    T.check(least_unknown >= most_known - 1e-5, f"no one limit of the SD: told at {most_known}, not told at {least_unknown}")
    # the expected area of the row of the survey is the sum of the probabilities, where no second population is mapped apart
    for values, _ in reference.get("survey", ([], []))[1]:
        if (values["green_id"], values["surv_id"] or "") == key and values["pop"] != "apart":
            for kind in ("dry", "wet"):
                cells = [v for v in kinds["p_" + kind] if v is not None]
                total = sum(cells) * values["cell_m"] ** 2
                # cells cut by the outline count whole here and by their covered part there
                T.near(total, values[kind + "_exp"], 1 + 0.1 * total, f"sum of p_{kind}")


def cells_of(band):
    letter = "B" if band.DataType == gdal.GDT_Byte else "f"
    size = band.XSize * band.YSize
    raw = struct.unpack(f"={size}{letter}", band.ReadRaster(0, 0, band.XSize, band.YSize))
    nodata = band.GetNoDataValue()
    return [None if v == nodata else v for v in raw]


def compare_classes(cells, wanted, reference):
    """Cell centres against the zones of the same green and survey: a turned or shifted raster shows."""
    zones = [
        (values["cls_no"], geometry)
        for values, geometry in reference.get("zone", ([], []))[1]
        if geometry is not None and values["green_id"] == wanted["green_id"] and (values["surv_id"] or "") == wanted["surv_id"]
    ]
    filled = [i for i, v in enumerate(cells) if v is not None]
    if not zones or len(filled) < 50:
        return
    step = max(1, len(filled) // 400)
    inside, agreed = 0, 0
    for i in filled[::step]:
        point = ogr.Geometry(ogr.wkbPoint)
        point.AddPoint_2D(
            wanted["west"] + (i % wanted["columns"] + 0.5) * wanted["cell_m"],
            wanted["north"] - (i // wanted["columns"] + 0.5) * wanted["cell_m"],
        )
        for number, geometry in zones:
            if geometry.Contains(point):
                inside += 1
                agreed += number == cells[i]
    T.check(inside and agreed >= 0.95 * inside, f"{agreed} of {inside} cells agree with the zones")


def segments(geometry):
    """Every segment of every ring, without direction."""
    found = Counter()
    for i in range(geometry.GetGeometryCount()):
        part = geometry.GetGeometryRef(i)
        if part.GetGeometryCount():
            found += segments(part)
        else:
            points = part.GetPoints()
            for a, b in zip(points, points[1:]):
                a, b = a[:2], b[:2]
                found[(a, b) if a <= b else (b, a)] += 1
    return found


def check_tiling(folder, reference):
    """Zones of a green and survey: no overlap, no gap, shared edges the same vertex for vertex."""
    greens = {v["green_id"]: g for v, g in reference.get("green", ([], []))[1] if g is not None}
    groups = defaultdict(list)
    for values, geometry in reference.get("zone", ([], []))[1]:
        if geometry is not None:
            groups[(values["green_id"], values["surv_id"])].append(geometry)
    T.where = os.path.join(folder, "mottle.gpkg")
    for key, zones in groups.items():
        green = greens.get(key[0])
        if green is None:
            T.check(False, f"zones of {key} have no green")
            continue
        T.near(sum(z.GetArea() for z in zones), green.GetArea(), METRIC, f"zones of {key}: sum of areas")
        overlap = sum(area(a.Intersection(b)) for i, a in enumerate(zones) for b in zones[i + 1:])
        T.near(overlap, 0, 1e-6, f"zones of {key}: overlap, m2")
        gap = area(green.Difference(union(zones)))
        T.near(gap, 0, METRIC, f"zones of {key}: gap, m2")
        edges = sum((segments(z) for z in zones), Counter())
        outer = sum(math.dist(*edge) for edge, count in edges.items() if count == 1)
        T.check(max(edges.values()) <= 2, f"zones of {key}: an edge belongs to more than two")
        T.near(outer, green.Boundary().Length(), METRIC, f"zones of {key}: length of the edges that are not shared")


def check_marks(folder, reference):
    """Core within patch within envelope within green; symbols and stations to be read inside their green."""
    T.where = os.path.join(folder, "mottle.gpkg")
    greens = {v["green_id"]: g for v, g in reference.get("green", ([], []))[1] if g is not None}
    patches = {key_of(v): g for v, g in reference.get("patch", ([], []))[1]}
    for name, inner in (("core", True), ("envel", False)):
        for values, geometry in reference.get(name, ([], []))[1]:
            patch = patches.get(key_of(values))
            if patch is None:
                T.check(False, f"{name} {key_of(values)} belongs to no patch")
                continue
            outside = geometry.Difference(patch) if inner else patch.Difference(geometry)
            # snap rounding may move a shared edge
            T.near(area(outside), 0, 1e-3, f"{name} {key_of(values)}: ground on the wrong side of the patch")
            T.near(area(geometry.Difference(greens[values["green_id"]])), 0, 1e-3, f"{name} {key_of(values)}: ground outside the green")
            T.near(geometry.GetArea(), values["area_m2"], METRIC, f"{name} {key_of(values)}: area")
    for values, geometry in reference.get("patch", ([], []))[1]:
        known = [values[f] for f in ("area_lo", "area_exp", "area_hi")]
        T.check(None in known or known == sorted(known), f"patch {key_of(values)}: area {known}")
    stations = {(v["green_id"], v["surv_id"], v["st_id"]) for v, _ in reference.get("reading", ([], []))[1] if v["used"]}
    for values, geometry in reference.get("spot", ([], []))[1]:
        T.check(values["kind"] in ("dry", "wet", "repel") and values["mapbl"] == 0, f"spot of kind {values['kind']}")
        T.check((values["green_id"], values["surv_id"], values["st_id"]) in stations, f"spot at station {values['st_id']}")
        # a station may have been read a little outside
        T.check(geometry.Distance(greens[values["green_id"]]) < 5, f"spot {values['st_id']} far from its green")
    ranks = defaultdict(list)
    for values, geometry in reference.get("nextst", ([], []))[1]:
        T.check(greens[values["green_id"]].Contains(geometry), f"nextst {values['rank']} outside green {values['green_id']}")
        ranks[(values["green_id"], values["surv_id"])].append((values["rank"], values["walk"]))
    for key, found in ranks.items():
        T.equal([r for r, _ in found], list(range(1, len(found) + 1)), f"ranks of {key}")
        T.equal(sorted(w for _, w in found), list(range(1, len(found) + 1)), f"walk of {key}")


def key_of(values):
    return values["green_id"], values["surv_id"], values["patch_id"]


def union(zones):
    whole = zones[0]
    for zone in zones[1:]:
        whole = whole.Union(zone)
    return whole


def check_files(folder, summary):
    T.where = folder
    for path, wanted in summary["files"].items():
        with open(os.path.join(folder, path), "rb") as file:
            content = file.read()
        T.equal((len(content), hashlib.sha256(content).hexdigest()), (wanted["bytes"], wanted["sha256"]), path)


def main(folders):
    gdal.SetConfigOption("GDAL_PAM_ENABLED", "NO")  # leave no files beside those delivered
    for folder in folders:
        with open(os.path.join(folder, "summary.json"), encoding="utf-8") as file:
            summary = json.load(file)
        code = summary["prov"]["crs_code"]
        check_files(folder, summary)
        reference = read_geopackage(folder, summary, code)
        read_shapefiles(folder, summary, code, reference)
        read_geojson(folder, summary, code, reference)
        read_rasters(folder, summary, code, reference)
        check_tiling(folder, reference)
        check_marks(folder, reference)
    print(f"{T.passed} passed, {T.failed} failed")
    return 0 if T.passed and not T.failed else 1


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1:]))
