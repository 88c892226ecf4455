#!/bin/sh
# Many courses whose truth is known, mapped by several methods and scored alike; README.md explains.
# Run in the root of the project: docs/calibration/run.sh [choosing] [reporting] [demo|raw|other ...]
# Leaves results.md and results.csv in docs/calibration, or in the folder $OUT.
set -eu
choosing=${1:-1-20}
reporting=${2:-101-140}
[ $# -gt 2 ] && shift 2 || shift $#
classes=engine/target/classes:demo-data/target/classes:export/target/classes:export/target/test-classes
mvn -q -B -ntp -pl export -am test-compile dependency:build-classpath -DincludeScope=test \
  -Dmdep.outputFile=target/calibration-cp.txt
exec java -Xmx2g -cp "$classes:$(cat export/target/calibration-cp.txt)" \
  org.mottle.export.calibration.Study "${OUT:-docs/calibration}" "$choosing" "$reporting" "$@"
