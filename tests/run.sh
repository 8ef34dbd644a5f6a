#!/usr/bin/env bash
# Builds and tests everything; `tests/run.sh --help` says how.
set -euo pipefail

usage() {
    cat <<'END'
usage: tests/run.sh [OPTION]

Without an option: builds with clang and sanitizers (preset asan-ubsan, all tests) and with GCC
optimised (preset release, the tests labelled release), runs both and closes with ctest's summary.

  --bench      build with GCC optimised and run the benchmarks only
  --proof      build with GCC optimised and run the long proofs only
  --tidy       run clang-tidy on the sources that differ from the commit before the last
  --tidy-all   run clang-tidy on all sources
  --help       this text

LOADWARDEN_JOBS sets how many things are done at once (else: one a processor). With CI=true
warnings are errors. Missing Debian packages are installed first (tests/setup.sh).
END
}

say() { printf '\n== %s\n' "$*"; }

mode=test
for argument in "$@"; do
    case "$argument" in
        --bench | --proof | --tidy | --tidy-all) mode=${argument#--} ;;
        --help | -h) usage; exit 0 ;;
        *) echo "tests/run.sh: unknown option $argument" >&2; usage >&2; exit 2 ;;
    esac
done

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$root"
jobs=${LOADWARDEN_JOBS:-$(nproc)}
options=()
if [ "${CI:-}" = true ]; then
    options+=(-DLOADWARDEN_WERROR=ON)
fi
# An uncommon zone, so that no test passes because of the zone of the computer it runs on.
export TZ=Pacific/Chatham
export UBSAN_OPTIONS=print_stacktrace=1

bash tests/setup.sh

configure() { # preset, further options
    say "configure $1"
    # A folder that is there already is compiled as it was: whoever works in it builds parts anew.
    local unity=()
    if [ ! -e "build/$1/CMakeCache.txt" ] && [ "$1" != tidy ]; then
        unity=(-DLOADWARDEN_UNITY=ON)
    fi
    cmake --preset "$1" "${options[@]}" "${unity[@]}" "${@:2}" >"build/configure-$1.log" 2>&1 \
        || { cat "build/configure-$1.log"; exit 1; }
}

build() { # preset, further options
    say "build $1"
    cmake --build --preset "$1" -j "$jobs" "${@:2}"
}

count_tests() { # folder, further options
    ctest --test-dir "$1" -N "${@:2}" | sed -n 's/^Total Tests: //p'
}

run_tests() { # folder, further options
    ctest --test-dir "$1" --no-tests=error --output-on-failure "${@:2}"
}

# Both builds as one tree of tests, so that one summary speaks for all.
join_builds() {
    mkdir -p build/all
    printf 'subdirs("%s/build/%s")\n' "$root" asan-ubsan "$root" release >build/all/CTestTestfile.cmake
}

tidy_files() { # the sources to look at, relative to the root
    if [ "$mode" = tidy-all ]; then
        git ls-files -- '*.cpp'
    else
        local base=HEAD~
        git rev-parse --quiet --verify "$base" >/dev/null || base=HEAD
        git diff --name-only --diff-filter=d "$base" -- '*.cpp'
        git ls-files --others --exclude-standard -- '*.cpp'
    fi | sort -u | while read -r file; do
        # What no preset compiles here (a fuzzer, say) has no compile command.
        if grep -qF "\"file\": \"$root/$file\"" build/tidy/compile_commands.json; then
            printf '%s\n' "$file"
        fi
    done
}

mkdir -p build
case "$mode" in
    test)
        configure asan-ubsan
        build asan-ubsan
        configure release -DLOADWARDEN_PROOFS=OFF
        build release --target checks
        for preset in asan-ubsan release; do
            if [ "$(count_tests "build/$preset")" -eq 0 ]; then
                echo "tests/run.sh: the build $preset registers no test" >&2
                exit 1
            fi
        done
        join_builds
        say "test"
        # One more than there are processors: the window's tests wait half of their time.
        run_tests build/all -LE '^(bench|proof)$' -j "$((jobs + 1))"
        ;;
    bench)
        configure release -DLOADWARDEN_BENCHMARKS=ON
        build release
        say "benchmarks"
        run_tests build/release -L '^bench$' --verbose
        ;;
    proof)
        configure release -DLOADWARDEN_PROOFS=ON
        build release
        say "proofs"
        run_tests build/release -L '^proof$' -j "$jobs"
        ;;
    tidy | tidy-all)
        configure tidy
        say "clang-tidy"
        files=$(tidy_files)
        if [ -z "$files" ]; then
            echo "no source to look at"
        else
            xargs -r -d '\n' -n 1 -P "$jobs" clang-tidy-16 -p build/tidy --quiet <<<"$files"
            echo "$(wc -l <<<"$files") sources are clean"
        fi
        ;;
esac
