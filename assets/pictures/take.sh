#!/usr/bin/env bash
# Takes the README's pictures of the window anew: every place, light at 1600x1000 and dark at
# 1280x720. Needs xvfb, xauth and imagemagick.
# Usage: assets/pictures/take.sh BARWRIGHT
set -euo pipefail
barwright=$(realpath "$1")
cd "$(dirname "${BASH_SOURCE[0]}")/../.."

take() { # picture, arguments of `barwright edit`
    local picture=assets/pictures/$1
    shift
    xvfb-run -a -s "-screen 0 1600x1000x24" \
        "$barwright" edit samples/work_counter.json --screenshot "$picture" "$@"
    convert "$picture" -strip +dither -colors 255 "PNG8:$picture"
}

for place in measure "lay out" join prove buy make; do
    name=window_${place// /_}
    chosen=()
    [[ $place == "lay out" ]] && chosen=(--choose "post front left")
    [[ $place == join ]] && chosen=(--choose "post front left + rail front top")
    [[ $place == make ]] && chosen=(--choose "rail front top")
    take "$name.png" --place "$place" --size 1600x1000 "${chosen[@]}"
    take "${name}_dark.png" --place "$place" --size 1280x720 --dark "${chosen[@]}"
done
