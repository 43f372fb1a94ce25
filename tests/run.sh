#!/usr/bin/env bash
# Installs what is missing, builds everything and runs the tests.
# Usage: tests/run.sh [ctest's arguments]    e.g. tests/run.sh -R "random skeletons"
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
source editor/packages.sh

install_packages "${program_packages[@]}" "${test_packages[@]}"
[[ -f build/dev/build.ninja ]] || cmake --preset dev
cmake --build --preset dev
ctest --preset dev -j "$(nproc)" "$@"
