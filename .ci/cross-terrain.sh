#!/usr/bin/env bash
# Filled ground, hollows, slope, aspect and contributing area against GRASS and SAGA, on elevation
# models given (none: those of the demo course) and on a random surface.
# Run after: mvn verify. Fails when a program is missing, a file was not made or a number differs.
set -euo pipefail
cd "$(dirname "$0")/.."

if ! command -v grass >/dev/null || ! command -v saga_cmd >/dev/null; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends grass-core saga gdal-bin python3-gdal python3-numpy >/dev/null
fi

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export AAIGRID_DATATYPE=Float64
cross() { java -Xmx2g -cp "engine/target/classes:engine/target/test-classes:export/target/mottle.jar" org.mottle.engine.terrain.TerrainCross "$@"; }
asc() { # raster, asc: every digit
  gdal_translate -q -of AAIGrid -co SIGNIFICANT_DIGITS=12 -a_nodata -9999 "$1" "$2"
}

if [ $# -eq 0 ]; then
  # written by the build of demo-data
  set -- demo-data/target/course/dem_G3.asc demo-data/target/course/dem_G6.asc
fi
cross random "$work/random.asc" 240 200 20260101
grass -c XY "$work/grass" -e >/dev/null 2>&1

for dem in "$@" "$work/random.asc"; do
  name=$(basename "$dem" .asc)
  to="$work/$name"
  mkdir -p "$to/flow"
  cp "$dem" "$to/dem.asc" # without a .prj: plain metres for every program
  cross dump "$to/dem.asc" "$to"
  gdal_translate -q "$to/dem.asc" "$to/dem.tif"

  cat > "$to/grass.sh" <<'G'
set -eu
cd "$TO" # terraflow takes an X in the path of its scratch folder for its own pattern
r.in.gdal -o --overwrite --quiet input="$TO/dem.tif" output=dem
g.region raster=dem
r.slope.aspect --overwrite --quiet -n elevation=dem slope=slope aspect=aspect format=degrees
r.terraflow --overwrite --quiet elevation=dem filled=filled direction=direction swatershed=shed accumulation=acc tci=tci directory=. stats="$TO/stats.txt"
r.mapcalc --overwrite --quiet "deep = if(filled - dem >= 0.00999, 1, null())"
r.clump -d --overwrite --quiet input=deep output=clumps
for map in slope aspect filled clumps; do
  r.out.gdal --overwrite --quiet -f input=$map output="$TO/grass_$map.tif" format=GTiff nodata=-9999 type=Float64
done
G
  TO="$to" grass "$work/grass/PERMANENT" --exec bash "$to/grass.sh" > "$to/grass.log" 2>&1 || { cat "$to/grass.log"; exit 1; }

  # ground that falls everywhere, by SAGA: flow over level ground is each program's own choice. So
  # are cells at the border (SAGA lets none of their water in): a low ring round it takes all
  saga_cmd -f=s ta_preprocessor 4 -ELEV "$to/dem.tif" -FILLED "$to/sloped.sgrd" -MINSLOPE 0.05 > "$to/saga.log" 2>&1
  saga_cmd -f=s ta_preprocessor 5 -ELEV "$to/dem.tif" -FILLED "$to/filled.sgrd" -MINSLOPE 0 >> "$to/saga.log" 2>&1
  /usr/bin/python3 .ci/cross-terrain.py --ring "$to/sloped.sdat" "$to/falling.tif"
  for method in 0 4; do
    saga_cmd -f=s ta_hydrology 0 -ELEVATION "$to/falling.tif" -FLOW "$to/flow_$method.sgrd" -FLOW_UNIT 1 -METHOD $method -CONVERGENCE 1.1 -LINEAR_DO 0 >> "$to/saga.log" 2>&1
  done
  asc "$to/falling.tif" "$to/flow/falling.asc"
  cross dump "$to/flow/falling.asc" "$to/flow"
  echo "== $name"
  /usr/bin/python3 .ci/cross-terrain.py "$to"
done
echo "terrain: $(($# + 1)) models compared with GRASS and SAGA"
