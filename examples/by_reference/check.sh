#!/usr/bin/env bash
# The declaration for Visual Basic and its relatives: turned into C, compared with turnwright.h by the
# compiler, called, and its answers compared with Rust. Needs python3 and a C11 compiler.
set -euo pipefail
cd "$(dirname "$0")"
target="${CARGO_TARGET_DIR:-$(cd ../.. && pwd)/target}"
# In one call: two sets of features would build the shared library over each other again and again.
cargo build -q --locked --release --lib --example twin
twin="$target/release/examples/twin"
made="$target/by_reference"
mkdir -p "$made"

python3 declarations.py turnwright.bas >"$made/declared.h"
grep -q tw_spindle_speed_for_column "$made/declared.h"
strict=(-std=c11 -Wall -Wextra -Werror "-I$made")
"${CC:-cc}" "${strict[@]}" -I../../include -c layout.c -o "$made/layout.o"
"${CC:-cc}" "${strict[@]}" by_reference.c -o "$made/by_reference" \
    "-L$target/release" -lturnwright "-Wl,-rpath,$target/release"

for pair in "28 38" "30 12.7" "0.5 5000" "92.3 0.1"; do
    read -r v d <<<"$pair"
    ours="$("$made/by_reference" "$v" "$d")"
    theirs="$("$twin" <<<"{\"ask\":\"spindle_speed\",\"of\":[\"$v m/min\",\"$d mm\"]}")"
    # Both are shown so that every double has its own text; python reads them as doubles.
    python3 -c 'import json,sys; sys.exit(float(sys.argv[1]) != json.loads(sys.argv[2])["spindle_speed"])' \
        "$ours" "$theirs" || { echo "$pair: $ours, Rust has $theirs"; exit 1; }
done
# A bad row: 60 is TW_ROWS_BAD, 10 and 11 are its status, 0 says that no number came back.
for trouble in "28 -1:60 10 0 diameter" "28 nan:60 11 0 diameter" "1e9 38:60 10 0 cutting_speed"; do
    read -r v d <<<"${trouble%%:*}"
    if seen="$("$made/by_reference" "$v" "$d")" || [ "$seen" != "${trouble#*:}" ]; then
        echo "$v and $d gave: $seen"
        exit 1
    fi
done
echo "the declaration is that of turnwright.h, and its answers are those of Rust"
