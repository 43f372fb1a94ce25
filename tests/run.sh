#!/usr/bin/env bash
# Installs what is missing, builds everything and runs the tests.
# Usage: tests/run.sh [ctest's arguments]    e.g. tests/run.sh -R "random skeletons"
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
source editor/packages.sh

install_packages "${program_packages[@]}" "${test_packages[@]}"
# Where the program alone was built before, the tests are put beside it.
grep -qs BUILD_TESTING:BOOL=ON build/release/CMakeCache.txt || cmake --preset release -D BUILD_TESTING=ON
cmake --build --preset release
ctest --preset release -j "$(nproc)" "$@"
