#!/bin/sh
# Run every suite, go on after failures, show failures in full, and end with the line `N passed, N failed`.
#
# usage: run_suites.sh                builds, then all suites, the plain and the sanitized build both
#        run_suites.sh --only BUILD   the suites of one build that is there already
#        run_suites.sh --one NAME COMMAND...   used by the script itself: one suite
#
# A suite prints `NAME: N passed, M failed`, or is a cmocka program. It counts one failure more if it ends
# abnormally, takes too long or turns out to have run nothing. Environment: MAKE, PYTHON, JOBS.
set -u
cd "$(dirname "$0")/../.." || exit 1

logs=build/check
seconds=${SUITE_SECONDS:-270}
fuzz_seconds=20
MAKE=${MAKE:-make}
PYTHON=${PYTHON:-/usr/bin/python3}
JOBS=${JOBS:-$(nproc 2>/dev/null || echo 2)}
# A leak or an error found by a sanitizer must not look like one of the command's own exit statuses.
export ASAN_OPTIONS="exitcode=99:abort_on_error=0:detect_leaks=1"
export UBSAN_OPTIONS="print_stacktrace=1:exitcode=99"
export PYTHON LC_ALL=C.UTF-8 PYTHONDONTWRITEBYTECODE=1

# Numbers out of a log: the suite's own lines, or cmocka's.
count() {
    awk '
    /^[^ ]+: [0-9]+ passed, [0-9]+ failed$/ { passed += $(NF - 3); failed += $(NF - 1) }
    /^\[  PASSED  \] [0-9]+ test\(s\)\.$/ { passed += $4 }
    /^ *[0-9]+ FAILED TEST\(S\)$/ { failed += $1 }
    END { print passed + 0, failed + 0 }' "$1"
}

# Run a suite; leave NAME.log and NAME.count (passed, failed, why).
one() {
    name=$1
    shift
    timeout "$seconds" "$@" >"$logs/$name.log" 2>&1 </dev/null
    status=$?
    # shellcheck disable=SC2046 # two words on purpose
    set -- $(count "$logs/$name.log")
    why=
    if [ $status -eq 124 ]; then
        why="stopped after $seconds s"
    elif [ $status -ne 0 ] && [ "$2" -eq 0 ]; then
        why="ended with status $status"
    elif [ $(($1 + $2)) -eq 0 ]; then
        why="ran no test"
    fi
    [ -z "$why" ] || set -- "$1" $(($2 + 1))
    echo "$1 $2 $why" >"$logs/$name.count"
}

# The list of suites, one a line: its name and its command.
suites_of_build() {
    build=$1
    mark=$2
    for folder in unit laws; do
        found=
        for source in tests/"$folder"/*.c; do
            program=$(basename "$source" .c)
            # In unit, only test_*.c is a suite; the other programs serve a script.
            case $folder-$program in unit-test_* | laws-*) ;; *) continue ;; esac
            grep -qs '^int main\b' "$source" || continue
            echo "$folder-$program$mark $build/tests/$folder/$program"
            found=yes
        done
        [ -n "$found" ] || echo "$folder$mark false"
    done
    echo "known$mark $PYTHON tests/known/run.py $build/gantline"
    echo "bad-input$mark sh tests/bad-input/run.sh $build/gantline"
    echo "tables$mark sh tests/tables/run.sh $build/gantline"
    echo "warnings$mark sh tests/warnings/run.sh $build/gantline"
    echo "cli$mark sh tests/cli/run.sh $build/gantline"
    echo "explain$mark $PYTHON tests/explain/run.py $build/gantline"
    echo "golden$mark sh tests/golden/run.sh $build/gantline"
    echo "examples$mark sh tests/examples/run.sh $build/gantline"
    echo "sample$mark sh tests/tools/test_sample.sh $build/tests/sample"
}

suite_fuzz() {
    echo "fuzz sh tests/tools/fuzz.sh build/fuzz/tests/fuzz/fuzz_read $fuzz_seconds tests/fuzz/corpus"
    echo "fuzz-tables sh tests/tools/fuzz.sh build/fuzz/tests/fuzz/fuzz_tables $fuzz_seconds hardware-tables"
    echo "fuzz-lab sh tests/tools/fuzz.sh build/fuzz/tests/fuzz/fuzz_lab $fuzz_seconds tests/fuzz/readings"
}

suites_of_project() {
    echo "pages sh tests/pages/run.sh build/gantline"
    for script in tests/unit/*.sh; do
        [ ! -e "$script" ] || echo "unit-$(basename "$script" .sh) sh $script build/gantline"
    done
    echo "includes sh tests/tools/check_includes.sh"
    echo "schema $PYTHON tests/tools/check_schema.py build/gantline"
    echo "verification sh tests/tools/check_verification.sh build/gantline"
    echo "man sh tests/tools/check_man.sh build"
    echo "oracle $PYTHON tests/oracle/run.py build/gantline"
    echo "install sh tests/tools/test_install.sh"
}

run_list() {
    xargs -P "$JOBS" -I '{}' sh -c 'sh tests/tools/run_suites.sh --one {}'
}

# A build is a suite of one test. Where it fails, what needs it is not run.
build() {
    name=$1
    shift
    # shellcheck disable=SC2086 # MAKE may hold options
    if $MAKE -s "$@" >"$logs/$name.log" 2>&1; then
        echo "1 0" >"$logs/$name.count"
    else
        echo "0 1 does not build" >"$logs/$name.count"
        return 1
    fi
}

summary() {
    all_passed=0
    all_failed=0
    for file in "$logs"/*.count; do
        read -r passed failed why <"$file"
        name=$(basename "$file" .count)
        all_passed=$((all_passed + passed))
        all_failed=$((all_failed + failed))
        echo "$name: $passed passed, $failed failed${why:+ ($why)}"
        [ "$failed" -eq 0 ] || sed 's/^/    /' "$logs/$name.log"
    done
    echo "$all_passed passed, $all_failed failed"
    [ "$all_failed" -eq 0 ]
}

if [ "${1:-}" = --one ]; then
    shift
    one "$@"
    exit 0
fi

rm -rf "$logs"
mkdir -p "$logs"
if [ "${1:-}" = --only ]; then
    suites_of_build "$2" "" | run_list
else
    {
        build build-fuzz fuzz-program && suite_fuzz
        build build-asan asan && suites_of_build build/asan -asan
        # The longest stand among the project's own: they go first, so that none runs on alone at the end.
        build build all tests && suites_of_project && suites_of_build build ""
    } | run_list
fi
summary
