#!/bin/sh
# Install the Debian packages named that are missing. Asks nothing, and needs no network when nothing is missing.
# COMMAND=PACKAGE is missing only where the command is: a machine may have got that from elsewhere.
# usage: setup.sh PACKAGE|COMMAND=PACKAGE...
set -eu

there() {
    case $1 in
    *=*) command -v "${1%%=*}" >/dev/null ;;
    *) installed "$1" ;;
    esac
}

installed() {
    [ "$(dpkg-query -W -f '${db:Status-Status}' "$1" 2>/dev/null)" = installed ]
}

as_root() {
    if [ "$(id -u)" = 0 ]; then
        env DEBIAN_FRONTEND=noninteractive "$@"
    elif command -v sudo >/dev/null; then
        sudo env DEBIAN_FRONTEND=noninteractive "$@"
    else
        echo "setup: installing needs root, and there is no sudo. As root, run: apt-get install$missing" >&2
        return 1
    fi
}

install_missing() {
    # shellcheck disable=SC2086 # a list of words on purpose
    as_root apt-get -qq -y --no-install-recommends -o DPkg::Lock::Timeout=120 install $missing
}

if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
    echo "setup: this system has no apt-get. Install with its own package manager what Debian calls:"
    echo "    $*" | sed 's/[^ ]*=//g'
    exit 0
fi

missing=
for package in "$@"; do
    there "$package" || missing="$missing ${package#*=}"
done
[ -n "$missing" ] || exit 0

echo "setup: installing$missing"
# Package lists that are there may do; if they are missing or too old, fetch them and try again.
log=$(mktemp)
trap 'rm -f "$log"' EXIT
if ! install_missing </dev/null >"$log" 2>&1; then
    if ! { as_root apt-get -qq update && install_missing; } </dev/null >"$log" 2>&1; then
        cat "$log" >&2
        echo "setup: apt-get could not install$missing" >&2
        exit 1
    fi
fi
