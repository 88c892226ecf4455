"""Writes elevation by GDAL, in the ways others deliver it, for the reader to read.

A cell of column c and row r holds 40 + c / 64 - r / 128, but for a void in row 3, column 5; whole
metres in files of whole numbers. 70 columns, 50 rows of 0.5 m from 500000, 5316000 (EPSG:32628).
"""

import os
import sys

import numpy as np
from osgeo import gdal, osr

gdal.UseExceptions()
folder = sys.argv[1]
os.makedirs(folder, exist_ok=True)
crs = osr.SpatialReference()
crs.ImportFromEPSG(32628)
c, r = np.meshgrid(np.arange(70), np.arange(50))
heights = 40 + c / 64 - r / 128


def write(name, kind, options, none=-9999, point=False):
    cells = heights.copy()
    if kind in (gdal.GDT_Int16, gdal.GDT_Int32):
        cells = np.floor(cells)
    cells[3, 5] = none
    driver = gdal.GetDriverByName("GTiff")
    tif = driver.Create(os.path.join(folder, name + ".tif"), 70, 50, 1, kind, options)
    tif.SetGeoTransform((500000, 0.5, 0, 5316000, 0, -0.5))
    tif.SetProjection(crs.ExportToWkt())
    if point:
        tif.SetMetadataItem("AREA_OR_POINT", "Point")
    band = tif.GetRasterBand(1)
    band.SetNoDataValue(none)
    band.WriteArray(cells)
    tif = None


layouts = {
    "strips": [],
    "strip1": ["BLOCKYSIZE=50"],
    "row": ["BLOCKYSIZE=1"],
    "tiles": ["TILED=YES", "BLOCKXSIZE=32", "BLOCKYSIZE=32"],
    "big": ["BIGTIFF=YES"],
    "msb": ["ENDIANNESS=BIG"],
    "keys11": ["GEOTIFF_VERSION=1.1"],
}
kinds = {
    "f32": gdal.GDT_Float32,
    "f64": gdal.GDT_Float64,
    "i16": gdal.GDT_Int16,
    "i32": gdal.GDT_Int32,
}
for layout, options in layouts.items():
    for kind, code in kinds.items():
        for packed in ("NONE", "DEFLATE", "LZW", "PACKBITS"):
            predictors = ["1"]
            if packed in ("DEFLATE", "LZW"):
                predictors = ["1", "3"] if kind[0] == "f" else ["1", "2"]
            for predictor in predictors:
                more = ["COMPRESS=" + packed]
                if predictor != "1":
                    more.append("PREDICTOR=" + predictor)
                write("_".join([layout, kind, packed, predictor]), code, options + more)
write("nan", gdal.GDT_Float32, [], none=float("nan"))
write("lowest", gdal.GDT_Float32, [], none=-3.4028234663852886e38)
write("point", gdal.GDT_Float32, [], point=True)
# what the image library misreads or cannot read must be refused, never guessed
write("refused_zstd", gdal.GDT_Float32, ["COMPRESS=ZSTD"])
write("refused_predictor", gdal.GDT_Float32, ["COMPRESS=DEFLATE", "PREDICTOR=2"])
sparse = gdal.GetDriverByName("GTiff").Create(
    os.path.join(folder, "refused_sparse.tif"), 70, 50, 1, gdal.GDT_Float32, ["SPARSE_OK=TRUE"])
sparse.SetGeoTransform((500000, 0.5, 0, 5316000, 0, -0.5))
sparse.SetProjection(crs.ExportToWkt())
sparse = None
gdal.Translate(
    os.path.join(folder, "cog.tif"), os.path.join(folder, "strips_f64_NONE_1.tif"), format="COG")
gdal.Translate(
    os.path.join(folder, "grid.asc"), os.path.join(folder, "strips_f64_NONE_1.tif"), format="AAIGrid",
    creationOptions=["SIGNIFICANT_DIGITS=12"])
