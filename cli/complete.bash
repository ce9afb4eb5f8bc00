# Completion of suffice for bash: the program itself says what could stand here.
_suffice() {
    local line word="${COMP_WORDS[COMP_CWORD]}"
    COMPREPLY=()
    while IFS= read -r line; do
        if [[ $line == :files ]]; then
            compopt -o filenames 2>/dev/null
            [[ $word == "=" ]] && word=""
            while IFS= read -r line; do COMPREPLY+=("$line"); done < <(compgen -f -- "$word")
        else
            line="${line%%$'\t'*}"
            [[ $line == *" "* ]] && printf -v line %q "$line"
            COMPREPLY+=("$line")
        fi
    done < <("${COMP_WORDS[0]}" __complete "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
    [[ ${COMPREPLY[0]} == *= ]] && compopt -o nospace 2>/dev/null
    return 0
}
complete -F _suffice suffice
