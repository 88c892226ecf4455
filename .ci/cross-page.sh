#!/usr/bin/env bash
# The demo's report in a browser: opened from a file without a network, clicked through, printed.
# usage: cross-page.sh REPORT.HTML [FOLDER_FOR_PICTURES]
set -euo pipefail
cd "$(dirname "$0")/.."
if ! command -v chromium >/dev/null || ! command -v pdftotext >/dev/null; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium poppler-utils fonts-dejavu-core
fi
pictures=${2:-export/target/report-pictures}
/usr/bin/python3 .ci/cross-page.py "$1" "$pictures" | tee "$pictures.txt"
# a check that did not run is none
grep -q 'checks hold' "$pictures.txt"
