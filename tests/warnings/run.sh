#!/bin/sh
# Every warning fires where it has to, and keeps quiet in a rig that differs by little. See check.py.
# usage: run.sh COMMAND
exec "${PYTHON:-/usr/bin/python3}" "$(dirname "$0")/check.py" "${1:?the command to test}"
