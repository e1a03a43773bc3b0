#!/bin/sh
# On a fresh Debian 12: installs what is missing, builds kerfpacket to build/ and prints a first packet.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
. "$top/src/packages.sh"

# shellcheck disable=SC2086 # one word a package
install_missing $build_packages
cmake -S "$top" -B "$top/build" -G Ninja -DCMAKE_BUILD_TYPE=Release
cmake --build "$top/build"

# 3 means done with cautions: the sample may have some.
job=$(find "$top/out-samples" -name job.toml | sort | head -n 1)
"$top/build/kerfpacket" build "$job" --out "$top/build/sample.pdf" || [ $? -eq 3 ]

cat <<END

kerfpacket is built:     $top/build/kerfpacket
a first packet, to open: $top/build/sample.pdf
the job it came from:    $job

Next: copy that job file, change a measurement, and run
    $top/build/kerfpacket check YOUR-JOB.toml
    $top/build/kerfpacket build YOUR-JOB.toml
END
