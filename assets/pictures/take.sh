#!/usr/bin/env bash
# Takes the README's pictures of the window anew: every place, light at 1600x1000 and dark at
# 1280x720; sheets of Make, and a page of the shop book.
# Needs xvfb, xauth, imagemagick and poppler-utils.
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
    [[ $place == make ]] && chosen=(--sheet drilling --choose "rail front top")
    take "$name.png" --place "$place" --size 1600x1000 "${chosen[@]}"
    take "${name}_dark.png" --place "$place" --size 1280x720 --dark "${chosen[@]}"
done

take window_assembly.png --place make --sheet assembly --size 1600x1000
take window_bench_dark.png --place make --sheet "at the bench" --size 1280x720 --dark

# A page of the shop book: the drawing of a mark.
book=$(mktemp -d)
trap 'rm -rf "$book"' EXIT
"$barwright" book samples/work_counter.json --paper letter --out "$book/book.pdf" || [[ -s $book/book.pdf ]]
page=$(pdftotext "$book/book.pdf" - | awk 'BEGIN { RS = "\f" } /rail front top/ && /datum end/ && /quantity|pieces/ && !found++ { print NR }')
pdftoppm -r 80 -png -singlefile -f "$page" -l "$page" "$book/book.pdf" "$book/page"
convert "$book/page.png" -bordercolor gray70 -border 1 -strip +dither -colors 64 PNG8:assets/pictures/book_mark.png
