#!/usr/bin/env bash
# The Calc add-in: builds it, adds it to a profile of its own, has LibreOffice reckon demo.fods and a
# workbook of bad inputs, and compares every computed cell with Rust. Installs nothing; build.sh says
# what it needs. The machine's own LibreOffice is left as it is.
set -euo pipefail
cd "$(dirname "$0")"
export PYTHONDONTWRITEBYTECODE=1
target="${CARGO_TARGET_DIR:-$(cd ../.. && pwd)/target}"
# In one call: two sets of features would build the shared library over each other again and again.
cargo build -q --locked --release --lib --example twin
bash build.sh
export TWIN="$target/release/examples/twin" PYTHONPATH=../python

work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
cp "$target/calc/turnwright.oxt" demo.fods "$work/"
python3 compare.py edges "$work/edges.fods"
# unopkg will not work for root in a profile of its own; somebody without rights can do all of this.
as=(env "HOME=$work")
if [ "$(id -u)" = 0 ]; then
    chown -R 65534:65534 "$work"
    as=(setpriv --reuid=65534 --regid=65534 --clear-groups "${as[@]}")
fi
profile="-env:UserInstallation=file://$work/profile"
(
    # Where that somebody may be.
    cd "$work"
    "${as[@]}" unopkg add -f -s "$profile" turnwright.oxt
    "${as[@]}" soffice --headless "$profile" --convert-to fods --outdir reckoned demo.fods edges.fods
)
python3 compare.py demo demo.fods "$work/reckoned/demo.fods"
python3 compare.py edges "$work/edges.fods" "$work/reckoned/edges.fods"
