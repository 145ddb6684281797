#!/bin/sh
# The program of gantline.h runs and prints a report that is not cut short.
# usage: test_sample.sh PROGRAM
report=$("$1")
status=$?
if [ $status -eq 0 ] && printf '%s\n' "$report" | grep -q crate && printf '%s\n' "$report" | grep -qi 'not checked'; then
    echo "sample: 1 passed, 0 failed"
else
    echo "not ok: status $status, and this is all it printed:"
    printf '%s\n' "$report"
    echo "sample: 0 passed, 1 failed"
    exit 1
fi
