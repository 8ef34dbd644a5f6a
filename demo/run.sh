#!/usr/bin/env bash
# Decides the loads of the demo, a department that does not exist, and prints verdicts and reasons;
# makes the journal of three weeks in which another recorded 300 loads; then opens the desktop on a
# Friday of it. Without a display, writes a picture of every page into demo/pictures instead.
#
# usage: demo/run.sh [--headless] [NUMBER]...
#
# --headless: pictures, also where there is a display
# NUMBER: only the records whose file names begin with it, without journal and window, as in:
#         demo/run.sh 18 40
set -euo pipefail

numbers=()
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    shows=loadwarden-demo-desktop
else
    shows=loadwarden-pictures
fi
for argument in "$@"; do
    case "$argument" in
        --headless) shows=loadwarden-pictures ;;
        --help | -h) sed -n '2,10s/^# \{0,1\}//p' "${BASH_SOURCE[0]}"; exit 0 ;;
        [0-9] | [0-9][0-9]) numbers+=("$argument") ;;
        *) echo "demo/run.sh: unknown option $argument" >&2; exit 2 ;;
    esac
done

cd "$(dirname "${BASH_SOURCE[0]}")/.."
bash tests/setup.sh

mkdir -p build
log=build/demo.log
echo "demo: building (several minutes the first time, then only what has changed; progress in $log) ..." >&2
targets=(loadwarden-cli)
if [ ${#numbers[@]} -eq 0 ]; then
    targets+=(loadwarden-demo "$shows")
fi
if ! { cmake --preset release && cmake --build --preset release --target "${targets[@]}" \
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

# The journals are made anew when the program that makes them has changed.
folder=build/demo
journal=$folder/department.journal
moment=2031-03-14T13:10-05:00
export XDG_DATA_HOME=$PWD/$folder/data
maker=build/release/demo/department/loadwarden-demo
if [ ! -e "$folder/whole" ] || [ "$maker" -nt "$folder/whole" ]; then
    echo "demo: three weeks of another invented department, act by act (some 30 seconds) ..." >&2
    rm -rf "$folder"
    mkdir -p "$folder/friday"
    "$maker" "$journal" "$XDG_DATA_HOME/loadwarden" >&2
    "$maker" "$folder/friday/department.journal" "$folder/friday/keep" "$moment" >&2
    touch "$folder/whole"
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

The desktop, on that Friday at 13:10. All of it is invented. Who works there, with PINs that are no secret:
  Arden Quill   supervisor   st-arden   704162
  Brook Tamsin  lead         st-brook   815273
  Corin Vale    operator     st-corin   926384
  Dara Wren     operator     st-dara    137495
What to try first: demo/README.md.

END2

# Each start has a copy, so that nothing stays of what somebody tries.
copy=$(mktemp -d "$folder/open.XXXXXX")
trap 'rm -rf "$copy"' EXIT
cp -r "$folder/friday/." "$copy"
if [ "$shows" = loadwarden-demo-desktop ]; then
    echo "demo: the window is open; close it to end" >&2
    build/release/demo/desktop/loadwarden-demo-desktop "$copy/department.journal" "$copy/keep" "$moment"
    exit
fi
pictures=demo/pictures
painter=build/release/demo/painter/loadwarden-pictures
if [ ! -e "$folder/painted" ] || [ ! -d "$pictures" ] || [ "$painter" -nt "$folder/painted" ]; then
    echo "demo: a picture of every page goes into $pictures (a minute or two) ..." >&2
    rm -rf "$pictures"
    # Without a display the window system has complaints of its own, which help nobody.
    if ! QT_QPA_PLATFORM=offscreen "$painter" "$copy/department.journal" "$copy/keep" "$moment" \
        st-brook 815273 "$pictures" "" 2>"$folder/pictures.log"; then
        cat "$folder/pictures.log" >&2
        exit 1
    fi
    touch "$folder/painted"
fi
found=("$pictures"/*.png)
echo "${#found[@]} pictures of the desktop, light and dark, 1366x768 and 1920x1080, lie in $pictures"
