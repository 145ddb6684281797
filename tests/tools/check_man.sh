#!/bin/sh
# The manual pages are sound roff. They, and docs/rig-file.md, name every key and unit of the rig file; gantline(1)
# names every option of the command, gantline-lab(1) and docs/lab.md every option and column of `lab`.
# usage: check_man.sh BUILD
set -u
build=$(realpath "$1")
cd "$(dirname "$0")/../.." || exit 1
words=$(mktemp)
text=$(mktemp)
trap 'rm -f "$words" "$text"' EXIT
passed=0
failed=0

ok() {
    if [ "$1" -eq 0 ]; then passed=$((passed + 1)); else failed=$((failed + 1)); fi
}

# The text of a page, blanks and line ends as one blank each.
flat() {
    case $1 in
    *.md) cat "$1" ;;
    *) MANWIDTH=1000 man -E ascii --no-hyphenation -l "$1" 2>/dev/null | sed 's/.\x08//g' ;;
    esac | tr -s ' \n' '  ' >"$text"
}

# Every line of $words stands in a page as a word of its own.
names_all() {
    flat "$1"
    [ -s "$words" ]
    ok $?
    while read -r word; do
        grep -qwF -e "$word" "$text"
        found=$?
        [ $found -eq 0 ] || echo "not ok $1: does not name: $word"
        ok $found
    done <"$words"
}

for page in docs/man/*; do
    warnings=$(man --warnings -E UTF-8 -l -Tutf8 -Z "$page" 2>&1 >/dev/null)
    [ -z "$warnings" ] || echo "not ok $page: $warnings"
    [ -z "$warnings" ]
    ok $?
done

"$build/tests/list_keys" | sort -u >"$words"
names_all docs/man/gantline-rig.5
[ ! -e docs/rig-file.md ] || names_all docs/rig-file.md
for command in "" report limit explain keys hardware; do
    # shellcheck disable=SC2086 # no word at all where it is empty
    "$build/gantline" $command --help
done | grep -o -e '--[a-z][a-z-]*' | sort -u >"$words"
names_all docs/man/gantline.1
# The options of `lab`, and its columns: they stand set in, each with what it needs in brackets.
"$build/gantline" lab --help >"$text"
{
    grep -o -e '--[a-z][a-z-]*' "$text"
    sed -n 's/^  \([a-z][a-z ]*[a-z]\)\( \[[^]]*\]\)\{0,1\} (.*/\1/p' "$text"
} | sort -u >"$words"
names_all docs/man/gantline-lab.1
[ ! -e docs/lab.md ] || names_all docs/lab.md
"$build/gantline" explain --help | grep -o -e '--[a-z][a-z-]*' | sort -u >"$words"
names_all docs/man/gantline-explain.1
"$build/gantline" timber --help | grep -o -e '--[a-z][a-z-]*' | sort -u >"$words"
names_all docs/man/gantline-timber.1
# The options of `worksheet`, and the words of a set: each stands set in by two.
"$build/gantline" worksheet --help >"$text"
{
    grep -o -e '--[a-z][a-z-]*' "$text"
    sed -n 's/^  \([a-z][a-z -]*[a-z]\)$/\1/p' "$text"
} | sort -u >"$words"
names_all docs/man/gantline-worksheet.1
[ ! -e docs/worksheet.md ] || names_all docs/worksheet.md
echo "man: $passed passed, $failed failed"
[ $failed -eq 0 ]
