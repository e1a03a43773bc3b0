#!/bin/sh
# Renews out-samples/ when a version is named: of two samples the packet and the picture of the first page of each kind of
# sheet, of the others the picture of their cover; and the one page that shows all shapes.
# Usage: tests/rules/regenerate-samples.sh [PROGRAM]; the program is build/kerfpacket unless given.
set -eu
top=$(cd "$(dirname "$0")/../.." && pwd)
program=${1:-$top/build/kerfpacket}
with_packet="harbor-stair mill-lane"
# A shop file of whoever runs this must not count.
export XDG_CONFIG_HOME="$top/no-configuration"

# 3 means done with cautions.
accept_cautions() { "$@" || [ $? -eq 3 ]; }

for job in "$top"/out-samples/*/job.toml; do
    folder=$(dirname "$job")
    wanted=cover.png
    pictures=$(mktemp -d)
    rm -f "$folder"/packet.pdf "$folder"/page-*.png
    case " $with_packet " in *" $(basename "$folder") "*)
        wanted=
        accept_cautions "$program" build "$job" --out "$folder/packet.pdf"
        ;;
    esac
    accept_cautions "$program" preview "$job" --out "$pictures"
    kinds=
    for picture in "$pictures"/page-*.png; do
        kind=${picture##*/page-}
        kind=${kind#*-}
        case " $kinds " in *" $kind "*) continue ;; esac
        kinds="$kinds $kind"
        if [ -z "$wanted" ] || [ "$kind" = "$wanted" ]; then cp "$picture" "$folder/"; fi
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
