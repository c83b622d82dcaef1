#!/usr/bin/env bash
# Installs turnwright under a prefix of its own, as a packager would, and builds the small project of
# this folder against it: by pkg-config and by CMake, shared and static. Wants cargo-c, a C and a C++
# compiler, pkg-config and CMake:
#
#   bash examples/installed/check.sh
set -euo pipefail
cd "$(dirname "$0")/../.."
target="${CARGO_TARGET_DIR:-$PWD/target}"
prefix="$target/installed"
build="$target/installed_build"
rm -rf "$prefix" "$build"
mkdir -p "$build"

cargo cinstall --locked --release --features picture --prefix "$prefix" --target-dir "$target/cinstall" 2>"$build/install.log" || { cat "$build/install.log"; exit 1; }

version="$(sed -n 's/^version = "\(.*\)"/\1/p' Cargo.toml | head -n 1)"
# v / (pi d), by hand: 28 m/min on 10, 25, 50 and 100 mm.
expected="turnwright $version
10 mm: 891 rpm
25 mm: 357 rpm
50 mm: 178 rpm
100 mm: 89 rpm"

says() {
    local said
    said="$("$@")"
    if [ "$said" != "$expected" ]; then
        printf '%s said\n%s\n' "$*" "$said"
        exit 1
    fi
}

# Headers as they are in the source: nothing was made anew on the packager's machine.
for header in turnwright.h turnwright.hpp; do
    cmp "include/$header" "$prefix/include/$header"
done

export PKG_CONFIG_PATH
PKG_CONFIG_PATH="$(dirname "$(find "$prefix" -name turnwright.pc)")"
[ "$(pkg-config --modversion turnwright)" = "$version" ]
libdir="$(pkg-config --variable=libdir turnwright)"
source=examples/installed/bench_card.c

# shellcheck disable=SC2046 # The flags are words.
cc -std=c99 $(pkg-config --cflags turnwright) "$source" $(pkg-config --libs turnwright) \
    -Wl,-rpath,"$libdir" -o "$build/by_pkg_config"
says "$build/by_pkg_config"
# shellcheck disable=SC2046
cc -std=c99 $(pkg-config --cflags turnwright) "$source" \
    $(pkg-config --static --libs turnwright | sed "s|-lturnwright|$libdir/libturnwright.a|") \
    -o "$build/by_pkg_config_static"
says "$build/by_pkg_config_static"

cmake -S examples/installed -B "$build/cmake" -DCMAKE_PREFIX_PATH="$prefix" -DCMAKE_BUILD_TYPE=Release >/dev/null
cmake --build "$build/cmake" >/dev/null
for program in bench_card bench_card_static bench_card_cpp; do
    says "$build/cmake/$program"
done

# What is linked statically needs no library of ours at run time; the others do.
for program in by_pkg_config cmake/bench_card cmake/bench_card_cpp; do
    ldd "$build/$program" | grep libturnwright >/dev/null
done
for program in by_pkg_config_static cmake/bench_card_static; do
    if ldd "$build/$program" | grep libturnwright >/dev/null; then
        echo "$program is not static"
        exit 1
    fi
done

# A version that may have other calls is not taken for this one.
mkdir "$build/other"
printf 'cmake_minimum_required(VERSION 3.16)\nproject(other LANGUAGES C)\nfind_package(turnwright 99.0 REQUIRED)\n' \
    >"$build/other/CMakeLists.txt"
if cmake -S "$build/other" -B "$build/other/build" -DCMAKE_PREFIX_PATH="$prefix" >/dev/null 2>&1; then
    echo "CMake took this version for another"
    exit 1
fi
# The whole prefix may be moved.
mv "$prefix" "$prefix.moved"
cmake -S examples/installed -B "$build/moved" -DCMAKE_PREFIX_PATH="$prefix.moved" >/dev/null
cmake --build "$build/moved" --target bench_card_static >/dev/null
says "$build/moved/bench_card_static"
rm -rf "$prefix.moved"
echo "installed: by pkg-config and CMake, shared and static"
