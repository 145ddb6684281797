#!/bin/sh
# Measure speed and memory of a build. Nothing here passes or fails by time.
# usage: run.sh BUILD
set -eu
build=$1
here=$(dirname "$0")
python=${PYTHON:-/usr/bin/python3}

speeds=$("$build/tests/bench/speed" "$here/four-part.ini" "$here/redirect.ini" "$here/spatial.ini")
echo "$speeds"
if "$python" -c 'import scipy' 2>/dev/null; then
    microseconds=$(echo "$speeds" | awk '$1 == "spatial.ini" { print $2 }')
    "$python" "$here/spatial.py" "$build/gantline" "$here/spatial.ini" "$microseconds"
else
    echo "SciPy is not installed: no comparison with it"
fi
"$build/tests/bench/start" "$build/gantline" "$here/four-part.ini"
