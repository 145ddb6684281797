#!/bin/sh
# run.sh GANTLINE - the examples end as verdicts.txt says, and the documents tell the truth: each command printed
# in README.md, docs/ and the manual is run, and what it prints is held against what the page says.
set -u
command=$(realpath "${1:?the command to test}")
cd "$(dirname "$0")/../.." || exit 2
python=${PYTHON:-/usr/bin/python3}
export PYTHONDONTWRITEBYTECODE=1
status=0
"$python" tests/examples/examples.py "$command" || status=1
"$python" tests/examples/documents.py "$command" || status=1
exit $status
