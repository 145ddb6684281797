#!/bin/sh
# Fuzz for some seconds from the seed corpus. What is found new stays under build/, a crash is kept and shown.
# usage: fuzz.sh PROGRAM SECONDS CORPUS
set -u
cd "$(dirname "$0")/../.." || exit 1
name=$(basename "$1")
found=build/fuzz/found/$name
mkdir -p "$found"
if "$1" -max_total_time="$2" -timeout=10 -rss_limit_mb=2048 -print_final_stats=1 -verbosity=0 \
    -artifact_prefix=build/fuzz/ "$found" "$3"; then
    echo "$name: 1 passed, 0 failed"
else
    echo "$name: 0 passed, 1 failed"
    exit 1
fi
