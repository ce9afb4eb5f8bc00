# Completion of suffice for fish: the program itself says what could stand here.
function __suffice_candidates
    set -l done (commandline -opc)
    set -l program $done[1]
    set -e done[1]
    for line in ($program __complete (string unescape -- $done) (commandline -ct | string unescape | string collect --allow-empty) 2>/dev/null)
        if test "$line" = :files
            __fish_complete_path (commandline -ct)
        else
            echo $line
        end
    end
end
complete -c suffice -f -a '(__suffice_candidates)'
