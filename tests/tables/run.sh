#!/bin/sh
# run.sh COMMAND - the hardware tables as a user meets them.
#
# Every NAME.ini here is a table with a fault: `COMMAND hardware --tables NAME.ini` has to end with status 2,
# print nothing, and write exactly NAME.expected to standard error. A new case is two files, no code.
# Below that: the command's options, lists and statuses; the shipped tables; the user's page.
set -u
command=${1:?the command to test}
case $command in
/*) ;;
*) command=$PWD/$command ;;
esac
cd "$(dirname "$0")" || exit 2
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
passed=0
failed=0

# check NAME CONDITION...: one test; the condition is a command.
check() {
    what=$1
    shift
    if "$@"; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "not ok $what"
        sed 's/^/  /' "$scratch/err"
    fi
}

# run ARGUMENT...: `COMMAND hardware`, its output and status kept.
run() {
    "$command" hardware "$@" >"$scratch/out" 2>"$scratch/err" </dev/null
    status=$?
}

ended() { [ "$status" -eq "$1" ]; }
silent() { [ ! -s "$scratch/out" ]; }
refused() { ended 2 && silent && [ -s "$scratch/err" ]; }
# Blanks and line ends as one blank each: where a line is broken does not matter.
printed() { tr -s ' \n' '  ' <"$scratch/out" | grep -qF -- "$1"; }
said() { grep -qF -- "$1" "$scratch/err"; }
well() { ended 0 && [ ! -s "$scratch/err" ] && printed "$1"; }
refused_with() { refused && said "$1"; }
narrow() { [ -z "$(awk 'length > 80' "$scratch/out")" ]; }
before() { awk -v first="$1" -v then="$2" 'index($0, first) && !a { a = NR } index($0, then) && !b { b = NR }
    END { exit !(a && b && a < b) }' "$scratch/out"; }

# --- one fault a file ---

for table in *.ini; do
    name=${table%.ini}
    run --tables "$table"
    if ended 2 && silent && cmp -s "$name.expected" "$scratch/err"; then
        passed=$((passed + 1))
        continue
    fi
    failed=$((failed + 1))
    echo "not ok $name"
    ended 2 || echo "  status $status, expected 2"
    silent || echo "  standard output is not empty"
    diff -u "$name.expected" "$scratch/err" | sed 's/^/  /'
done

# --- the command ---

run --help
check "help" well "usage: gantline hardware"
run bowline reef
check "two names" refused_with "one name at a time"
run --tables
check "--tables without a file" refused_with "needs something behind it"
run --frobnicate
check "unknown option" refused_with "no option"
run --tables "$scratch/absent.ini"
check "absent file" refused_with "cannot read"
run --tables "$scratch"
check "folder" refused_with "cannot read"
run --tables /dev/zero
check "endless file" refused_with "256 KiB"
run --tables keeps-zero.ini --tables well/own.ini --tables wll-zero.ini
check "every file's faults: the first" refused_with "keeps-zero.ini:2: "
check "every file's faults: the last" refused_with "wll-zero.ini:2: "
set --
for i in 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16; do set -- "$@" --tables well/own.ini; done
run "$@"
check "sixteen tables" well "own.ini"
run "$@" --tables well/own.ini
check "seventeen tables" refused_with "more than 16"
"$command" hardware --tables - <well/own.ini >"$scratch/out" 2>"$scratch/err"
status=$?
check "standard input" well "(standard input)"
"$command" hardware >/dev/full 2>"$scratch/err"
status=$?
check "full standard output" ended 2

# --- the list ---

run
check "list" well "bowline keeps 55 %. Source: HSE CRR 364/2001, low end of 55 to 74 % (memory)."
check "list: 80 columns" narrow
check "list: ASCII" eval '! LC_ALL=C grep -q "[^ -~]" "$scratch/out"'
check "list: never safe" eval '! grep -qiw safe "$scratch/out"'
check "list: no nan or inf" eval '! grep -qiE "(^|[^a-z])(-?nan|-?inf)([^a-z]|\$)" "$scratch/out"'
check "list: steps" printed "up to 5 deg, 45 deg, 90 deg; keeps 100 %, 70 %, 50 %; beyond not allowed."
check "list: a formula" printed "from 1; coefficient 0.5; power 0.5."
check "list: factors" printed "wire rope 10; fibre rope 14; chain 8; shackle 10; metal 8; wll share 50 %; over people yes."
run --tables well/own.ini --tables well/second.ini
check "own rows" well "loft-block wll 2.45 kN; mass 1.1 kg; efficiency 91 %; sheave diameter 80 mm. Source: tag, and a try-out on the dock (own). Line 2."
check "own rows: no source" printed "loft-line mbs 21.0 kN; diameter 11 mm; material flax. No source stated (own). Line 9."
check "own rows: a falling list rises" printed "from 2, 4, 8; keeps 60 %, 80 %, 90 %"
check "own rows: the first table first" before "well/own.ini" "well/second.ini"
check "own rows: before the shipped" before "well/second.ini" "Shipped tables"
check "own rows: 80 columns" narrow
check "shadowed by another table" printed "bowline keeps 70 %. No source stated (own). Line 1. Not used: well/own.ini:17 stands before it."
check "shadowed: shipped" printed "low end of 55 to 74 % (memory). Not used: well/own.ini:17 stands before it."
check "shadowed: no other row" [ "$(tr -s ' \n' '  ' <"$scratch/out" | grep -o 'stands before it' | wc -l)" = 2 ]

# --- one name ---

run SHACKLE
check "a name" well "[side-load shackle]"
check "a name: its note" printed "3.25 t at 90 degrees: 1.625 t."
check "a name: its table" printed "table hardware-tables/fittings.ini:"
check "a name: its own rows only" [ "$(grep -c '^\[' "$scratch/out")" = 1 ]
run choke
check "a name: not a kind's rows" [ "$(grep -c '^\[' "$scratch/out")" = 1 ]
run --tables well/own.ini bowline
check "a name of two rows" [ "$(grep -c '^\[knot ' "$scratch/out")" = 2 ]
check "a name of two rows: own first" before "well/own.ini:17" "hardware-tables/knots.ini"
check "a name of two rows: one is not used" printed "not used well/own.ini:17 stands before it"
check "a name of two rows: text with a mark" printed "our own pulls; the # of them was 6"
run bowlin
check "unknown name" refused_with 'no table has a row `bowlin`; did you mean `bowline`?'
run contraption-of-mine
check "unknown name, none near" refused_with '`gantline hardware` lists them all'
run en12275-basic-open
check "an example's note" well "not the gear in hand"

# --- the shipped tables, as files of a user's ---

for table in ../../hardware-tables/*.ini; do
    "$command" hardware --tables "$table" >"$scratch/out" 2>"$scratch/err"
    status=$?
    check "$table: reads" well "Shipped tables"
    check "$table: ASCII" eval '! LC_ALL=C grep -q "[^ -~]" "$table"'
done
run
check "invented gear is called so" [ -z "$(tr -s ' \n' '  ' <"$scratch/out" | grep -o 'example-[^(]*([a-z]*)' | grep -v '(invented)$')" ]

# --- the user's page names every kind and key: the reader's own lists, out of its messages ---

page=../../docs/hardware-tables.md
printf '[contraption x]\nkeeps = 1 %%\n' >"$scratch/table.ini"
run --tables "$scratch/table.ini"
kinds=$(sed -n "s/.*a table's kinds are //p" "$scratch/err" | tr -d ,)
check "kinds are listed" [ "$(echo "$kinds" | wc -w)" = 16 ]
for kind in $kinds; do
    printf '[%s x]\nqqqqqqqqqqqqqqqq = 1\n' "$kind" >"$scratch/table.ini"
    run --tables "$scratch/table.ini"
    check "page: $kind" grep -qF "\`$kind\`" "$page"
    sed -n 's/.*\] takes //p' "$scratch/err" | tr ',' '\n' | sed 's/^ *//' >"$scratch/keys"
    check "page: keys of $kind" [ -s "$scratch/keys" ]
    while read -r key; do
        check "page: $kind: $key" grep -q "^| \`$kind\`.*\`$key\`\|^| every kind.*\`$key\`" "$page"
    done <"$scratch/keys"
done

echo "tables: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
