# Shared by demo.sh, test.sh and .ci/run, which set `root` and read this file with `.`
# shellcheck shell=sh

build=${GROAT_BUILD:-$root/build}

say() {
    printf 'groat: %s\n' "$*" >&2
}

cores() {
    nproc 2>/dev/null || getconf _NPROCESSORS_ONLN 2>/dev/null || echo 2
}

# quietly LOG COMMAND...   runs it into the log, and shows the log's end only when it fails
quietly() {
    log=$1
    shift
    if "$@" >"$log" 2>&1 </dev/null; then return 0; fi
    tail -n 60 "$log" >&2
    say "that failed: $*"
    say "the whole log is $log"
    return 1
}

# configure FOLDER OPTIONS...   with Ninja where it is found; a folder keeps the generator it has
configure() {
    folder=$1
    shift
    mkdir -p "$folder"
    cache=$folder/CMakeCache.txt
    if [ -f "$cache" ] && ! grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$root" "$cache"; then
        rm -rf "$cache" "$folder/CMakeFiles" # it came along when the project was moved or copied
    fi
    if [ ! -f "$cache" ] && command -v ninja >/dev/null 2>&1; then set -- -G Ninja "$@"; fi
    quietly "$folder/configure.log" cmake -S "$root" -B "$folder" "$@"
}
