#!/usr/bin/env bash
# Decides the loads of the demo, a department that does not exist, and prints verdicts and reasons.
#
# usage: demo/run.sh [--headless]      (no window is opened either way)
set -euo pipefail

for argument in "$@"; do
    case "$argument" in
        --headless) ;;
        --help | -h) sed -n '2,4s/^# \{0,1\}//p' "${BASH_SOURCE[0]}"; exit 0 ;;
        *) echo "demo/run.sh: unknown option $argument" >&2; exit 2 ;;
    esac
done

cd "$(dirname "${BASH_SOURCE[0]}")/.."
bash tests/setup.sh

mkdir -p build
log=build/demo.log
echo "demo: building (minutes the first time, progress in $log) ..." >&2
if ! { cmake --preset release && cmake --build --preset release --target loadwarden-cli \
    -j "${LOADWARDEN_JOBS:-$(nproc)}"; } >"$log" 2>&1; then
    cat "$log" >&2
    echo "demo/run.sh: the program could not be built" >&2
    exit 1
fi

shopt -s nullglob
evidence=(demo/evidence/*.json)
if [ ${#evidence[@]} -eq 0 ]; then
    echo "demo/run.sh: there is no evidence in demo/evidence" >&2
    exit 1
fi

# 0: all may be released; 1: not all, which is what the demo is there to show.
status=0
build/release/app/loadwarden-cli decide "${evidence[@]}" || status=$?
if [ "$status" -gt 1 ]; then
    exit "$status"
fi
