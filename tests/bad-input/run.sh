#!/bin/sh
# run.sh COMMAND - every NAME.ini here is a rig file with a fault: `COMMAND report NAME.ini` has to end with
# status 2, print nothing, and write exactly NAME.expected to standard error. A new case is two files, no code.
# The hardware tables that they name stand in tables/.
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
for rig in *.ini; do
    name=${rig%.ini}
    "$command" report "$rig" >"$scratch/out" 2>"$scratch/err"
    status=$?
    if [ "$status" -eq 2 ] && [ ! -s "$scratch/out" ] && cmp -s "$name.expected" "$scratch/err"; then
        passed=$((passed + 1))
        continue
    fi
    failed=$((failed + 1))
    echo "not ok $name"
    [ "$status" -eq 2 ] || echo "  status $status, expected 2"
    [ ! -s "$scratch/out" ] || echo "  standard output is not empty"
    diff -u "$name.expected" "$scratch/err" | sed 's/^/  /'
done
echo "bad-input: $passed passed, $failed failed"
[ "$failed" -eq 0 ]
