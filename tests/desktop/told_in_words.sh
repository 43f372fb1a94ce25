# Sourced by installed.sh: the manual and bash know every command, option and word that `--help` lists.

manual=$share/man/man1/barwright.1.gz

manual_is_readable() {
    have man || return 0
    local said
    said=$(MANWIDTH=80 man --warnings --local-file "$manual" 2>&1 >/dev/null) || fail "$said"
    [[ -z $said ]] || fail "man: $said"
}

commands_of_help() {
    "$barwright" --help | sed -n '/^Subcommands:/,$ s/^  *\([a-z][a-z]*\) .*/\1/p'
}

options_of_help() { # of a command; the program's own without one
    "$barwright" "$@" --help | grep -oE -- '--[a-z][a-z-]*' | sort -u
}

choices_of_help() { # the words that a command's options know: one line for each, with commas
    "$barwright" "$1" --help | grep -oE '\{[^}]*\}' | tr -d '{}'
}

choices_by_option() { # of a command, a line for each option that knows its words: --option one,another
    "$barwright" "$1" --help | tr -s ' \n' ' ' |
        grep -oE -- '--[a-z-]+ [A-Z]*:?\{[^}]*\}' | sed -E 's/ [A-Z]*:?\{/ /; s/\}//'
}

manual_has_all_words() {
    local command option words text
    text=$(zcat "$manual")
    text=${text//\\/}
    for command in $(commands_of_help); do
        [[ $text == *$'\n.TP\n'"fB${command}fR"* ]] || fail "the manual has no command $command"
        for option in $(options_of_help "$command"); do
            [[ $option == --help || $text == *$'\n.TP\n'"fB${option}fR"* ]] ||
                fail "the manual has no $option of $command"
        done
        while read -r words; do
            [[ $text == *"$words"* ]] || fail "the manual does not say \"$words\" of $command"
        done < <(choices_of_help "$command" | sed 's/,\([^,]*\)$/ or \1/; s/,/, /g')
    done
    for option in $(options_of_help); do
        [[ $text == *"$option"* ]] || fail "the manual lacks $option"
    done
}

completed() { # what bash offers for the last of these words
    COMP_WORDS=("$@")
    COMP_CWORD=$(($# - 1))
    _barwright || true
    printf '%s\n' "${COMPREPLY[@]}"
}

is_offered() { # every line of the first, where the words that follow are typed
    local missing
    missing=$(comm -23 <(sort -u <<<"$1") <(completed "${@:2}" | sort -u))
    [[ -z $missing ]] || fail "bash does not complete \"${*:2}\" with $missing"
}

shell_completes_all_words() {
    local command option choices
    # shellcheck source=editor/desktop/barwright.bash
    source "$share/bash-completion/completions/barwright"
    (($(commands_of_help | wc -l) > 3)) || fail "--help lists no commands: $(commands_of_help)"
    is_offered "$(commands_of_help && options_of_help)" barwright ""
    for command in $(commands_of_help); do
        is_offered "$(options_of_help "$command")" barwright "$command" --
    done
    for command in $(commands_of_help); do
        while read -r option choices; do
            is_offered "$(tr , '\n' <<<"$choices" | sed 's/ /\\ /g')" barwright "$command" "$option" ""
        done < <(choices_by_option "$command")
    done
    is_offered 'lay\ out' barwright edit --place 'lay\ o'
    cd "$share/barwright/samples" || return
    is_offered tool_cabinet.json barwright check tool
    cd /
}
