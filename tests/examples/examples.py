"""Every example ends with the status and verdict of verdicts.txt, says that its figures are invented, and its
report is plain ASCII of at most 80 columns whose JSON form obeys the schema.

usage: examples.py GANTLINE        run from the project's root
"""
import json
import os
import subprocess
import sys

import jsonschema

sys.path.insert(0, "tests/tools")
from check_schema import faults_of  # noqa: E402

FOLDER = "docs/examples"
COLUMNS = 80


def expectations():
    with open("tests/examples/verdicts.txt", encoding="utf-8") as file:
        rows = (line.split() for line in file if not line.startswith(("#", ";")))
        return {name: (int(status), verdict) for name, status, verdict in rows}


def faults_of_text(run, status, verdict):
    if run.returncode != status:
        yield f"status {run.returncode}, expected {status}: {run.stderr.strip()}"
    lines = run.stdout.splitlines()
    if not any(line.replace(":", "").split()[:2] == ["Verdict", verdict.upper()] for line in lines[:6]):
        yield f"the head does not say {verdict.upper()}"
    if any(len(line) > COLUMNS for line in lines):
        yield f"a line has more than {COLUMNS} columns"
    if not run.stdout.isascii():
        yield "the report is not all ASCII"
    if run.stderr:
        yield f"standard error is not empty: {run.stderr.strip()}"


def faults_of_file(rig):
    with open(rig, encoding="utf-8") as file:
        comments = " ".join(line for line in file if line.startswith(("#", ";")))
    if "invented" not in comments.lower():
        yield "no comment says that its figures are invented"


def check(command, validator, name, status, verdict):
    rig = f"{FOLDER}/{name}.ini"
    run = subprocess.run([command, "report", rig], capture_output=True, text=True, check=False)
    data = subprocess.run([command, "report", "--as", "json", rig], capture_output=True, text=True, check=False)
    faults = [*faults_of_file(rig), *faults_of_text(run, status, verdict)]
    faults += faults_of(validator, command, rig) or []
    if not data.stdout or json.loads(data.stdout)["verdict"] != verdict:
        faults.append(f"the JSON's verdict is not {verdict}")
    return faults


def main():
    command = sys.argv[1]
    with open("docs/report.schema.json", encoding="utf-8") as file:
        validator = jsonschema.Draft202012Validator(json.load(file))
    expected = expectations()
    found = {name[:-len(".ini")] for name in os.listdir(FOLDER) if name.endswith(".ini")}
    passed = failed = 0
    for name in sorted(found | set(expected)):
        if name in found and name in expected:
            faults = check(command, validator, name, *expected[name])
        else:
            faults = ["stands in verdicts.txt alone" if name in expected else "is missing in verdicts.txt"]
        passed, failed = passed + (not faults), failed + bool(faults)
        for fault in faults:
            print(f"not ok {name}: {fault}")
    print(f"examples: {passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
