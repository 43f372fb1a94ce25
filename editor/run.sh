#!/usr/bin/env bash
# Installs what is missing, builds Barwright and opens it on a project.
# Usage: editor/run.sh [PROJECT]    the sample tool cabinet unless a project is given
# Without a display it writes the project's schedules into build/schedules instead.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
source "$root/editor/packages.sh"

project=${1:-$root/samples/tool_cabinet.json}
if [[ ! -f $project ]]; then
    echo "There is no file $project. Usage: editor/run.sh [PROJECT]" >&2
    exit 2
fi

install_packages "${program_packages[@]}"

# The program alone, so that it builds where the tests' packages are not installed.
build_program() {
    cd "$root"
    [[ -f build/release/build.ninja ]] || cmake --preset release -D BUILD_TESTING=OFF
    cmake --build --preset release --target barwright
}
(build_program)
barwright=$root/build/release/editor/barwright

if [[ -n ${DISPLAY:-} || -n ${WAYLAND_DISPLAY:-} ]]; then
    exec "$barwright" edit "$project"
fi
schedules=$root/build/schedules/$(basename "$project" .json)
echo "There is no display to open a window on, so the schedules are written to $schedules"
exec "$barwright" schedule "$project" --out "$schedules"
