#!/bin/sh
# Print the program that stands in the opening comment of a header.
# usage: sample.sh HEADER
sed -n '/^ \*     #include/,/^ \*\//s/^ \*     //p' "$1"
