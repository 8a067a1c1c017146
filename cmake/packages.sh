#!/bin/sh
# The one list of what groat is built with, and the one place that installs it.
#
#   sh cmake/packages.sh GROUP...     groups: build, test, sheets, ci
#
# `sheets` is what others read our sheets with: a browser, a reader of PDF, a spreadsheet. Tests that need them are
# skipped where they cannot be had.
#
# On Debian and its kin missing packages are installed (as root, or with sudo). A second run asks dpkg
# only, so that it is quick and works offline. Elsewhere the packages' names are printed, and the build
# goes on if a compiler and CMake are there.
set -eu

debian() {
    case $1 in
    build) echo g++ cmake ninja-build libboost-dev libfmt-dev libyaml-cpp-dev nlohmann-json3-dev \
        libexpected-dev libcli11-dev ;;
    test) echo doctest-dev libbenchmark-dev python3 python3-jsonschema python3-yaml units glpk-utils faketime ;;
    sheets) echo chromium chromium-driver fonts-liberation poppler-utils libreoffice-calc-nogui ;;
    ci) echo git clang-14 clang-format-14 libclang-rt-14-dev ;;
    esac
}

fedora() {
    case $1 in
    build) echo gcc-c++ cmake ninja-build boost-devel fmt-devel yaml-cpp-devel json-devel \
        expected-devel cli11-devel ;;
    test) echo doctest-devel google-benchmark-devel python3 python3-jsonschema python3-pyyaml units glpk-utils libfaketime ;;
    sheets) echo chromium chromedriver liberation-fonts poppler-utils libreoffice-calc ;;
    ci) echo git clang clang-tools-extra compiler-rt libasan libubsan ;;
    esac
}

arch() {
    case $1 in
    build) echo gcc cmake ninja boost fmt yaml-cpp nlohmann-json tl-expected cli11 ;;
    test) echo doctest benchmark python python-jsonschema python-yaml units glpk libfaketime ;;
    sheets) echo chromium ttf-liberation poppler libreoffice-fresh ;;
    ci) echo git clang compiler-rt ;;
    esac
}

# Nothing here brings Python's jsonschema: `pip install jsonschema`, or the schema's test is skipped.
homebrew() {
    case $1 in
    build) echo cmake ninja boost fmt yaml-cpp nlohmann-json tl-expected cli11 ;;
    test) echo doctest google-benchmark python gnu-units glpk libfaketime ;;
    sheets) echo chromium chromedriver poppler libreoffice ;;
    ci) echo git llvm ;;
    esac
}

say() {
    printf 'groat: %s\n' "$*" >&2
}

[ $# -gt 0 ] || { say "usage: sh cmake/packages.sh GROUP... with the groups build, test, sheets, ci"; exit 2; }
for group in "$@"; do
    case $group in
    build | test | sheets | ci) ;;
    *) say "no group '$group': there are build, test, sheets and ci"; exit 2 ;;
    esac
done

# go_on_or_stop   after names were printed: whoever has the tools may have the libraries too
go_on_or_stop() {
    for tool in cmake c++; do
        if ! command -v "$tool" >/dev/null 2>&1; then
            say "$tool is not found: install the packages above, then run this again"
            exit 1
        fi
    done
    say "going on: if they are there already, all is well"
    exit 0
}

if ! command -v dpkg-query >/dev/null 2>&1 || ! command -v apt-get >/dev/null 2>&1; then
    say "this is no Debian, so nothing is installed here; the packages are called"
    for system in fedora arch homebrew; do
        names=
        for group in "$@"; do names="$names $("$system" "$group")"; done
        say "  $system:$names"
    done
    go_on_or_stop
fi

missing=
for group in "$@"; do
    for package in $(debian "$group"); do
        state=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null || true)
        [ "$state" = installed ] || missing="$missing $package"
    done
done
[ -n "$missing" ] || exit 0

# shellcheck disable=SC2086  # words on purpose, here and below
set -- $missing
if [ "$(id -u)" -eq 0 ]; then
    as_root="env"
elif command -v sudo >/dev/null 2>&1; then
    if [ -t 0 ]; then as_root='sudo env'; else as_root='sudo -n env'; fi
else
    say "to be installed by root:  apt-get install $*"
    go_on_or_stop
fi

log=$(mktemp)
trap 'rm -f "$log"' EXIT
apt() {
    if $as_root DEBIAN_FRONTEND=noninteractive apt-get -y -q -o DPkg::Lock::Timeout=300 "$@" \
        >"$log" 2>&1 </dev/null; then return 0; fi
    tail -n 40 "$log" >&2
    return 1
}

say "installing $*"
if ! apt update || ! apt install --no-install-recommends "$@"; then
    say "apt-get could not install $*"
    exit 1
fi
