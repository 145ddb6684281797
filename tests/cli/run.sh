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
    case $name in no-answer | faulty | long-names) continue ;; esac
    "$python" limit.py "$command" "$here/../../docs/limit.schema.json" "$rig" >"$scratch/err" 2>&1
    status=$?
    check "$name: its limit holds" ended 0
done

# --- the manual ---

"$python" codes.py ../../docs/report.schema.json ../../docs/report.md ../../src/rate/warnings.c >"$scratch/err" 2>&1
status=$?
check "report.md and the schema have every warning code" ended 0

echo "cli: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
