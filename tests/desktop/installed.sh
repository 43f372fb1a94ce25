#!/usr/bin/env bash
# Installs the program into a folder of its own, as `cmake --install` or a package puts it, and looks at it
# there: it runs on its own tables and samples, and what it tells the desktop, the manual and the shell
# about itself is right.
# Usage: tests/desktop/installed.sh BUILD_FOLDER | PACKAGE.deb | PACKAGE.tar.gz
# A check whose tool is missing is skipped, and says so: desktop_packages in editor/packages.sh has them.
set -euo pipefail
from=$(realpath "$1")
here=$(realpath "$(dirname "${BASH_SOURCE[0]}")")
stage=$(mktemp -d)
trap 'rm -rf "$stage"' EXIT
unset BARWRIGHT_ASSETS
export LC_ALL=C.UTF-8
id=com.example.barwright
share=$stage/usr/share
barwright=$stage/usr/bin/barwright
cd / # nothing is found beside where one happens to be

fail() {
    echo "installed: $*" >&2
    exit 1
}

have() { # all of these tools, for the check that asks
    local tool
    for tool; do
        command -v "$tool" >/dev/null && continue
        echo "installed: SKIPPED ${FUNCNAME[1]//_/ }: there is no $tool"
        return 1
    done
}

quietly() { # fails on any word too, as many of these tools warn with status 0
    local said
    said=$("$@" 2>&1) || fail "$*: $said"
    [[ -z $said ]] || fail "$*: $said"
}

# shellcheck source=tests/desktop/known_to_desktop.sh
source "$here/known_to_desktop.sh"
# shellcheck source=tests/desktop/told_in_words.sh
source "$here/told_in_words.sh"

put_in_place() {
    mkdir -m 755 "$stage/usr"
    case $from in
        *.deb) dpkg-deb --extract "$from" "$stage" ;;
        *.tar.gz) tar -xpzf "$from" --strip-components 1 -C "$stage/usr" ;;
        *) # as somebody whose group may write what is his
            (umask 002 && DESTDIR=$stage cmake --install "$from" --prefix /usr --strip >/dev/null)
            ;;
    esac
}

anybody_can_read_it() {
    local wrong
    wrong=$(find "$stage/usr" -empty -o -type d ! -perm 755 -o -path "$barwright" ! -perm 755 \
        -o -type f ! -path "$barwright" ! -perm 644 -o -type l ! -path '*/lib/*')
    [[ -z $wrong ]] || fail "empty, a link, or with wrong permissions: $wrong"
}

program_runs_from_there() {
    local table sample=$share/barwright/samples/tool_cabinet.json
    [[ $("$barwright" --version) == "barwright "[0-9]*.[0-9]*.[0-9]* ]] || fail "--version"
    "$barwright" schedule "$sample" --out "$stage/schedules" >/dev/null || fail "schedule $sample"
    for table in cut drill fasteners bars; do
        [[ -s $stage/schedules/$table.csv ]] || fail "schedule: $table.csv is missing or empty"
    done
}

# Were it to read others - those of the source - it would not notice that its own are broken.
program_reads_its_own_tables() {
    local said table=$share/barwright/assets/catalogue/sections.csv
    cp -p "$table" "$stage/sections.csv"
    echo "a row of one field" >>"$table"
    said=$("$barwright" check "$share/barwright/samples/parts_box.json" 2>&1) &&
        fail "it did not notice that $table is broken: $said"
    [[ $said == *"sections.csv line "* ]] || fail "with $table broken it said: $said"
    mv "$stage/sections.csv" "$table"
}

# Those in a .tar.gz go before the system's, and it asks the system for no others than these. Where
# libX11 is, so is libxcb, which it asks for itself; another one beside it would not be its own.
usual_libraries='ld-linux-.*|lib(c|m|dl|pthread|rt|X11|xcb|EGL|GL)'
program_takes_its_own_libraries() {
    local library loaded asked
    [[ -d $stage/usr/lib ]] || return 0
    loaded=$(LD_TRACE_LOADED_OBJECTS=1 "$barwright")
    asked=$(objdump -p "$barwright" "$stage"/usr/lib/*.so.* | sed -n 's/^ *NEEDED *//p' | sort -u)
    for library in $asked; do
        [[ $loaded == *"$library => $stage/usr/"* ]] && continue
        [[ $library =~ ^($usual_libraries)\.so ]] || fail "it asks the system for $library"
    done
}

put_in_place
anybody_can_read_it
program_runs_from_there
program_reads_its_own_tables
program_takes_its_own_libraries
desktop_entry_is_valid
desktop_entry_names_what_is_there
metainfo_is_valid
xml_is_well_formed
project_files_have_a_type
window_belongs_to_the_entry
manual_is_readable
manual_has_all_words
shell_completes_all_words
echo "installed: $(basename "$from") is in order"
