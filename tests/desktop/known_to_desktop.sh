# Sourced by installed.sh: desktop entry, metainfo, type of the project's files, window.

entry=$share/applications/$id.desktop
metainfo=$share/metainfo/$id.metainfo.xml
types=$share/mime/packages/$id.xml
icons=$share/icons/hicolor

value_of() { # a key of the desktop entry
    sed -n "s/^$1=//p" "$entry"
}

desktop_entry_is_valid() {
    have desktop-file-validate || return 0
    quietly desktop-file-validate "$entry"
}

desktop_entry_names_what_is_there() {
    local size command
    [[ -s $icons/scalable/apps/$(value_of Icon).svg ]] || fail "Icon names no picture"
    for size in 32 48 64 128 256; do
        [[ -s $icons/${size}x$size/apps/$(value_of Icon).png ]] || fail "Icon: none of size $size"
    done
    read -ra command < <(value_of Exec)
    [[ ${command[0]} == barwright && ${command[2]} == %f ]] || fail "Exec is ${command[*]}"
    "$barwright" "${command[1]}" --help >/dev/null || fail "Exec: there is no command ${command[1]}"
}

metainfo_is_valid() {
    have appstreamcli || return 0
    local said
    said=$(appstreamcli validate --no-net --no-color --pedantic "$metainfo") || fail "$said"
    [[ $said == *"Validation was successful." ]] || fail "$said"
    # With the desktop entry and the icons that belong to it.
    said=$(appstreamcli validate-tree --no-net --no-color "$stage/usr") || fail "$said"
    grep -qF "<launchable type=\"desktop-id\">$(basename "$entry")<" "$metainfo" ||
        fail "the metainfo does not launch $(basename "$entry")"
}

xml_is_well_formed() {
    have xmllint || return 0
    quietly xmllint --noout "$metainfo" "$types" "$icons/scalable/apps/$id.svg"
}

project_files_have_a_type() {
    have update-mime-database || return 0
    local type mime=$stage/mime
    type=$(value_of MimeType)
    type=${type%;}
    grep -qF "<mediatype>$type</mediatype>" "$metainfo" || fail "the metainfo does not provide $type"
    mkdir -p "$mime/packages"
    cp "$types" /usr/share/mime/packages/freedesktop.org.xml "$mime/packages"
    quietly env XDG_DATA_DIRS="$stage" update-mime-database "$mime"
    # No other: *.json would lay a hand on the files of other programs.
    [[ $(grep -F ":$type:" "$mime/globs2") == "50:$type:*.barwright.json" ]] ||
        fail "$type has the files $(grep -F "$type" "$mime/globs2")"
    projects_are_known "$type"
}

type_of() {
    XDG_DATA_HOME=$stage XDG_DATA_DIRS=$stage gio info -a standard::content-type "$1" |
        sed -n 's/^ *standard::content-type: //p'
}

projects_are_known() {
    have gio || return 0
    local sample=$share/barwright/samples/tool_cabinet.json
    cp "$sample" "$stage/van.barwright.json"
    cp "$sample" "$stage/no_ending"
    echo '{"barwright_like": 1}' | tee "$stage/other.json" >"$stage/other"
    [[ $(type_of "$stage/van.barwright.json") == "$1" ]] || fail "a project is not known by its name"
    [[ $(type_of "$stage/no_ending") == "$1" ]] || fail "a project is not known by what it says"
    [[ $(type_of "$stage/other.json") == application/json ]] || fail "other.json is not just JSON"
    [[ $(type_of "$stage/other") != "$1" ]] || fail "a file that is no project is taken for one"
}

# The taskbar joins a window to the entry by its class; what has no taskbar shows the window's own icon.
window_belongs_to_the_entry() {
    have Xvfb xauth xvfb-run xdotool xprop || return 0
    local said
    # shellcheck disable=SC2016 # the inner shell's
    said=$(xvfb-run -a -s "-screen 0 1600x1000x24 -nolisten tcp -noreset" bash -c '
        XDG_STATE_HOME="$2" "$1" edit --size 960x640 & window=
        trap "kill $!" EXIT
        for ((tries = 0; tries < 300; ++tries)); do
            window=$(xdotool search --onlyvisible --class "^barwright$" | head -n 1)
            [[ -n $window ]] && break
            sleep 0.1
        done
        xprop -id "$window" WM_CLASS _NET_WM_ICON' _ "$barwright" "$stage/state" 2>&1) || true
    [[ $said == *", \"$(value_of StartupWMClass)\""* ]] || fail "the window's class: $said"
    [[ $said == *"Icon (48 x 48)"* ]] || fail "the window's icon: $said"
}
