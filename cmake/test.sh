#!/bin/sh
# Every test, from a fresh clone:  sh cmake/test.sh
# Words after it go to ctest: sh cmake/test.sh -R base
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/cmake/steps.sh"

sh "$root/cmake/packages.sh" build test
sh "$root/cmake/packages.sh" sheets || say "the tests that open sheets in a browser and a spreadsheet are skipped"
say "configuring"
configure "$build" -DGROAT_TESTS=ON
say "building"
cmake --build "$build" --parallel "$(cores)"
say "testing"
cd "$build"
exec ctest --output-on-failure --no-label-summary -j2 "$@"
