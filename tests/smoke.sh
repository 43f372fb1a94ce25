#!/usr/bin/env bash
# The built program on every sample as a maker uses it: findings, schedules, exports, a picture, and the
# window on a virtual display.
# Usage: tests/smoke.sh PROGRAM
# Needs python3, xvfb and xauth.
set -euo pipefail
barwright=$(realpath "$1")
cd "$(dirname "${BASH_SOURCE[0]}")/.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT

fail() {
    echo "smoke: $*" >&2
    exit 1
}

tables=(cut.csv drill.csv fasteners.csv findings.csv bars.csv assembly.csv pieces.json)

run_on() {
    local sample=$1 name table format
    name=$(basename "$sample" .json)
    "$barwright" check "$sample" >"$out/$name.txt" || fail "check $sample: $(<"$out/$name.txt")"
    tail -n 1 "$out/$name.txt"
    "$barwright" schedule "$sample" --out "$out/$name" >/dev/null || fail "schedule $sample"
    for table in "${tables[@]}"; do
        [[ -s $out/$name/$table ]] || fail "$sample: $table is missing or empty"
    done
    "$barwright" strips "$sample" --out "$out/$name.strips.pdf" >/dev/null || fail "strips $sample"
    [[ -s $out/$name.strips.pdf ]] || fail "$sample: the strips are missing or empty"
    "$barwright" dxf "$sample" --out "$out/$name.dxf" >/dev/null || fail "dxf $sample"
    [[ -s $out/$name.dxf/A1.dxf ]] || fail "$sample: the DXF file of A1 is missing or empty"
    for format in step glb stl obj; do
        "$barwright" export "$sample" --out "$out/$name.$format" >/dev/null || fail "export $sample"
        [[ -s $out/$name.$format ]] || fail "$sample: the $format file is missing or empty"
    done
    "$barwright" book "$sample" --out "$out/$name.pdf" --paper letter >/dev/null || fail "book $sample"
    [[ $(head -c 5 "$out/$name.pdf") == %PDF- ]] || fail "$sample: the book is no PDF file"
    # Without a display, as on a machine that has none.
    env -u DISPLAY -u WAYLAND_DISPLAY "$barwright" picture "$sample" --out "$out/$name.png" \
        --size 800x600 >/dev/null || fail "picture $sample"
    xvfb-run -a -s "-screen 0 1600x1000x24 -nolisten tcp -noreset" \
        "$barwright" edit "$sample" --size 960x640 --screenshot "$out/$name.window.png" ||
        fail "edit $sample"
}

samples=(samples/*.json)
for sample in "${samples[@]}"; do run_on "$sample"; done

# Every sample looks different, so a picture that shows nothing is told by its twin. The windows
# differ in their titles alone, so there the view itself is looked at.
python3 tests/view_shows.py "$out"/*.window.png || fail "a window shows no skeleton"
rm "$out"/*.window.png
twins=$(sha256sum "$out"/*.png | sort | uniq -w 64 -d)
[[ -z $twins ]] || fail "pictures that show nothing of their sample: $twins"
((${#samples[@]} > 1)) || fail "there are too few samples to tell the pictures apart"

refuses() { # with status 2
    local status=0
    "$@" >/dev/null 2>&1 || status=$?
    ((status == 2)) || fail "exit status $status, not 2, from: $*"
}

refuses "$barwright" check README.md
refuses "$barwright" frob
refuses xvfb-run -a "$barwright" edit "${samples[0]}" --screenshot "$out/none.png" --choose nobody
status=0
"$barwright" check "${samples[0]}" 2>/dev/null >/dev/full || status=$?
((status == 2)) || fail "a full disk gave exit status $status, not 2"
echo "smoke: ${#samples[@]} samples checked, scheduled, exported, pictured and opened"
