#!/bin/sh
# The whole text report of every example, and of every table of readings, stands in tests/golden/NAME.txt: words
# exact, numbers within one of the last printed digit. The README's drawing, docs/flown-piece.svg, is what the program draws.
# usage: run.sh [--update] GANTLINE      --update prints each difference, then takes the new report over
set -u
update=
if [ "${1:-}" = --update ]; then
    update=yes
    shift
fi
command=$(realpath "$1")
cd "$(dirname "$0")/../.." || exit 1
golden=tests/golden
new=$(mktemp)
trap 'rm -f "$new"' EXIT
passed=0
failed=0

check() {
    name=$(basename "$1")
    expected=$golden/${name%.*}.txt
    case $1 in
    *.csv) "$command" lab "$1" >"$new" ;;
    *) "$command" report "$1" >"$new" ;;
    esac
    status=$?
    case $status in
    0 | 1 | 3) ;;
    *)
        echo "not ok $1: status $status"
        return 1
        ;;
    esac
    [ -e "$expected" ] && "${PYTHON:-/usr/bin/python3}" $golden/compare.py "$expected" "$new" && return 0
    # A report that is not there yet differs in all its lines.
    old=$expected
    [ -e "$old" ] || old=/dev/null
    diff -u "$old" "$new"
    if [ -n "$update" ]; then
        cp "$new" "$expected"
        echo "$expected: taken over"
    else
        echo "not ok $1: differs from $expected (if the new one is right: make golden)"
        return 1
    fi
}

for rig in docs/examples/*.ini docs/examples/*.csv; do
    [ -e "$rig" ] || continue
    if check "$rig"; then passed=$((passed + 1)); else failed=$((failed + 1)); fi
done
# The drawing that the README shows.
drawing() {
    "$command" report --as svg docs/examples/flown-piece.ini >"$new" || return 1
    cmp -s docs/flown-piece.svg "$new" && return 0
    [ -n "$update" ] && cp "$new" docs/flown-piece.svg && echo "docs/flown-piece.svg: taken over" && return 0
    echo "not ok docs/flown-piece.svg: the program draws another one (if that is right: make golden)"
    return 1
}
if drawing; then passed=$((passed + 1)); else failed=$((failed + 1)); fi

for expected in "$golden"/*.txt; do
    [ -e "$expected" ] || continue
    example=docs/examples/$(basename "$expected" .txt)
    [ -e "$example.ini" ] || [ -e "$example.csv" ] && continue
    echo "not ok $expected: there is no such example any more"
    failed=$((failed + 1))
done
echo "golden: $passed passed, $failed failed"
[ $failed -eq 0 ] && [ $passed -gt 0 ]
