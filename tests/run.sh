#!/bin/sh
# Installs what the tests need besides, builds everything to build-tests/ and runs all tests.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
. "$top/src/packages.sh"

# shellcheck disable=SC2086 # one word a package
install_missing $build_packages $test_packages
cd "$top"
cmake --preset tests
cmake --build --preset tests
ctest --preset tests --parallel "$(nproc)"
