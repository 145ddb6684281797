#!/bin/sh
# units_oracle.sh - every unit of the library against GNU units, where that is installed. Run from the top folder.
set -u
if ! command -v units >/dev/null 2>&1; then
    echo "units_oracle: skipped, GNU units is not installed"
    exit 0
fi
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
${CC:-cc} -std=c17 -Iinclude -Isrc tests/unit/units_oracle.c src/base/units.c src/base/word.c -lm \
    -o "$scratch/oracle" || exit 2
"$scratch/oracle" >"$scratch/values" || exit 2

# The same units, and the SI units, as GNU units spells them.
spell() {
    case $1 in
    t) echo tonne ;;
    lb) echo pound ;;
    g) echo gram ;;
    deg) echo degree ;;
    rad) echo radian ;;
    in) echo inch ;;
    ft) echo foot ;;
    %) echo percent ;;
    m/s2) echo m/s^2 ;;
    ft/s2) echo foot/s^2 ;;
    kg/m3) echo kg/m^3 ;;
    lb/ft3) echo pound/foot^3 ;;
    *) echo "$1" ;;
    esac
}
si_of() {
    case $1 in
    mass) echo kg ;;
    force) echo N ;;
    length) echo m ;;
    angle) echo radian ;;
    fraction) echo 1 ;;
    acceleration) echo m/s^2 ;;
    speed) echo m/s ;;
    time) echo s ;;
    linear-mass) echo kg/m ;;
    elasticity) echo Pa ;;
    density) echo kg/m^3 ;;
    esac
}

count=0
failed=0
while read -r quantity unit value; do
    from=$(spell "$unit")
    # A mass where a force is wanted is its weight under standard gravity.
    case $quantity:$unit in
    force:kg | force:g | force:t | force:lb) from="$from gravity" ;;
    esac
    theirs=$(units -t -o %.17g "$from" "$(si_of "$quantity")")
    count=$((count + 1))
    awk -v ours="$value" -v theirs="$theirs" \
        'BEGIN { difference = ours - theirs; if (difference < 0) difference = -difference
                 exit !(theirs > 0 && difference <= 1e-14 * theirs) }' && continue
    echo "not ok $quantity $unit: $value, GNU units says $theirs"
    failed=$((failed + 1))
done <"$scratch/values"
echo "units_oracle: $((count - failed)) passed, $failed failed"
[ "$failed" -eq 0 ] && [ "$count" -gt 20 ]
