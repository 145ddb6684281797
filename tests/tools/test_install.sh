#!/bin/sh
# Install below a scratch folder; compile the header's sample program against what was installed, shared and
# static; read the manual pages; uninstall, and see that nothing is left.
set -u
cd "$(dirname "$0")/../.." || exit 1
MAKE=${MAKE:-make}
root=$(mktemp -d)
trap 'rm -rf "$root"' EXIT
passed=0
failed=0

ok() {
    name=$1
    shift
    if "$@" >"$root.log" 2>&1; then
        passed=$((passed + 1))
    else
        failed=$((failed + 1))
        echo "not ok $name"
        cat "$root.log"
    fi
    rm -f "$root.log"
}

lib=$root/usr/lib
export PKG_CONFIG_PATH="$lib/pkgconfig" PKG_CONFIG_SYSROOT_DIR="$root" PKG_CONFIG_ALLOW_SYSTEM_CFLAGS=1 \
    PKG_CONFIG_ALLOW_SYSTEM_LIBS=1

# shellcheck disable=SC2046,SC2086
compile() { cc -std=c17 "$root/sample.c" $(pkg-config --cflags gantline) -o "$root/sample" $1 $(pkg-config $2 --libs gantline); }
runs() { LD_LIBRARY_PATH=$1 "$root/sample" | grep -q crate; }
nothing_left() { [ -z "$(find "$root/usr" ! -type d; find "$root/usr" -name '*gantline*')" ]; }

# Only what the headers mark with GTL_API leaves the shared library.
exports_match() {
    nm -D --defined-only "$lib/libgantline.so" | awk '$2 ~ /[TBDR]/ { print $3 }' | sort >"$root/exported"
    sed -n 's/^GTL_API[^(]*\<\(gtl_[a-z_0-9]*\)(.*/\1/p' include/gantline/*.h | sort >"$root/declared"
    diff "$root/declared" "$root/exported"
}
soname() { objdump -p "$lib/libgantline.so" | grep -q 'SONAME *libgantline\.so\.0$'; }
version() { [ "$("$root/usr/bin/gantline" --version)" = "gantline $(pkg-config --modversion gantline)" ]; }
pages() { [ -s "$root/usr/share/man/man1/gantline.1" ] && [ -s "$root/usr/share/man/man5/gantline-rig.5" ]; }

sh tests/tools/sample.sh include/gantline/gantline.h >"$root/sample.c"
# shellcheck disable=SC2086 # MAKE may hold options
ok install $MAKE -s install PREFIX=/usr DESTDIR="$root"
ok version version
ok pages pages
ok soname soname
ok exports exports_match
ok compile-shared compile "" ""
ok run-shared runs "$lib"
ok compile-static compile "-Wl,-Bstatic -lgantline -Wl,-Bdynamic" --static
rm -f "$lib/libgantline.so.0"
ok run-static runs /nowhere
# shellcheck disable=SC2086
ok uninstall $MAKE -s uninstall PREFIX=/usr DESTDIR="$root"
ok nothing-left nothing_left
echo "install: $passed passed, $failed failed"
[ $failed -eq 0 ]
