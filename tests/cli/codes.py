"""codes.py SCHEMA MANUAL HEADER - whether schema and manual have exactly the warning codes of the header."""
import json
import re
import sys

schema, manual, header = sys.argv[1:]
names = re.findall(r"^\s+GTL_WARN_(\w+),", open(header).read(), re.M)
codes = {name.lower().replace("_", "-") for name in names} - {"count"}
in_schema = set(json.load(open(schema))["$defs"]["warning_code"]["enum"])
in_manual = set(re.findall(r"^### (\S+)$", open(manual).read(), re.M))
for where, found in (("schema", in_schema), ("manual", in_manual)):
    for code in sorted(found ^ codes):
        print(f"{where}: {code} is {'missing' if code in codes else 'no code'}")
sys.exit(in_schema != codes or in_manual != codes)
