#!/bin/sh
# The report page in a browser: run.js says what is checked. Prints go to build/pages, pictures of rigs
# that are named too.
# usage: run.sh GANTLINE [NAME...]   NAMEs: only these rigs, or `planted NAME` of faults.js
set -eu
command=$(realpath "${1:?the command to test}")
shift
cd "$(dirname "$0")/../.."
sh tests/pages/install.sh
rm -rf build/pages
NODE_PATH=build/node/node_modules exec node tests/pages/run.js "$command" build/pages "$@"
