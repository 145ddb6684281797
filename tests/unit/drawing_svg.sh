#!/bin/sh
# drawing_svg.sh - every case of every example as SVG, read by Python's own XML reader: well-formed, ids unique,
# text is text, nothing but black and white. Run from the top folder.
#
# usage: drawing_svg.sh GANTLINE
set -u
"${PYTHON:-python3}" - "$1" docs/examples/*.ini <<'END'
import json
import re
import subprocess
import sys
import xml.etree.ElementTree as tree

SVG = "{http://www.w3.org/2000/svg}"
gantline, files = sys.argv[1], sys.argv[2:]
passed = failed = 0


def report(form, *options):
    done = subprocess.run([gantline, "report", "--as", form, *options], capture_output=True, check=False)
    return done.stdout.decode("utf-8")


def faults_of(svg):
    root = tree.fromstring(svg)
    parts = list(root.iter())
    ids = [part.get("id") for part in parts if part.get("id")]
    named = root.get("aria-labelledby", "").split()
    if root.tag != SVG + "svg" or root.get("role") != "img":
        yield "no picture by its root"
    if len(ids) != len(set(ids)) or len(named) != 2 or not set(named) <= set(ids):
        yield f"ids {ids}, named by {named}"
    if not all((root.find(f".//*[@id='{name}']").text or "").strip() for name in named[1:]):
        yield "no description"
    known = {SVG + tag for tag in "svg title desc g rect line path circle text".split()}
    if {part.tag for part in parts} - known:
        yield f"elements {({part.tag for part in parts}) - known}"
    if sum(part.tag == SVG + "text" for part in parts) < 8:
        yield "hardly any text"
    for part in parts:
        for key, value in part.attrib.items():
            if key in ("fill", "stroke") and value not in ("none", "#000", "#fff"):
                yield f"a colour: {value}"
            if key not in ("id", "role", "aria-labelledby", "font-family") and re.search(r"\.\d{3}|e[-+]?\d|nan|inf", value):
                yield f"a number: {key}={value}"


for name in files:
    cases = [case["case"] for case in json.loads(report("json", name))["cases"]]
    for case in cases:
        faults = list(faults_of(report("svg", "--case", case, name)))
        passed += not faults
        failed += bool(faults)
        for fault in faults:
            print(f"not ok {name}, {case}: {fault}")
print(f"drawing_svg: {passed} passed, {failed} failed")
sys.exit(failed > 0)
END
