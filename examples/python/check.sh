#!/usr/bin/env bash
# The Python module: its types, its tests with numpy and without. Installs nothing: PYTHON names a
# Python with mypy, pandas-stubs, numpy and pandas (left out: python3), cargo builds library and twin.
set -euo pipefail
cd "$(dirname "$0")"
export PYTHONDONTWRITEBYTECODE=1
python="${PYTHON:-python3}"
target="${CARGO_TARGET_DIR:-$(cd ../.. && pwd)/target}"
# In one call: two sets of features would build the shared library over each other again and again.
cargo build -q --locked --release --lib --example twin
export TURNWRIGHT_LIBRARY="$target/release/libturnwright.so" TWIN="$target/release/examples/twin"

"$python" -m mypy --strict --cache-dir="$target/mypy" turnwright.py one_part.py frame_of_jobs.py test_turnwright.py
TURNWRIGHT_TEST_NUMPY=yes "$python" -W error test_turnwright.py
TURNWRIGHT_TEST_NUMPY=no "$python" -W error test_turnwright.py
