#compdef suffice
# Completion of suffice for zsh: the program itself says what could stand here.
_suffice() {
    local line
    local -a words_here open
    for line in "${(@f)$("${words[1]}" __complete "${(@Q)words[2,CURRENT]}" 2>/dev/null)}"; do
        case $line in
            '') ;;
            :files) _files ;;
            *=$'\t'*) open+=("${line/$'\t'/:}") ;;
            *) words_here+=("${line/$'\t'/:}") ;;
        esac
    done
    (( $#open )) && _describe 'input' open -S ''
    (( $#words_here )) && _describe 'suffice' words_here
}
if [[ $funcstack[1] == _suffice ]]; then _suffice "$@"; else compdef _suffice suffice; fi
