# Completes the commands, options and files of barwright in bash.

_barwright_options() { # of a command; of none when it is not known
    case $1 in
        edit) echo --size --samples --screenshot --place --sheet --choose --dark --report-state --help ;;
        schedule | export | dxf) echo --out --help ;;
        buy) echo --out --supplier --paper --help ;;
        strips) echo --out --paper --ruler-across --ruler-down --help ;;
        book) echo --out --paper --supplier --since --help ;;
        check) echo --help ;;
        fit) echo --dimension --help ;;
        picture) echo --out --size --from --lines --help ;;
    esac
}

_barwright_any_of() {
    local word
    for word; do
        if [[ $word == "${current//\\/}"* ]]; then COMPREPLY+=("${word// /\\ }"); fi
    done
}

_barwright_files() { # folders, and the files with the endings that are named
    local ending
    compopt -o filenames 2>/dev/null # refused where no one is completing
    mapfile -t COMPREPLY < <(
        compgen -d -- "$current"
        for ending; do compgen -f -X "!*$ending" -- "$current"; done
    )
}

_barwright_out() {
    case $command in
        picture) _barwright_files .png ;;
        strips) _barwright_files .pdf ;;
        book) _barwright_files .pdf ;;
        export) _barwright_files .step .glb .stl .obj ;;
        *) _barwright_files ;;
    esac
}

# What may follow an option; false where the word before is none that takes a value.
_barwright_value_of() {
    case $1 in
        --place) _barwright_any_of measure "lay out" join prove buy make ;;
        --sheet)
            _barwright_any_of "cut list" "at the saw" drilling fasteners assembly "at the bench" \
                "on paper"
            ;;
        --from) _barwright_any_of front left top corner ;;
        --screenshot) _barwright_files .png ;;
        --out) _barwright_out ;;
        --since) _barwright_files .stamps.json ;;
        --paper) _barwright_any_of a4 a3 letter tabloid ;;
        --size | --samples | --choose | --dimension | --supplier | --ruler-across | --ruler-down) ;;
        *) return 1 ;;
    esac
}

_barwright() {
    local current=${COMP_WORDS[COMP_CWORD]} command=${COMP_WORDS[1]} options
    COMPREPLY=()
    if ((COMP_CWORD == 1)); then
        _barwright_any_of edit schedule buy book strips dxf check fit picture export --help --version
    elif ! _barwright_value_of "${COMP_WORDS[COMP_CWORD - 1]}"; then
        read -ra options < <(_barwright_options "$command")
        if [[ $current == -* ]]; then
            _barwright_any_of "${options[@]}"
        else
            _barwright_files .json
        fi
    fi
}
complete -F _barwright barwright
