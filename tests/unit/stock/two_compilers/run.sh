#!/bin/sh
# The stock room compiled by clang, without and with its best efforts, plans as the program's own build does.
#     run.sh PLANS SOURCE-FOLDER
set -eu
plans=$1 top=$2
command -v clang++ >/dev/null || { echo "no clang++: not compared"; exit 77; }
made=$(mktemp -d)
trap 'rm -rf "$made"' EXIT
"$plans" >"$made/own"
[ "$(wc -l <"$made/own")" -gt 300 ]
for effort in -O0 -O3; do
    clang++ -std=c++20 "$effort" -ffp-contract=off -I"$top/src" "$top/tests/unit/stock/two_compilers/plans.cpp" \
        "$top"/src/stock/*.cpp -o "$made/other"
    "$made/other" >"$made/plans"
    cmp "$made/own" "$made/plans"
done
