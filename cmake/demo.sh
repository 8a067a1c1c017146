#!/bin/sh
# From a fresh clone to a first quote:  sh cmake/demo.sh
# Installs what the build needs, builds the command into build/, and quotes an order of the sample bakery.
set -eu

root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/cmake/steps.sh"

order=2026-041

sh "$root/cmake/packages.sh" build
say "configuring"
configure "$build" -DGROAT_TESTS=OFF
say "building, which takes a few minutes the first time"
quietly "$build/build.log" cmake --build "$build" --target groat --parallel "$(cores)"

cd "$root"
command=$build/groat
case $command in "$root"/*) command=${command#"$root"/} ;; esac
say "$command quote $order --books samples/bakery"
echo
"$command" quote "$order" --books samples/bakery
echo
say "that was the client's sheet; the maker's, with every cost on it, is"
say "    $command quote $order --books samples/bakery --for maker"
