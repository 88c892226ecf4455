#!/bin/sh
# Kernels by JMH beside gstat, and the whole command beside the R script that does the same job.
# Run in the root of the project after: mvn -B -ntp -DskipTests package
# Wants R with gstat, sp, sf, stars and Python 3 with numpy (Debian: r-cran-gstat r-cran-sf
# r-cran-stars python3-numpy). Takes about 25 minutes; leave the machine alone meanwhile.
set -eu
here=docs/benchmarks/peers
work=${1:-target/benchmarks}
python=${PYTHON:-/usr/bin/python3}
mkdir -p "$work"
lscpu | grep "Model name\|^CPU(s)"; java -version 2>&1 | head -1

echo "== whole process"
"$python" $here/gen.py course 1 40 "$work/c1"
"$python" $here/gen.py course 18 40 "$work/c18"
"$python" $here/gen.py course 540 24 "$work/c540"
cat > "$work/settings.yml" <<'Y'
columns: {green_id: green, vwc_raw: vwc}
bands: {default: {purpose: benchmark, lo_pct: 10, hi_pct: 25}}
cell_m: 0.25
Y
rm -rf "$work/dist"; mkdir "$work/dist"; unzip -q export/target/mottle-*.zip -d "$work/dist"
mottle=$(ls -d "$work"/dist/*/bin/mottle)
map() { # program, course
  echo "$1 map --quiet --overwrite --crs EPSG:32630 --settings $work/settings.yml --formats geopackage,geojson,shapefile --greens $work/$2/greens.geojson --readings $work/$2/readings.csv --out $work/out-$2"
}
$(map "$mottle" c1) >/dev/null 2>&1 # leaves the class archive
for course in c1 c18; do
  "$python" $here/measure.py -r 5 \
    "R_$course=Rscript $here/g_workflow.R $work/$course $work/r-$course" \
    "jar_$course=$(map "java -jar export/target/mottle.jar" $course)" \
    "launcher_$course=$(map "$mottle" $course)"
done
"$python" $here/measure.py -r 3 "jar_c540=$(map "java -jar export/target/mottle.jar" c540)" \
  "launcher_c540=$(map "$mottle" c540)"
"$python" $here/measure.py -r 1 "R_c540=Rscript $here/g_workflow.R $work/c540 $work/r-c540"

echo "== kernels of gstat (T lines: seconds)"
"$python" $here/gen.py points 50 50 "$work/p50.csv"
"$python" $here/gen.py points 200 50 "$work/p200.csv"
"$python" $here/gen.py points 1000 100 "$work/p1000.csv"
"$python" $here/gen.py points 3000 200 "$work/p3000.csv"
"$python" $here/gen.py points 10000 1000 "$work/p10000.csv"
"$python" $here/measure.py -r 1 \
  "ok_50x1e5=Rscript $here/a_gstat.R $work/p50.csv 50 1e5 Exp" \
  "ok_200x1e4=Rscript $here/a_gstat.R $work/p200.csv 50 1e4 Exp" \
  "ok_1000x1e5=Rscript $here/a_gstat.R $work/p1000.csv 100 1e5 Exp" \
  "ok_3000x1e4=Rscript $here/a_gstat.R $work/p3000.csv 200 1e4 Exp" \
  "near32=Rscript $here/a_gstat.R $work/p10000.csv 1000 1e5 Exp 32" \
  "variogram_1e4=Rscript $here/d_variogram.R $work/p10000.csv" \
  "loo_200=Rscript $here/e_loo.R $work/p200.csv" \
  "loo_1000=Rscript $here/e_loo.R $work/p1000.csv"

echo "== kernels of Mottle (JMH)"
mvn -q -B -ntp -pl engine dependency:build-classpath -DincludeScope=test -Dmdep.outputFile=target/cp.txt
java -cp "engine/target/test-classes:engine/target/classes:$(cat engine/target/cp.txt)" \
  org.openjdk.jmh.Main -rf csv -rff "$work/jmh.csv" KrigingBenchmark EmpiricalVariogramBenchmark \
  SimulationBenchmark PooledLikelihoodBenchmark GreenMapBenchmark NextStationsBenchmark
