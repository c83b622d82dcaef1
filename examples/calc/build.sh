#!/usr/bin/env bash
# Makes turnwright.oxt: functions for the cells of LibreOffice Calc (SPINDLESPEED, MAINFORCE, ...).
#
#   cargo build --release --features capi
#   bash examples/calc/build.sh             # leaves target/calc/turnwright.oxt
#   unopkg add target/calc/turnwright.oxt   # or Tools, Extension Manager; then open demo.fods
#
# Needs python3, and unoidl-write with the types of LibreOffice (Debian: libreoffice-dev); to run it,
# LibreOffice with Python (Debian: libreoffice-calc python3-uno libreoffice-script-provider-python).
# The extension holds the library of the machine that it was built on.
set -euo pipefail
cd "$(dirname "$0")"
target="${CARGO_TARGET_DIR:-$(cd ../.. && pwd)/target}"
office="${OFFICE:-/usr/lib/libreoffice}"
made="$target/calc"
folder="$made/extension"
export PYTHONDONTWRITEBYTECODE=1

rm -rf "$folder"
mkdir -p "$folder/pythonpath" "$folder/library"
PYTHONPATH=../python python3 describe.py "$folder"
"$office/sdk/bin/unoidl-write" "$office/program/types.rdb" "$office/program/types/offapi.rdb" \
    "$folder/XCells.idl" "$folder/types.rdb"
cp cells.py "$folder/"
cp functions.py ../python/turnwright.py "$folder/pythonpath/"
found=""
for library in libturnwright.so libturnwright.dylib turnwright.dll; do
    if [ -e "$target/release/$library" ]; then
        cp "$target/release/$library" "$folder/library/"
        found=yes
    fi
done
if [ -z "$found" ]; then
    echo "no library in $target/release: run cargo build --release --features capi" >&2
    exit 1
fi
rm -f "$made/turnwright.oxt"
(cd "$folder" && python3 -m zipfile -c ../turnwright.oxt *)
echo "$made/turnwright.oxt"
