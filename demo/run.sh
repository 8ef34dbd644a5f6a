#!/usr/bin/env bash
# Decides the loads of the demo, a department that does not exist, and prints verdicts and reasons;
# then makes the journal of three weeks in which that department recorded 300 loads.
#
# usage: demo/run.sh [--headless] [NUMBER]...      (no window is opened either way)
#
# NUMBER: only the records whose file names begin with it, as in: demo/run.sh 18 40
set -euo pipefail

numbers=()
for argument in "$@"; do
    case "$argument" in
        --headless) ;;
        --help | -h) sed -n '2,7s/^# \{0,1\}//p' "${BASH_SOURCE[0]}"; exit 0 ;;
        [0-9] | [0-9][0-9]) numbers+=("$argument") ;;
        *) echo "demo/run.sh: unknown option $argument" >&2; exit 2 ;;
    esac
done

cd "$(dirname "${BASH_SOURCE[0]}")/.."
bash tests/setup.sh

mkdir -p build
log=build/demo.log
echo "demo: building (several minutes the first time, then only what has changed; progress in $log) ..." >&2
if ! { cmake --preset release && cmake --build --preset release --target loadwarden-cli --target loadwarden-demo \
    -j "${LOADWARDEN_JOBS:-$(nproc)}"; } >"$log" 2>&1; then
    cat "$log" >&2
    echo "demo/run.sh: the program could not be built" >&2
    exit 1
fi

shopt -s nullglob
evidence=()
if [ ${#numbers[@]} -eq 0 ]; then
    evidence=(demo/evidence/*.json)
fi
for number in "${numbers[@]}"; do
    found=(demo/evidence/"$(printf %02d "$((10#$number))")"-*.json)
    if [ ${#found[@]} -eq 0 ]; then
        echo "demo/run.sh: there is no record $number in demo/evidence" >&2
        exit 2
    fi
    evidence+=("${found[@]}")
done
if [ ${#evidence[@]} -eq 0 ]; then
    echo "demo/run.sh: there is no evidence in demo/evidence" >&2
    exit 1
fi

cat >&2 <<'END'
demo: everything in it is invented; its dates lie in March 2031, ahead on purpose (--planned).
demo: demo/README.md tells each story, and where to look first.

END

# 0: all may be released; 1: not all, which is what the demo is there to show.
status=0
build/release/app/loadwarden-cli decide --planned "${evidence[@]}" || status=$?
if [ "$status" -gt 1 ]; then
    exit "$status"
fi
if [ ${#numbers[@]} -ne 0 ]; then
    exit 0
fi

# The journal is made anew when the program that makes it has changed.
folder=build/demo
journal=$folder/department.journal
export XDG_DATA_HOME=$PWD/$folder/data
maker=build/release/demo/department/loadwarden-demo
if [ ! -e "$journal" ] || [ "$maker" -nt "$journal" ]; then
    echo "demo: three weeks of another invented department, act by act (some 20 seconds) ..." >&2
    rm -rf "$folder"
    mkdir -p "$folder"
    "$maker" "$journal" "$XDG_DATA_HOME/loadwarden" >&2
fi
cli="build/release/app/loadwarden-cli"
printf '\nThree weeks as a journal, %s: is it as it was recorded?\n' "$journal"
"$cli" verify --file "$journal"
printf '\nOne day of it, the Friday on which a vial grew, as it looks at 20:00:\n'
"$cli" load list --file "$journal" --day 2031-03-14 --at 2031-03-14T20:00-05:00
cat <<END2

To look around: export LOADWARDEN_FILE=$journal XDG_DATA_HOME=$XDG_DATA_HOME
then, for example: $cli load show 2-2031-073-02 --at 2031-03-14T20:00-05:00
                   $cli load history 2-2031-073-02
demo/README.md tells who works there.
END2
