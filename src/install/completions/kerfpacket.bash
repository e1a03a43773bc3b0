# shellcheck shell=bash
# Completes kerfpacket in bash: the program itself tells what may stand next.

_kerfpacket() {
    local current=${COMP_WORDS[COMP_CWORD]} word what
    [[ $current == = ]] && current=
    COMPREPLY=()
    while IFS=$'\t' read -r word what; do
        case $word in
            :files)
                compopt -o filenames 2>/dev/null
                mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -f -X "!*$what" -- "$current"
                    compgen -d -- "$current")
                ;;
            :folders)
                compopt -o filenames 2>/dev/null
                mapfile -t -O "${#COMPREPLY[@]}" COMPREPLY < <(compgen -d -- "$current")
                ;;
            ?*) COMPREPLY+=("$word") ;;
        esac
    done < <("${COMP_WORDS[0]}" complete -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
}
complete -F _kerfpacket kerfpacket
