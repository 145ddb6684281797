#!/bin/sh
# Fuzz for some seconds from the seed corpus. What is found new stays under build/, a crash is kept and shown.
# usage: fuzz.sh PROGRAM SECONDS
set -u
cd "$(dirname "$0")/../.." || exit 1
found=build/fuzz/found
mkdir -p "$found"
if "$1" -max_total_time="$2" -timeout=10 -rss_limit_mb=2048 -print_final_stats=1 -verbosity=0 \
    -artifact_prefix=build/fuzz/ "$found" tests/fuzz/corpus; then
    echo "fuzz: 1 passed, 0 failed"
else
    echo "fuzz: 0 passed, 1 failed"
    exit 1
fi
