#!/bin/sh
# docs/verification.md is what the program computes today.
# usage: check_verification.sh GANTLINE
cd "$(dirname "$0")/../.." || exit 1
if "${PYTHON:-/usr/bin/python3}" tests/known/run.py "$1" --table | diff -u docs/verification.md -; then
    echo "verification: 1 passed, 0 failed"
else
    echo "docs/verification.md is out of date. If the new figures are right:"
    echo "    tests/known/run.py build/gantline --table > docs/verification.md"
    echo "verification: 0 passed, 1 failed"
    exit 1
fi
