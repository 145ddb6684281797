#!/bin/sh
# run.sh COMMAND - the command line: options, files, exit statuses, and the shape of what it prints.
set -u
command=${1:?the command to test}
case $command in
/*) ;;
*) command=$PWD/$command ;;
esac
[ -x "$command" ] || {
    echo "cli: no such command: $command" >&2
    exit 2
}
cd "$(dirname "$0")" || exit 2
here=$PWD
python=${PYTHON:-/usr/bin/python3}
scratch=$(mktemp -d) || exit 2
trap 'chmod -R u+w "$scratch"; rm -rf "$scratch"' EXIT
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

# run ARGUMENT...: the command, its output and status kept.
run() {
    "$command" "$@" >"$scratch/out" 2>"$scratch/err" </dev/null
    status=$?
}

# What a run came to.
ended() { [ "$status" -eq "$1" ]; }
silent() { [ ! -s "$scratch/out" ]; }
refused() { ended 2 && silent && [ -s "$scratch/err" ]; }
printed() { grep -q -- "$1" "$scratch/out"; }
said() { grep -q -- "$1" "$scratch/err"; }
said_only_as_itself() { [ -s "$scratch/err" ] && ! grep -qv '^gantline: ' "$scratch/err"; }
both() { "$1" "$2" && "$3" "$4"; }
same_files() { cmp -s "$1" "$2"; }
no_leftovers() { [ -z "$(find "$1" -name '.gantline-*')" ]; }

# --- the command itself ---

run --help
check "help" both ended 0 printed "usage: gantline COMMAND"
check "help names the statuses" printed "Exit status: 0 within"
run --version
check "version" both ended 0 printed '^gantline [0-9]'
run
check "no command" refused
check "no command: own voice" said_only_as_itself
run frobnicate
check "unknown command" refused
run --frobnicate
check "unknown option" both refused "" said "no option .--frobnicate"

run keys
check "keys" both ended 0 printed '^\[rope NAME\]'
cp "$scratch/out" "$scratch/keys"
check "keys: 80 columns" [ -z "$(awk 'length > 80' "$scratch/keys")" ]
run keys --help
check "keys: help" both ended 0 printed "usage: gantline keys"
run keys within.ini
check "keys: no file" refused

run report --help
check "report: help" both ended 0 printed "usage: gantline report"
check "report: help names status 3" printed '^  3  unrated'
run report
check "report: no file" refused
run report within.ini over.ini
check "report: two files" refused
run report --as prose within.ini
check "report: unknown form" both refused "" said "write --as text, json, csv, svg or html"
run report --as
check "report: --as without a form" both refused "" said "needs something behind it"
run report -x within.ini
check "report: unknown option" both refused "" said "no option .-x"

# --- statuses ---

run report within.ini
check "within is 0" both ended 0 printed '^Verdict *WITHIN'
cp "$scratch/out" "$scratch/within.txt"
check "within says nothing else" [ ! -s "$scratch/err" ]
run report over.ini
check "over is 1" both ended 1 printed '^Verdict *OVER'
run report unrated.ini
check "unrated is 3" both ended 3 printed '^Verdict *UNRATED'
run report no-answer.ini
check "no answer is 2" refused
check "no answer names the line" said '^no-answer.ini:[0-9]*: '
run report faulty.ini
check "faulty is 2" refused
check "faulty: every fault with its line" both said '^faulty.ini:2: ' said '^faulty.ini:5: '

# --- input ---

"$command" report - <within.ini >"$scratch/out" 2>"$scratch/err"
check "standard input" same_files "$scratch/out" "$scratch/within.txt"
"$command" report - <faulty.ini >"$scratch/out" 2>"$scratch/err"
status=$?
check "standard input: its name in faults" both refused "" said '^(standard input):2: '
run report -
check "empty standard input" refused
run report -- within.ini
check "two dashes end the options" ended 0
cp within.ini "$scratch/-o"
(cd "$scratch" && "$command" report -- -o >out 2>err)
status=$?
check "a file with an option's name" ended 0
run report "$scratch/absent.ini"
check "absent file" both refused "" said "cannot read"
check "absent file: own voice" said_only_as_itself
run report "$scratch"
check "folder" both refused "" said "cannot read"
run report /dev/null
check "nothing in it" refused
run report /dev/zero
check "endless file" refused
escape=$(printf '\033')
run report "$scratch/a${escape}[31mb.ini"
check "a file's name steers no terminal" both refused "" said 'a?\[31mb'
check "a file's name brings no escape" eval '! said "$escape"'

# --- output ---

run report -o "$scratch/new.txt" within.ini
check "-o: status" both ended 0 silent ""
check "-o: the same report" same_files "$scratch/new.txt" "$scratch/within.txt"
run report --output="$scratch/new.json" --as=json over.ini
check "-o: status of the verdict" both ended 1 silent ""
run report -o - within.ini
check "-o -" same_files "$scratch/out" "$scratch/within.txt"
chmod 640 "$scratch/new.txt"
run report -o "$scratch/new.txt" over.ini
check "-o: replaced" both ended 1 eval 'grep -q OVER "$scratch/new.txt"'
check "-o: mode kept" [ "$(stat -c %a "$scratch/new.txt")" = 640 ]
cp "$scratch/new.txt" "$scratch/kept.txt"
run report -o "$scratch/new.txt" faulty.ini
check "-o: kept when the rig is faulty" refused
check "-o: kept whole" same_files "$scratch/new.txt" "$scratch/kept.txt"
ln -s new.txt "$scratch/link.txt"
run report -o "$scratch/link.txt" within.ini
check "-o: a link stays a link" [ -h "$scratch/link.txt" ]
check "-o: a link is followed" same_files "$scratch/new.txt" "$scratch/within.txt"
ln -s nowhere/at-all "$scratch/dangling"
run report -o "$scratch/dangling" within.ini
check "-o: a dangling link" refused
cp within.ini "$scratch/rig.ini"
run report -o "$scratch/rig.ini" "$scratch/rig.ini"
check "-o: not on the rig itself" both refused "" said "the rig itself"
ln "$scratch/rig.ini" "$scratch/twin.ini"
run report -o "$scratch/twin.ini" "$scratch/rig.ini"
check "-o: nor by another name" both refused "" said "the rig itself"
check "-o: the rig is whole" same_files "$scratch/rig.ini" within.ini
run report -o "$scratch" within.ini
check "-o: a folder" both refused "" said "cannot write"
run report -o "$scratch/no/such/folder" within.ini
check "-o: no such folder" both refused "" said "cannot write"
run report -o /dev/full within.ini
check "-o: full device" both refused "" said "No space left"
run report -o /dev/null within.ini
check "-o: /dev/null" ended 0
mkfifo "$scratch/fifo"
timeout 20 cat "$scratch/fifo" >"$scratch/through" &
run report -o "$scratch/fifo" within.ini
wait
check "-o: a named pipe" same_files "$scratch/through" "$scratch/within.txt"
check "-o: no leftovers" no_leftovers "$scratch"

"$command" report within.ini >/dev/full 2>"$scratch/err"
status=$?
check "full standard output" both ended 2 said "standard output"
"$command" --help >/dev/full 2>"$scratch/err"
status=$?
check "full standard output: help" ended 2
"$command" report within.ini >&- 2>"$scratch/err"
status=$?
check "closed standard output" ended 2
(
    sleep 0.3
    "$command" report within.ini 2>"$scratch/err"
    echo $? >"$scratch/status"
) | true
check "reader gone" [ "$(cat "$scratch/status")" = 2 ]

# As somebody who may not write there; root may write everywhere.
as_nobody=
if [ "$(id -u)" -eq 0 ] && command -v setpriv >/dev/null; then
    as_nobody="setpriv --reuid=65534 --regid=65534 --clear-groups"
    $as_nobody "$command" --version >/dev/null 2>&1 && $as_nobody test -r "$here/within.ini" || as_nobody=none
fi
if [ "$as_nobody" != none ]; then
    mkdir "$scratch/shut"
    echo old >"$scratch/shut/old.txt"
    chmod 755 "$scratch"
    chmod 555 "$scratch/shut"
    $as_nobody "$command" report -o "$scratch/shut/new.txt" within.ini >"$scratch/out" 2>"$scratch/err"
    status=$?
    check "unwritable folder" refused
    $as_nobody "$command" report -o "$scratch/shut/old.txt" within.ini >"$scratch/out" 2>"$scratch/err"
    status=$?
    check "unwritable file" refused
    check "unwritable file is kept" [ "$(cat "$scratch/shut/old.txt")" = old ]
fi

# --- forms ---

# What a file in each form begins with.
begins() { head -c 40 "$1" | grep -q -- "$2"; }
for form in 'text ^Painted' 'json ^{' 'csv ^record,' 'svg ^<?xml' 'html ^<!DOCTYPE html>'; do
    start=${form#* }
    form=${form%% *}
    run report --as "$form" within.ini
    check "--as $form: status" ended 0
    check "--as $form: nothing said" [ ! -s "$scratch/err" ]
    check "--as $form: what it is" begins "$scratch/out" "$start"
    cp "$scratch/out" "$scratch/as.$form"
    run report --as "$form" over.ini
    check "--as $form: over is 1" ended 1
    run report --as "$form" unrated.ini
    check "--as $form: unrated is 3" ended 3
    run report --as "$form" no-answer.ini
    check "--as $form: no answer is 2" refused
    run report --as "$form" faulty.ini
    check "--as $form: nothing of a faulty rig" refused
    "$command" report --as "$form" within.ini >/dev/full 2>"$scratch/err"
    status=$?
    check "--as $form: full standard output" ended 2
done
for file in a.txt=text A.TXT=text b.json=json c.csv=csv d.svg=svg e.html=html f.htm=html G.Html=html \
    plain=text .svg=text dot.=text two.json.svg=svg; do
    form=${file#*=}
    file=$scratch/${file%=*}
    run report -o "$file" within.ini
    check "-o: a form by an ending: status" ended 0
    check "-o: the form of $(basename "$file")" same_files "$file" "$scratch/as.$form"
done
run report --as csv -o "$scratch/said.svg" within.ini
check "--as goes before the ending" same_files "$scratch/said.svg" "$scratch/as.csv"
mkdir "$scratch/dir.svg"
run report -o "$scratch/dir.svg/plain" within.ini
check "-o: the ending of the file, not of its folder" same_files "$scratch/dir.svg/plain" "$scratch/as.text"
run report -o "$scratch/report.prose" within.ini
check "-o: another ending is text" same_files "$scratch/report.prose" "$scratch/as.text"
run report -o "$scratch/by.html" faulty.ini
check "-o: no page of a faulty rig" eval 'refused && [ ! -e "$scratch/by.html" ]'
"$command" report --as html - <within.ini >"$scratch/out" 2>"$scratch/err"
check "--as html: from standard input" same_files "$scratch/out" "$scratch/as.html"
check "--as html: the rig file is in it" eval 'grep -q "^path = beam, tail, head, crew" "$scratch/as.html"'

# --- cases ---

losses=../../docs/examples/lantern-legs.ini
run report --as svg within.ini
cp "$scratch/out" "$scratch/drawn.svg"
run report --as svg --case raise within.ini
check "--case: raise is drawn where none is named" same_files "$scratch/out" "$scratch/drawn.svg"
run report --as svg --case RAISE within.ini
check "--case: capitals do not count" same_files "$scratch/out" "$scratch/drawn.svg"
run report --as svg --case=hold within.ini
check "--case: another case" eval 'ended 0 && printed "Case hold" && ! same_files "$scratch/out" "$scratch/drawn.svg"'
cp "$scratch/out" "$scratch/hold.svg"
run report --case hold -o "$scratch/kept.svg" within.ini
check "--case: with an ending" same_files "$scratch/kept.svg" "$scratch/hold.svg"
run report --as svg --case "lost beam-right" "$losses"
check "--case: a loss" printed "Case lost beam-right"
cp "$scratch/out" "$scratch/loss.svg"
run report --as svg --case "loss 2" "$losses"
check "--case: a loss by its number" same_files "$scratch/out" "$scratch/loss.svg"
run report --as svg --case "loss 3" "$losses"
check "--case: no such case" both refused "" said '`loss 3`; its cases are: hold, lost leg-left, lost beam-right$'
run report --as svg --case jam within.ini
check "--case: not worked" both refused "" said '`jam`; its cases are: hold, raise, lower$'
run report --as svg --case "" within.ini
check "--case: empty" refused
run report --as svg --case
check "--case: nothing behind it" both refused "" said "needs something behind it"
for form in text json csv html; do
    run report --as "$form" --case hold within.ini
    check "--case: not with $form" both refused "" said "write --as svg with it"
done
run report --case hold within.ini
check "--case: not with text unsaid" refused
run limit --case hold within.ini
check "limit: no --case" both refused "" said "no option .--case"

# --- explain ---

run explain --help
check "explain: help" both ended 0 printed "usage: gantline explain"
check "explain: help says that it is no verdict" printed "this is no verdict"
check "explain: help, 80 columns" [ -z "$(awk 'length > 80' "$scratch/out")" ]
run explain
check "explain: no file" both refused "" said "which rig file"
run explain within.ini over.ini
check "explain: two files" refused
for form in json csv svg prose ""; do
    run explain --as "$form" within.ini
    check "explain: no form \"$form\"" both refused "" said "write --as text or --as html"
done
run explain --steps sideways within.ini
check "explain: unknown steps" both refused "" said "write --steps forces, distances or all"
run explain --steps within.ini
check "explain: steps, and no file" refused
for ending in json csv svg; do
    run explain -o "$scratch/solution.$ending" within.ini
    check "explain: not into .$ending" both refused "" said "write --as text or --as html"
    check "explain: no .$ending is left" [ ! -e "$scratch/solution.$ending" ]
done
run explain --case hold within.ini
check "explain: no --case" both refused "" said "no option .--case"
for form in text html; do
    for rig in within over unrated bridle redirects; do
        run explain --as "$form" "$rig.ini"
        check "explain: $rig as $form is 0, and nothing is said" eval 'ended 0 && [ ! -s "$scratch/err" ]'
    done
    run explain --as "$form" no-answer.ini
    check "explain: no answer as $form" both refused "" said '^no-answer.ini:[0-9]*: '
    run explain --as "$form" faulty.ini
    check "explain: faulty as $form" both refused "" said '^faulty.ini:5: '
    "$command" explain --as "$form" within.ini >/dev/full 2>"$scratch/err"
    status=$?
    check "explain: full standard output, $form" ended 2
done
run explain within.ini
cp "$scratch/out" "$scratch/solution.txt"
check "explain: its title" eval 'head -n 1 "$scratch/out" | grep -q "^Worked solution: "'
check "explain: nothing unchecked reads as checked" printed 'are no part of this solution'
check "explain: the cautions" printed 'Arithmetic on the numbers typed in, no approval'
check "explain: no blanks at line ends" eval '! grep -q " \$" "$scratch/out"'
check "explain: 80 columns" [ -z "$(awk 'length > 80' "$scratch/out")" ]
check "explain: ASCII" eval '! LC_ALL=C grep -q "[^ -~]" "$scratch/out"'
run explain --AS text within.ini
check "explain: options are in small letters" refused
run explain --as TEXT --steps ALL within.ini
check "explain: capitals do not count" same_files "$scratch/out" "$scratch/solution.txt"
"$command" explain - <within.ini >"$scratch/out" 2>"$scratch/err"
check "explain: standard input" same_files "$scratch/out" "$scratch/solution.txt"
for ending in txt prose; do
    run explain -o "$scratch/into.$ending" within.ini
    check "explain: text into .$ending" same_files "$scratch/into.$ending" "$scratch/solution.txt"
done
run explain --as html within.ini
check "explain: a page" begins "$scratch/out" '^<!DOCTYPE html>'
cp "$scratch/out" "$scratch/solution.page"
for ending in html HTM; do
    run explain -o "$scratch/into.$ending" within.ini
    check "explain: a page into .$ending" same_files "$scratch/into.$ending" "$scratch/solution.page"
done
check "explain: the page draws bodies cut free" eval 'grep -q "<title id=\"step-2-title\">.*cut free" "$scratch/solution.page"'
check "explain: steps are open" eval 'grep -q "<details class=\"step\" open=\"open\">" "$scratch/solution.page"'
run explain over.ini
check "explain: what is over is said" printed 'OVER: do not load it as it is'
run explain unrated.ini
check "explain: what is unrated is said" printed 'UNRATED'
run explain --steps forces within.ini
cp "$scratch/out" "$scratch/forces.txt"
check "explain: forces, and no distances" eval 'grep -q "^Support" "$scratch/out" && ! grep -q "^Distances" "$scratch/out"'
run explain --steps distances within.ini
check "explain: distances, and no forces" eval 'grep -q "^Distances" "$scratch/out" && ! grep -q "^Support" "$scratch/out"'
check "explain: both roads in either" eval 'printed "^Both roads" && grep -q "^Both roads" "$scratch/forces.txt"'
run explain --ideal within.ini
check "explain: ideal, and no friction put in" eval 'ended 0 && ! grep -qE "^(Friction|Efficiency)$" "$scratch/out"'
run explain -o "$scratch/rig.ini" "$scratch/rig.ini"
check "explain: not on the rig itself" both refused "" said "the rig itself"
run report --ideal within.ini
check "report: no --ideal" both refused "" said "no option .--ideal"

# --- the look of a report ---

for rig in "$here"/*.ini; do
    name=$(basename "$rig" .ini)
    case $name in no-answer | faulty) continue ;; esac
    run report "$rig"
    check "$name: a report" eval 'ended 0 || ended 1 || ended 3'
    check "$name: 80 columns" [ -z "$(awk 'length > 80' "$scratch/out")" ]
    check "$name: ASCII" eval '! LC_ALL=C grep -q "[^ -~]" "$scratch/out"'
    check "$name: no blanks at line ends" eval '! grep -q " \$" "$scratch/out"'
    check "$name: never safe as a verdict" eval '! grep -qiw safe "$scratch/out"'
    check "$name: no nan, inf or -0" eval '! grep -qiE "(^| )(-?nan|-?inf|-0(\.0*)?)( |\$)" "$scratch/out"'
    head -n 24 "$scratch/out" >"$scratch/head"
    for word in Verdict 'cases:' Governs 'Cautions' 'competent person' 'somebody qualified'; do
        check "$name: $word in the first 24 lines" grep -q "$word" "$scratch/head"
    done
    check "$name: effort in the first 24 lines" grep -qE '^(To raise|To hold|Effort) ' "$scratch/head"
done

# Titles that try to break the page.
hostile() {
    {
        printf '[rig]\ntitle = %s\nnote = %s\ndesign factor = 8\n' "$1" "$1"
        sed '1,/^design factor/d' within.ini
    } >"$scratch/hostile.ini"
    run report "$scratch/hostile.ini"
}
long=$(printf 'word %.0s' $(seq 190))
hostile "$long"
check "long title: works" ended 0
check "long title: 80 columns" [ -z "$(awk 'length > 80' "$scratch/out")" ]
check "long title: the head stays" eval 'head -n 24 "$scratch/out" | grep -q "somebody qualified"'
hostile "$(printf 'x%.0s' $(seq 900))"
check "one long word: 80 columns" [ -z "$(awk 'length > 80' "$scratch/out")" ]
hostile "$(printf 'left \342\200\256 right \342\201\246 more')"
check "directions of writing are taken out" eval 'ended 0 && ! LC_ALL=C grep -q "[^ -~]" "$scratch/out"'
hostile "$(printf '\346\273\221\350\275\246%.0s' $(seq 60))"
check "wide characters" eval 'ended 0 && "$python" columns.py 80 <"$scratch/out"'
hostile "$(printf 'e\314\201%.0s' $(seq 200))"
check "combining marks" eval 'ended 0 && "$python" columns.py 80 <"$scratch/out"'
hostile "$(printf 'bad \377 byte')"
check "no UTF-8" eval 'refused || ended 0'
hostile "$(printf 'bell \007 and \033[2J')"
check "control characters reach nobody" eval '! LC_ALL=C grep -q "[^ -~]" "$scratch/out" && ! LC_ALL=C grep -q "[^ -~]" "$scratch/err"'

# Words that mean something to a reader of some form, up to the line limit, are words in all of them.
while IFS= read -r words; do
    hostile "$(printf -- "$words")"
    check "a rig called $words" eval 'ended 0 || ended 3'
    "$python" stays_text.py "$command" "$scratch/hostile.ini" >"$scratch/err" 2>&1
    status=$?
    check "stays text in every form: $words" ended 0
done <<'WORDS'
<script>alert(1)</script>
</title></desc></text></svg><script>alert(1)</script>
</pre></main><b onclick="x()">wall</b>
]]> --> <!-- <![CDATA[
"a 'quoted' wall & &lt; &amp;amp; &#60; ; # /"
=1+2
=HYPERLINK("http://example.invalid")
+5 and -5
@SUM(A1)
-wall
,,,,,
left \342\200\256 right \342\201\246 more \342\200\217 marks
tab\there
\346\273\221\350\275\246 e\314\201
javascript:alert(1)
WORDS
long=$(printf '<script>"&%.0s' $(seq 98))
hostile "$long"
"$python" stays_text.py "$command" "$scratch/hostile.ini" >"$scratch/err" 2>&1
status=$?
check "stays text in every form, as long as a line may be" ended 0

# --- JSON: the schema, and the same numbers as in the text ---

for rig in "$here"/*.ini; do
    name=$(basename "$rig" .ini)
    case $name in no-answer | faulty) continue ;; esac
    "$python" agree.py "$command" "$rig" "$here/../../docs/report.schema.json" >"$scratch/err" 2>&1
    status=$?
    check "$name: text and JSON agree, JSON keeps the schema" ended 0
done
hostile 'Quotes " and \ and </script>'
"$python" agree.py "$command" "$scratch/hostile.ini" "$here/../../docs/report.schema.json" >"$scratch/err" 2>&1
status=$?
check "quotes in JSON" ended 0

# --- limit ---

run limit --help
check "limit: help" both ended 0 printed "usage: gantline limit"
run limit
check "limit: no file" refused
run limit within.ini over.ini
check "limit: two files" refused
run limit --as prose within.ini
check "limit: unknown form" both refused "" said "no form"
run limit within.ini
check "limit: within is 0" both ended 0 printed '^Heaviest '
cp "$scratch/out" "$scratch/limit.txt"
run limit over.ini
check "limit: over as drawn is 1" both ended 1 printed '^As drawn *NOT WITHIN'
run limit unrated.ini
check "limit: unrated is 3" both ended 3 printed '^Open *NOT ALL COULD BE CHECKED'
run limit no-answer.ini
check "limit: no answer is 2" both refused "" said '^no-answer.ini:[0-9]*: '
run limit faulty.ini
check "limit: faulty is 2" both refused "" said '^faulty.ini:5: '
run limit long-names.ini
check "limit: which load is 2" both refused "" said '^long-names.ini:22: .*\[joint\]'
sed 's/^\[load \(.*66\)\]/[joint \1]/' long-names.ini >"$scratch/one-load.ini"
run limit -o "$scratch/limit-2.txt" within.ini
check "limit: -o: status" both ended 0 silent ""
check "limit: -o: the same text" same_files "$scratch/limit-2.txt" "$scratch/limit.txt"
run limit -o "$scratch/rig.ini" "$scratch/rig.ini"
check "limit: not on the rig itself" both refused "" said "the rig itself"
"$command" limit - <within.ini >"$scratch/out" 2>"$scratch/err"
check "limit: standard input" same_files "$scratch/out" "$scratch/limit.txt"
"$command" limit within.ini >/dev/full 2>"$scratch/err"
status=$?
check "limit: full standard output" ended 2
for rig in "$here"/*.ini "$here"/../../docs/examples/*.ini "$scratch/one-load.ini"; do
    name=$(basename "$rig" .ini)
    # border-and-lanterns: what is lifted is a batten, which has no limit of its own
    case $name in no-answer | faulty | long-names | border-and-lanterns) continue ;; esac
    "$python" limit.py "$command" "$here/../../docs/limit.schema.json" "$rig" >"$scratch/err" 2>&1
    status=$?
    check "$name: its limit holds" ended 0
done

# --- lab ---

bench=../../docs/examples/bench-readings.csv
heads='group,parts,load [N],effort [N],load distance [m],effort distance [m]'
# A table of its own: the header above, then rows in printf's format.
table() {
    printf "$heads\n$1" >"$scratch/table.csv"
}

run lab --help
check "lab: help" both ended 0 printed "usage: gantline lab"
check "lab: help: 80 columns" [ -z "$(awk 'length > 80' "$scratch/out")" ]
for column in group rig parts 'load \[N\]' 'effort \[N\]' 'load distance \[m\]' 'effort distance \[m\]' \
    'reading \[N\]' 'distance reading \[m\]' 'moving weight \[N\]' 'scale weight \[N\]' scale state; do
    check "lab: help lists $column" printed "^  $column ("
done
run lab
check "lab: no table" both refused "" said "which table"
run lab "$bench" "$bench"
check "lab: two tables" refused
run lab --as prose "$bench"
check "lab: unknown form" both refused "" said "no form"
run lab --as svg "$bench"
check "lab: no svg" both refused "" said "write --as text, html, csv or json"
run lab --case hold "$bench"
check "lab: no --case" both refused "" said "no option .--case"
run lab "$scratch/absent.csv"
check "lab: absent table" both refused "" said "cannot read"

run lab "$bench"
check "lab: findings leave the status 0" both ended 0 printed '^Findings *[1-9]'
check "lab: it says nothing else" [ ! -s "$scratch/err" ]
cp "$scratch/out" "$scratch/lab.text"
check "lab: a row beyond 100 % stands in brackets" printed '^23, Cedar .*(122.0)'
check "lab: and is left out" printed '^Left out *4 of 22 rows'
for form in 'json ^{' 'csv ^record,' 'html ^<!DOCTYPE html>'; do
    start=${form#* }
    form=${form%% *}
    run lab --as "$form" "$bench"
    check "lab: --as $form" eval 'ended 0 && begins "$scratch/out" "$start"'
    cp "$scratch/out" "$scratch/lab.$form"
    run lab -o "$scratch/by-ending.$form" "$bench"
    check "lab: -o by its ending: $form" eval 'ended 0 && same_files "$scratch/by-ending.$form" "$scratch/lab.$form"'
done
check "lab: the page loads nothing" eval '! grep -qE "(src|href)=.[^#]" "$scratch/lab.html"'
"$command" lab "$bench" >/dev/full 2>"$scratch/err"
status=$?
check "lab: full standard output" ended 2

# Rigs are looked for beside the table; from standard input, in the folder where the command runs.
cp ../../docs/examples/class-*.ini "$scratch"
cp "$bench" "$scratch/bench.csv"
(cd "$scratch" && "$command" lab - <bench.csv >out 2>err)
status=$?
check "lab: standard input" both ended 0 printed '^What was measured: (standard input)'
for name in bench.csv class-two-parts.ini; do
    cp "$scratch/$name" "$scratch/kept"
    run lab -o "$scratch/$name" "$scratch/bench.csv"
    check "lab: not on $name" both refused "" said "itself; name another file"
    check "lab: $name is whole" same_files "$scratch/$name" "$scratch/kept"
done

table 'Ash,3,2,0.7,0.2,0.6\nBirch,three,2,0.7,0.2,0.6\nCedar,3,2,"0,7",0.2,0.6\n'
run lab "$scratch/table.csv"
check "lab: faults: nothing is worked out" refused
check "lab: every fault with its line" both said '/table.csv:3: ' said '/table.csv:4: '
run lab -o "$scratch/never.txt" "$scratch/table.csv"
check "lab: no file of a faulty table" eval 'refused && [ ! -e "$scratch/never.txt" ]'
printf 'rig,load [N],effort [N],load distance [m],effort distance [m]\n%s\n' 'absent.ini,2,0.7,0.2,0.6' \
    >"$scratch/table.csv"
run lab "$scratch/table.csv"
check "lab: a rig that is not there" both refused "" said 'absent.ini: cannot be read: No such file'
check "lab: the row that names it" said '/table.csv:2: '
cp faulty.ini "$scratch/faulty.ini"
sed 's/absent/faulty/' "$scratch/table.csv" >"$scratch/table-2.csv"
run lab "$scratch/table-2.csv"
check "lab: a faulty rig" both refused "" said '/faulty.ini:5: '
sed 's/absent.ini/-/' "$scratch/table.csv" >"$scratch/table-2.csv"
run lab "$scratch/table-2.csv"
check "lab: a rig called - is no standard input" both refused "" said '/-: cannot be read'

table '"=1+2",3,2,0.7,0.2,0.6\n"<script>alert(1)</script>",3,2,0.7,0.2,0.6\n"a ""quoted"" wall & &lt;",3,2,0.75,0.2,0.6\n'
cp "$scratch/table.csv" "$scratch/hostile.csv"
printf '@SUM(A1),3,2,0.7,0.2,0.6\n</title></desc></svg><b>x,3,2,0.3,0.2,0.6\n,4,2,0.55,0.2,0.8\n' >>"$scratch/hostile.csv"
printf 'left \342\200\256 right,3,2,0.7,0.2,0.6\n\346\273\221\350\275\246,3,200,0.7,0.2,0.6\n' >>"$scratch/hostile.csv"
# Nothing stated, a scale on its head with and without its weight, held, one row a set-up.
printf '%s\n' 'parts,load [g],effort [N],load distance [cm],effort distance [cm],scale,scale weight [N],state' \
    '2,200,1.1,20,40,upside down,,' '2,200,0.6,20,40,upside down,0.5,moving' '3,200,0.7,20,60,upright,,held' \
    '4,200,0.55,20,80,,,' >"$scratch/scales.csv"
for one in "$bench" "$scratch/hostile.csv" "$scratch/scales.csv"; do
    "$python" lab.py "$command" ../../docs/lab.schema.json "$one" >"$scratch/err" 2>&1
    status=$?
    check "lab: the forms of $(basename "$one") agree, and words stay words" ended 0
done
run lab "$scratch/scales.csv"
check "lab: a mass taken for a force is told" printed 'column .load. is in g: taken times g, 9.80665 m/s2'
check "lab: no effort without the scale's weight" printed '\[scale-weight-missing\]'
{
    printf '%s\n' "$heads"
    i=0
    while [ $i -lt 60 ]; do
        i=$((i + 1))
        echo "g$i,$i,2,$i.5,0.2,0.6"
    done
} >"$scratch/many.csv"
"$python" lab.py "$command" ../../docs/lab.schema.json "$scratch/many.csv" >"$scratch/err" 2>&1
status=$?
check "lab: 60 set-ups" ended 0

# --- worksheet ---

pulleys=../../docs/examples/pulleys.set
run worksheet --help
check "worksheet: help" both ended 0 printed "usage: gantline worksheet"
check "worksheet: help, 80 columns" [ -z "$(awk 'length > 80' "$scratch/out")" ]
run worksheet
check "worksheet: no file" both refused "" said "which set of problems"
run worksheet "$pulleys" "$pulleys"
check "worksheet: two files" refused
for wrong in --seed=x --seed=-1 --seed=1234567890123456789 --students=0 --students=501 --students=2.5 --as=html --case=hold; do
    run worksheet "$wrong" "$pulleys"
    check "worksheet: $wrong" refused
done
run worksheet no-such.set
check "worksheet: no such file" both refused "" said "cannot read no-such.set"
run worksheet within.ini
check "worksheet: a rig is no set" both refused "" said 'no section .rig.'
run worksheet --seed 3 --students 2 "$pulleys"
check "worksheet: sheets and key in one page" both ended 0 printed '<h2 id="key">Key</h2>'
cp "$scratch/out" "$scratch/both.html"
run worksheet --seed 3 --students 2 "$pulleys"
check "worksheet: the same bytes" same_files "$scratch/out" "$scratch/both.html"
run worksheet --seed 3 --students 2 --key "$scratch/key.html" -o "$scratch/sheets.html" "$pulleys"
check "worksheet: two files: status" both ended 0 silent ""
check "worksheet: the key has the answers" grep -q 'Answers of student 2' "$scratch/key.html"
check "worksheet: the sheets have none" [ -z "$(grep -i 'answers\|<h2 id="key\|explain\|verdict' "$scratch/sheets.html")" ]
check "worksheet: nothing left beside" no_leftovers "$scratch"
run worksheet --seed 3 --students 2 --key "$scratch/key-2.html" "$pulleys"
check "worksheet: standard output has the same sheets" same_files "$scratch/out" "$scratch/sheets.html"
check "worksheet: the same key" same_files "$scratch/key-2.html" "$scratch/key.html"
run worksheet --students 60 --key "$scratch/key-2.html" -o "$scratch/sheets-2.html" "$pulleys"
check "worksheet: fewer sets than students is told" both ended 0 said 'note: a problem has 45 sets of figures for 60'
"$command" worksheet - <"$pulleys" >"$scratch/out" 2>"$scratch/err"
status=$?
check "worksheet: standard input: rigs from this folder" both refused "" said 'cannot read .class-one-travelling.ini.'
(cd ../../docs/examples && "$command" worksheet --seed 3 --students 2 - <pulleys.set) >"$scratch/out" 2>"$scratch/err"
check "worksheet: standard input: the same bytes" same_files "$scratch/out" "$scratch/both.html"
cp within.ini "$scratch/rig"
printf '[problem a]\nrig = rig\nask = support\n' >"$scratch/set"
for place in set rig; do
    run worksheet -o "$scratch/$place" "$scratch/set"
    check "worksheet: -o: not on its own $place" both refused "" said "itself; name another file"
    run worksheet --key "$scratch/$place" "$scratch/set"
    check "worksheet: --key: not on its own $place" both refused "" said "itself; name another file"
done
run worksheet -o "$scratch/one.html" --key "$scratch/one.html" "$pulleys"
check "worksheet: one name for both" both refused "" said "to one place"
run worksheet -o "$scratch/one.html" --key "$scratch/./one.html" "$pulleys"
check "worksheet: two names of one file" both refused "" said "the key itself"
run worksheet -o "$scratch/sheets.pdf" "$pulleys"
check "worksheet: no .pdf" both refused "" said "name it .html"
run worksheet --key "$scratch/no-folder/key.html" -o "$scratch/sheets-3.html" "$pulleys"
check "worksheet: no key, no sheets" [ ! -e "$scratch/sheets-3.html" ]
"$command" worksheet "$pulleys" >/dev/full 2>"$scratch/err"
status=$?
check "worksheet: full standard output" ended 2

# --- timber ---

run timber --help
check "timber: help" both ended 0 printed "usage: gantline timber"
run timber "white oak" "2 m" "45 cm, 35 cm"
check "timber: its figures" both ended 0 printed "^Piece: mass .* 309$"
cp "$scratch/out" "$scratch/timber.txt"
run timber White-Oak 200cm "450 mm, 350 mm"
check "timber: other spellings" same_files "$scratch/out" "$scratch/timber.txt"
run timber -o "$scratch/timber-2.txt" "white oak" "2 m" "45 cm, 35 cm"
check "timber: -o" same_files "$scratch/timber-2.txt" "$scratch/timber.txt"
run timber --units us --density "62 lb/ft3" "1 ft" "20 in"
check "timber: in pounds" both ended 0 printed "^Piece: mass \[lb\] *136 *136 *136$"
run timber --density "900 kg/m3 .. 1100 kg/m3" "1 m" "20 cm"
check "timber: a range" both ended 0 printed "900 *1000 *1100$"
run timber --as json --bark "15 mm" "live oak" "5 m" "22 cm, 26 cm"
cp "$scratch/out" "$scratch/timber.json"
"$python" -c '
import json, sys
import jsonschema
piece = json.load(open(sys.argv[1]))
jsonschema.validate(piece, json.load(open(sys.argv[2])))
timber = piece["timber"]
assert abs(timber["volume"] - 0.287848) < 5e-7
for end, mass in timber["mass"].items():
    assert abs(mass - timber["volume"] * timber["density"][end]) < 1e-9
    assert abs(piece["weight"][end] - mass * piece["gravity"]) < 1e-9
' "$scratch/timber.json" ../../docs/timber.schema.json 2>"$scratch/err"
status=$?
check "timber: JSON" ended 0
printf '[green-wood white-oak]\ndensity = 900 kg/m3\n' >"$scratch/trees.ini"
run timber --tables "$scratch/trees.ini" "white oak" "2 m" "40 cm"
check "timber: a table of one's own" both ended 0 printed "750 *900 *1080$"
run timber --tables "$scratch/trees.ini" -o "$scratch/trees.ini" "white oak" "2 m" "40 cm"
check "timber: not on its own table" both refused "" said "the table itself"
run timber "red oak" "2 m" "40 cm"
check "timber: a part of a name" both refused "" said "did you mean .northern-red-oak"
run timber oak "2 m" "40 cm"
check "timber: a part of several names" both refused "" said "lists all rows"
run timber "white oak" "2 m" "40"
check "timber: no unit" both refused "" said "^gantline: DIAMETER: .40. has no unit"
run timber "white oak" "-2 m" "40 cm"
check "timber: below nothing" both refused "" said "option"
run timber -- "white oak" "-2 m" "40 cm"
check "timber: a length below nothing" both refused "" said "^gantline: LENGTH: .* more than 0"
run timber --bark "0 mm" "white oak" "2 m" "40 cm"
check "timber: no bark" both refused "" said "^gantline: --bark: .* more than 0"
run timber --density "64 kg/m3" "2 m" "40 cm"
check "timber: pounds typed as kilograms" both refused "" said "100 to 1540 kg/m3"
run timber --density "1100 kg/m3 .. 900 kg/m3" "2 m" "40 cm"
check "timber: a range turned round" both refused "" said "turn it round"
run timber --units imperial "white oak" "2 m" "40 cm"
check "timber: units" both refused "" said "there are no units"
run timber --as svg "white oak" "2 m" "40 cm"
check "timber: form" both refused "" said "text or json"
for words in "white-oak 2m" "white-oak 2m 40cm 30cm" "--density 900kg/m3 white-oak 2m 40cm" "bowline 2m 40cm" "4% 2m 40cm"; do
    # shellcheck disable=SC2086 # several words on purpose
    run timber $words
    check "timber: $words" both refused "" said "^gantline: "
done
"$command" timber white-oak 2m 40cm >/dev/full 2>"$scratch/err"
status=$?
check "timber: full standard output" ended 2

# --- the manual ---

"$python" codes.py ../../docs/report.schema.json ../../docs/report.md ../../src/rate/warnings.c >"$scratch/err" 2>&1
status=$?
check "report.md and the schema have every warning code" ended 0

echo "cli: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
