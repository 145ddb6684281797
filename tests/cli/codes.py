"""codes.py SCHEMA MANUAL WARNINGS - whether schema and manual have exactly the warning codes of the C table."""
import json
import re
import sys

schema, manual, table = sys.argv[1:]
codes = set(re.findall(r'\[GTL_WARN_\w+\] = "([a-z-]+)"', open(table).read()))
found = {
    "schema": set(json.load(open(schema))["$defs"]["warning_code"]["enum"]),
    "manual": set(re.findall(r"^### (\S+)$", open(manual).read(), re.M)),
}
for where, known in found.items():
    for code in sorted(known ^ codes):
        print(f"{where}: {code} is {'missing' if code in codes else 'no code'}")
sys.exit(not codes or any(known != codes for known in found.values()))
