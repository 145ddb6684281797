#!/bin/sh
# Formatting, clang-tidy, cppcheck and include directions; all are run before it fails.
# usage: lint.sh C_FILE...      environment: CHECKED, the sources that clang-tidy and cppcheck read
# shellcheck disable=SC2317 # step calls the functions by name
set -u
cd "$(dirname "$0")/../.." || exit 1
jobs=$(nproc 2>/dev/null || echo 2)
bad=0

step() {
    name=$1
    shift
    if "$@"; then
        echo "lint: $name: clean"
    else
        echo "lint: $name: see above"
        bad=1
    fi
}

tidy() {
    # What clang-tidy says of warnings that it suppressed is no finding; anything else is.
    # shellcheck disable=SC2086
    ! printf '%s\n' $CHECKED | xargs -P "$jobs" -I '{}' clang-tidy --quiet '{}' -- -std=c17 -Iinclude -Isrc 2>&1 |
        grep -v '^[0-9]* warnings\? .*generated\.$'
}

check_cpp() {
    # normalCheckLevelMaxBranches and the like are remarks on cppcheck itself.
    # shellcheck disable=SC2086
    cppcheck -q -j "$jobs" --std=c11 --enable=warning,performance,portability --inline-suppr --error-exitcode=1 \
        --suppress=missingIncludeSystem --template=gcc -Iinclude -Isrc $CHECKED
}

step clang-format clang-format --dry-run --Werror "$@"
step clang-tidy tidy
step cppcheck check_cpp
step includes sh tests/tools/check_includes.sh
exit $bad
