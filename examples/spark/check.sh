#!/usr/bin/env bash
# Spark's estimate of a million invented cuts against the same rows in plain Rust. Installs nothing:
# PYTHON names a Python with pyspark, pandas, pyarrow and numpy (left out: python3); Java 17 is there.
set -euo pipefail
cd "$(dirname "$0")"
export PYTHONDONTWRITEBYTECODE=1
target="${CARGO_TARGET_DIR:-$(cd ../.. && pwd)/target}"
rows="${1:-1000000}"
# In one call: two sets of features would build the shared library over each other again and again.
cargo build -q --locked --release --lib --example twin
export TURNWRIGHT_LIBRARY="$target/release/libturnwright.so"

work="$(mktemp -d)"
trap 'rm -rf "$work"' EXIT
"$target/release/examples/twin" cuts "$rows" "$work/cuts"
# What is left of a run, such as a folder of Spark's, goes with the folder.
here="$PWD"
(cd "$work" && TMPDIR="$work" "${PYTHON:-python3}" "$here/compare.py" "$rows" "$work/cuts")
