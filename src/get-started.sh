#!/bin/sh
# On a fresh Debian 12: installs what is missing, builds kerfpacket to build/ and prints a first packet.
#     sh src/get-started.sh --install [PREFIX]    installs it below PREFIX as well, or below /usr/local; where DESTDIR
#                                                 is set, all of that stands below it
set -eu
prefix=
case ${1-} in
    '') ;;
    --install) prefix=${2:-/usr/local} ;;
    *) echo "get-started.sh: unknown option $1; expected --install [PREFIX], or nothing" >&2; exit 2 ;;
esac
case $prefix in
    '' | /*) ;;
    *) echo "get-started.sh: PREFIX is a whole path, as /usr/local or $HOME/.local" >&2; exit 2 ;;
esac
top=$(cd "$(dirname "$0")/.." && pwd)
. "$top/src/packages.sh"

# shellcheck disable=SC2086 # one word a package
install_missing $build_packages
cmake -S "$top" -B "$top/build" -G Ninja -DCMAKE_BUILD_TYPE=Release
cmake --build "$top/build"

# 3 means done with cautions: the sample may have some.
job=$(find "$top/out-samples" -name job.toml | sort | head -n 1)
"$top/build/kerfpacket" build "$job" --out "$top/build/sample.pdf" || [ $? -eq 3 ]

program=$top/build/kerfpacket
if [ -n "$prefix" ]; then
    as_root=
    below=${DESTDIR-}$prefix
    mkdir -p "$below" 2>/dev/null || true
    [ -w "$below" ] || [ "$(id -u)" -eq 0 ] || as_root=sudo
    # shellcheck disable=SC2086 # nothing, or one word
    $as_root env DESTDIR="${DESTDIR-}" cmake --install "$top/build" --prefix "$prefix"
    program=$below/bin/kerfpacket
    "$program" check "$job" >/dev/null || [ $? -eq 3 ]
fi

cat <<END

kerfpacket is there:     $program
a first packet, to open: $top/build/sample.pdf
the job it came from:    $job

Next: copy that job file, change a measurement, and run
    $program check YOUR-JOB.toml
    $program build YOUR-JOB.toml
END
