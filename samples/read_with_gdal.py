#!/usr/bin/env python3
"""06: opens a delivered GeoPackage with GDAL and prints the area of each class, green by green.

    python3 samples/read_with_gdal.py mottle-demo/mottle.gpkg

Needs GDAL's Python binding (Debian: python3-gdal). Ends with 1 where the zones do not tile a green
or an area written differs from that of the polygon.
"""

import sys

from osgeo import ogr

ogr.UseExceptions()

TOLERANCE_M2 = 0.01


def main(path):
    package = ogr.Open(path)
    greens = {f["green_id"]: f.GetGeometryRef().GetArea() for f in package.GetLayer("green")}
    print("CRS:", package.GetLayer("zone").GetSpatialRef().GetName())

    tiled = {}
    wrong = []
    for zone in package.GetLayer("zone"):
        green, survey, cls = zone["green_id"], zone["surv_id"], zone["cls"]
        area = zone.GetGeometryRef().GetArea()
        print(f"green {green}, {survey}: {cls:13} {area:9.1f} m2, mean {zone['vwc_mean']:.1f} %")
        if abs(area - zone["area_m2"]) > TOLERANCE_M2:
            wrong.append(f"green {green}, {cls}: area_m2 is {zone['area_m2']}, the polygon's {area}")
        tiled[green, survey] = tiled.get((green, survey), 0) + area

    for (green, survey), area in tiled.items():
        if abs(area - greens[green]) > TOLERANCE_M2:
            wrong.append(f"green {green}, {survey}: zones {area} m2, green {greens[green]} m2")
    for line in wrong:
        print(line, file=sys.stderr)
    return 1 if wrong or not tiled else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit("usage: read_with_gdal.py FILE.gpkg")
    sys.exit(main(sys.argv[1]))
