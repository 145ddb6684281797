#!/bin/sh
# beam_oracle.sh - the beams of battens against a general beam solution. Run from the top folder.
set -u
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
${CC:-cc} -std=c17 -Isrc tests/unit/beam_oracle.c src/rig/beam.c -lm -o "$scratch/oracle" || exit 2
"${PYTHON:-/usr/bin/python3}" tests/unit/beam_oracle.py "$scratch/oracle"
