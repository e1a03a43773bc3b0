# Completes kerfpacket in fish: the program itself tells what may stand next.

function __kerfpacket_next
    set -l words (commandline -opc)
    set -l current (commandline -ct)
    for line in ($words[1] complete -- $words[2..-1] "$current" 2>/dev/null)
        set -l parts (string split -m 1 \t -- $line)
        switch $parts[1]
            case :files
                # Files of that ending, and folders that may hold some.
                set -l ending (string escape --style=regex -- $parts[2])
                __fish_complete_path "$current" | string match -r -- '^[^\t]*(?:'$ending'|/)(?:\t.*)?$'
            case :folders
                __fish_complete_directories "$current"
            case '*'
                echo $line
        end
    end
end

complete -c kerfpacket -f -a '(__kerfpacket_next)'
