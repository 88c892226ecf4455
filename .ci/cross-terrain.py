"""Compares the rasters in a folder, as .ci/cross-terrain.sh lays them out; exits 1 on a difference."""
import csv
import sys

import numpy as np
from osgeo import gdal

gdal.UseExceptions()
if sys.argv[1] == "--ring":  # the outermost cells 10 m below all others
    source = gdal.Open(sys.argv[2])
    z = source.ReadAsArray()
    low = z.min() - 10
    z[0, :] = z[-1, :] = z[:, 0] = z[:, -1] = low
    copy = gdal.GetDriverByName("GTiff").CreateCopy(sys.argv[3], source)
    copy.GetRasterBand(1).WriteArray(z)
    copy = None
    sys.exit(0)
folder = sys.argv[1]
bad = []


def read(name):
    source = gdal.Open(f"{folder}/{name}")
    band = source.GetRasterBand(1)
    values = band.ReadAsArray().astype(float)
    empty = band.GetNoDataValue()
    if empty is not None:
        values[values == empty] = np.nan
    return values


def check(what, difference, limit, cells):
    fine = cells > 0 and difference <= limit
    print(f"{'ok ' if fine else 'BAD'} {what}: {difference:.3g} (limit {limit:g}), {cells} cells")
    if not fine:
        bad.append(what)


def compare(what, ours, theirs, limit, relative=False, share=1.0, turn=False):
    """Largest difference, or the one that a share of the cells stays below."""
    both = np.isfinite(ours) & np.isfinite(theirs)
    d = np.abs(ours[both] - theirs[both])
    if turn:
        d = np.minimum(d, 360 - d)
    if relative:
        d = d / np.abs(theirs[both])
    enough = both.sum() >= 0.9 * ours.size
    check(what, np.quantile(d, share) if enough else np.inf, limit, int(both.sum()))


# float32 in r.terraflow and in SAGA: 4e-6 m at 40 m
filled = read("filled.asc")
compare("filled, GRASS r.terraflow", filled, read("grass_filled.tif"), 1e-5)
compare("filled, SAGA fill sinks XXL", filled, read("filled.sdat"), 1e-5)

# GRASS counts slopes and aspects in float32, aspects from the east anticlockwise
compare("slope, GRASS r.slope.aspect", read("slope.asc"), read("grass_slope.tif"), 1e-4)
aspect, steep = read("aspect.asc"), read("slope.asc") > 0.05
aspect[~steep] = np.nan
compare("aspect, GRASS r.slope.aspect", np.where(steep, aspect, 0),
        np.where(steep, read("grass_aspect.tif"), 0), 0.02, turn=True)

# hollows: GRASS's fill, clumps over sides and corners; ours from the CSV
deep, clump = read("grass_filled.tif") - read("dem.tif"), read("grass_clumps.tif")
cell = gdal.Open(f"{folder}/dem.tif").GetGeoTransform()[1] ** 2
theirs = []
for label in np.unique(clump[np.isfinite(clump)]):
    of = clump == label
    if of.sum() * cell >= 1:
        theirs.append((of.sum() * cell, deep[of].sum() * cell * 1000))
ours = [(float(r["area_m2"]), float(r["volume_l"])) for r in csv.DictReader(open(f"{folder}/hollows.csv"))]
print(f"    {len(ours)} hollows, {len(theirs)} by GRASS")
# a green without a hollow proves little, the random surface has many
check("number of hollows", abs(len(ours) - len(theirs)), 0, len(theirs) if folder.endswith("random") else 1)
if ours and len(ours) == len(theirs):
    a, b = np.array(sorted(ours)), np.array(sorted(theirs))
    # heights of the models are in whole millimetres: no cell stands near 10 mm but at it
    check("hollows, area, m2", np.abs(a[:, 0] - b[:, 0]).max(), 1e-6, len(a))
    check("hollows, volume, relative", np.abs(a[:, 1] / b[:, 1] - 1).max(), 1e-3, len(a))

# SAGA sums in float32
for method, name in ((0, "steepest"), (4, "multiple")):
    ours, theirs = read(f"flow/{name}.asc"), read(f"flow_{method}.sdat")
    compare(f"contributing area {name}, SAGA", ours, theirs, 1e-4, relative=True)
    check(f"contributing area {name}, sum, relative", abs(np.nansum(ours) / np.nansum(theirs) - 1), 1e-3, ours.size)
sys.exit(1 if bad else 0)
