"""Every JSON report of an example or known rig obeys docs/report.schema.json.

usage: check_schema.py GANTLINE
"""
import glob
import json
import subprocess
import sys

import jsonschema

NO_ANSWER = 2


def faults_of(validator, command, rig):
    """What is wrong with the report of one rig; None where there is no report."""
    run = subprocess.run([command, "report", "--as", "json", rig], capture_output=True, text=True, check=False)
    if run.returncode == NO_ANSWER and not run.stdout:
        return None
    try:
        report = json.loads(run.stdout, parse_constant=lambda word: sys.exit(f"{rig}: {word} is no JSON"))
    except json.JSONDecodeError as error:
        return [f"status {run.returncode}, no JSON: {error}"]
    return [f"{error.json_path}: {error.message}" for error in validator.iter_errors(report)]


def main():
    command = sys.argv[1]
    with open("docs/report.schema.json", encoding="utf-8") as file:
        schema = json.load(file)
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    passed = failed = 0
    for rig in sorted(glob.glob("docs/examples/*.ini") + glob.glob("tests/known/*.ini")):
        faults = faults_of(kind(schema), command, rig)
        if faults is None:
            continue
        passed, failed = passed + (not faults), failed + bool(faults)
        for fault in faults:
            print(f"not ok {rig}: {fault}")
    print(f"schema: {passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
