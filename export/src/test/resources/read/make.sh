#!/bin/sh
# Writes the fixtures of this folder from source.geojson with ogr2ogr (GDAL 3.6.2).
set -e
cd "$(dirname "$0")"
rm -rf shp
mkdir shp
ogr2ogr -f "ESRI Shapefile" -t_srs EPSG:32628 -lco ENCODING=UTF-8 shp/utf8.shp source.geojson
ogr2ogr -f "ESRI Shapefile" -t_srs EPSG:32628 -lco ENCODING=ISO-8859-1 shp/latin1.shp source.geojson
ogr2ogr -f "ESRI Shapefile" -t_srs EPSG:32628 -dim XYZ shp/heights.shp source.geojson
rm shp/heights.dbf
ogr2ogr -f GeoJSON -t_srs EPSG:32628 old_crs.geojson source.geojson
ogr2ogr -f GeoJSON -lco RFC7946=YES rfc7946.geojson source.geojson
rm -f course.gpkg
ogr2ogr -f GPKG -t_srs EPSG:32628 -nln green -nlt MULTIPOLYGON course.gpkg source.geojson
ogr2ogr -f GPKG -update -t_srs EPSG:32628 -nln other -where "green_id = '1'" course.gpkg source.geojson
