#!/bin/sh
# Writes out-samples/*/packet.pdf again, and the picture of the first page of each kind of sheet; and the one page that
# shows all shapes.
# Usage: tests/rules/regenerate-samples.sh [PROGRAM]; the program is build/kerfpacket unless given.
set -eu
top=$(cd "$(dirname "$0")/../.." && pwd)
program=${1:-$top/build/kerfpacket}
# A shop file of whoever runs this must not count.
export XDG_CONFIG_HOME="$top/no-configuration"

# 3 means done with cautions.
accept_cautions() { "$@" || [ $? -eq 3 ]; }

for job in "$top"/out-samples/*/job.toml; do
    folder=$(dirname "$job")
    pictures=$(mktemp -d)
    rm -f "$folder/packet.pdf" # a changed job would not replace it
    accept_cautions "$program" build "$job" --out "$folder/packet.pdf"
    accept_cautions "$program" preview "$job" --out "$pictures"
    rm -f "$folder"/page-*.png
    kinds=
    for picture in "$pictures"/page-*.png; do
        kind=${picture##*/page-}
        kind=${kind#*-}
        case " $kinds " in *" $kind "*) continue ;; esac
        kinds="$kinds $kind"
        cp "$picture" "$folder/"
    done
    rm -r "$pictures"
done

pictures=$(mktemp -d)
accept_cautions "$program" preview "$top/out-samples/all-shapes.toml" --out "$pictures"
for picture in "$pictures"/page-*-cover.png; do
    cp "$picture" "$top/out-samples/all-shapes.png"
    break
done
rm -r "$pictures"
