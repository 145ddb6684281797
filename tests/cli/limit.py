"""limit.py COMMAND SCHEMA RIG... - what `gantline limit` says of rigs, held against what `gantline report` says.

The JSON keeps its schema; the text names the same load, part and masses, rounded to the careful side; and the limit,
typed into the rig file as the load's mass, is within its ratings, with the part named at its own within 1e-9, while a
thousandth more is not.
"""
import json
import re
import subprocess
import sys
import tempfile

import jsonschema

POUND = 0.45359237
CLOSE = 1e-9


def run(command, *arguments):
    done = subprocess.run([command, *arguments], capture_output=True, check=False)
    return done.returncode, done.stdout.decode("utf-8")


def with_mass(rig, load, mass):
    """The text of a rig file with another mass of that load."""
    with open(rig, encoding="utf-8") as file:
        text = file.read()
    section = re.search(rf"(?m)^\[load {re.escape(load)}\]$(?:\n(?!\[).*)*", text)
    bare = re.sub(r"(?m)^(length|diameter|bark|density end) *=.*\n?", "", section.group(0))
    changed = re.sub(r"(?m)^(mass|weight|species|density) *=.*$", f"mass = {mass:.17g} kg", bare)
    return text[:section.start()] + changed + text[section.end():]


def put_back(command, rig, load, mass):
    with tempfile.NamedTemporaryFile("w", suffix=".ini", encoding="utf-8") as file:
        file.write(with_mass(rig, load, mass))
        file.flush()
        status, out = run(command, "report", "--as", "json", file.name)
    return status, json.loads(out) if out else None


def greatest(report):
    used = [part["utilisation"] for part in report["components"] if part["status"] != "idle"]
    return max((one for one in used if one is not None), default=0.0)


def faults_of_text(text, limit):
    """The head of the text: masses rounded down and up, parts by name."""
    flat = " ".join(text.split())
    for label, mass, careful in (("Heaviest", limit["mass"], -1), ("Lightest", limit["least"], 1)):
        told = re.search(rf"^{label} +([0-9.e]+) (kg|lb)\b", text, re.M)
        if (mass is None) != (told is None):
            yield f"{label}: {told and told.group(0)}, in JSON {mass}"
        if mass is None or told is None:
            continue
        printed = float(told.group(1)) * (POUND if told.group(2) == "lb" else 1)
        if (printed - mass) * careful < -CLOSE * mass * 2 or abs(printed - mass) > 2e-3 * mass + 1e-4:
            yield f"{label}: {told.group(0)}, in JSON {mass}"
    for name in [limit["load"], limit["component"], *(part["component"] for part in limit["next"])]:
        if name and name not in flat:
            yield f"the text does not name {name}"
    if limit["open"] != ("NOT ALL COULD BE CHECKED" in flat):
        yield "what is open stands in one form alone"
    if any(len(line) > 80 for line in text.splitlines()):
        yield "a line is wider than 80 columns"
    if re.search(r"(?i)\bsafe\b", text):
        yield "it says safe"
    if re.search(r"(?i)(^| )(-?nan|-?inf|-0(\.0*)?)( |$)", text):
        yield "a number is none"


def faults_of_status(status, limit):
    wanted = 3 if limit["open"] else 0 if limit["permitted"] else 1
    if status != wanted:
        yield f"status {status}, not {wanted}"


def faults_of_limit(command, rig, limit):
    if limit["mass"] is None:
        return
    status, report = put_back(command, rig, limit["load"], limit["mass"])
    if report is None or report["verdict"] == "over":
        yield f"put back, it is not within the ratings (status {status})"
        return
    edge = limit["heaviest"]
    if edge["edge"] == "rating" and not edge["jumps"] and not 1 - CLOSE <= greatest(report) <= 1:
        yield f"put back, the greatest utilisation is {greatest(report)!r}"
    _, beyond = put_back(command, rig, limit["load"], limit["mass"] * 1.001)
    if edge["edge"] in ("rating", "head fitting") and (beyond is None or beyond["verdict"] != "over"):
        yield "a thousandth more is not over"


def faults_of(command, validator, rig):
    status, out = run(command, "limit", "--as", "json", rig)
    limit = json.loads(out, parse_constant=lambda word: sys.exit(f"{rig}: {word} is no JSON"))
    yield from (f"{error.json_path}: {error.message}" for error in validator.iter_errors(limit))
    yield from faults_of_status(status, limit)
    text_status, text = run(command, "limit", rig)
    if text_status != status:
        yield f"status {text_status} as text, {status} as JSON"
    yield from faults_of_text(text, limit)
    yield from faults_of_limit(command, rig, limit)


def main():
    command, schema_file, *rigs = sys.argv[1:]
    with open(schema_file, encoding="utf-8") as file:
        schema = json.load(file)
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    wrong = 0
    for rig in rigs:
        for fault in faults_of(command, kind(schema), rig):
            wrong += 1
            print(f"{rig}: {fault}")
    return 1 if wrong or not rigs else 0


if __name__ == "__main__":
    sys.exit(main())
