#!/bin/sh
# Includes point down or back along base <- rig <- read and rig <- solve <- rate <- study <- report <- cli,
# never up. Between report and cli stand explain, lab and worksheet.
# A public header stands in the room of the same name; fault.h, units.h and version.h in base; hardware.h in rig; rope_bill.h in rate; limit.h in study;
# gantline.h is seen by cli alone.
cd "$(dirname "$0")/../.." || exit 1

set -- src/*/*.[ch] include/gantline/*.h
faults=$(grep -Hn '^ *# *include *["<]' "$@" | awk -F'[:"<>]' '
BEGIN {
    below["base"] = "base"
    below["rig"] = "base rig"
    below["read"] = "base rig read"
    below["solve"] = "base rig solve"
    below["rate"] = "base rig solve rate"
    below["study"] = "base rig solve rate study"
    below["report"] = "base rig solve rate study report"
    below["explain"] = "base rig solve rate study report explain"
    below["lab"] = "base rig read solve rate study report lab"
    below["worksheet"] = "base rig read solve rate study report explain worksheet"
    below["cli"] = "base rig read solve rate study report explain lab worksheet cli gantline"
    below["gantline"] = "base rig read solve rate study report explain lab worksheet"
    room["fault.h"] = room["units.h"] = room["version.h"] = "base"
    room["hardware.h"] = room["timber.h"] = "rig"
    room["rope_bill.h"] = "rate"
    room["limit.h"] = "study"
    split("rig read solve rate report explain lab worksheet gantline", names, " ")
    for (i in names) room[names[i] ".h"] = names[i]
}
function room_of(path, parts, n) {
    n = split(path, parts, "/")
    return path ~ /gantline\// ? room[parts[n]] : parts[n - 1]
}
{
    from = room_of($1)
    to = room_of($4)
    if (!(to in below)) next
    if (index(" " below[from] " ", " " to " ") == 0) print $1 ":" $2 ": " from " must not see " to " (" $4 ")"
}')
[ -z "$faults" ] || echo "$faults"
bad=$(printf '%s' "$faults" | grep -c .)
echo "includes: $(($# - bad)) passed, $bad failed"
[ "$bad" -eq 0 ]
