#!/bin/sh
# Installs what the tests need besides, builds everything to build-tests/ and runs all tests.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
. "$top/src/packages.sh"

# shellcheck disable=SC2086 # one word a package
install_missing $build_packages $test_packages
cmake -S "$top" -B "$top/build-tests" -G Ninja -DCMAKE_BUILD_TYPE=Release -DKERFPACKET_TESTS=ON
cmake --build "$top/build-tests"
ctest --test-dir "$top/build-tests" --parallel "$(nproc)" --output-on-failure
