#!/bin/sh
# Put what the checks of the report page need from npm under build/node, as package-lock.json pins it. No browser is
# fetched: the system's is used. Does nothing, and needs no network, where that is there already.
set -eu
cd "$(dirname "$0")/../.."
here=tests/pages
there=build/node

# The copy of the lock is laid last, so that it stands for an installation that went through.
cmp -s $here/package-lock.json $there/installed-lock.json && exit 0

for command in node npm; do
    command -v $command >/dev/null || {
        echo "setup: there is no $command. Install it (Debian: apt-get install nodejs npm) and try again." >&2
        exit 1
    }
done
echo "setup: installing npm packages under $there"
rm -rf $there
mkdir -p $there
cp $here/package.json $here/package-lock.json $there
export PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1
(cd $there && npm ci --ignore-scripts --no-audit --no-fund --prefer-offline --loglevel=error) >$there/log 2>&1 || {
    cat $there/log >&2
    echo "setup: npm could not install the packages that $here/package-lock.json names" >&2
    exit 1
}
cp $here/package-lock.json $there/installed-lock.json
