"""Every JSON report of a rig here obeys docs/report.schema.json, and its chains multiply to its capacities.

usage: check_schema.py GANTLINE
"""
import glob
import json
import math
import subprocess
import sys

import jsonschema

NO_ANSWER = 2
FOLDERS = ("docs/examples", "tests/known", "tests/warnings", "tests/cli")
CHAIN_TOLERANCE = 1e-12


def broken_chains(report):
    """Components whose chain does not multiply to their capacity."""
    for part in report["components"]:
        factors = [step["factor"] for step in part["chain"]]
        known = factors and None not in factors
        product, capacity = math.prod(factors) if known else None, part["capacity"]
        if (product is None) != (capacity is None):
            yield f"{part['component']}: a capacity of {capacity} from the chain {factors}"
        elif known and abs(product - capacity) > CHAIN_TOLERANCE * capacity:
            yield f"{part['component']}: the chain comes to {product}, not to {capacity}"


def faults_of(validator, command, rig):
    """What is wrong with the report of one rig; None where there is no report."""
    run = subprocess.run([command, "report", "--as", "json", rig], capture_output=True, text=True, check=False)
    if run.returncode == NO_ANSWER and not run.stdout:
        return None
    try:
        report = json.loads(run.stdout, parse_constant=lambda word: sys.exit(f"{rig}: {word} is no JSON"))
    except json.JSONDecodeError as error:
        return [f"status {run.returncode}, no JSON: {error}"]
    faults = [f"{error.json_path}: {error.message}" for error in validator.iter_errors(report)]
    return faults or list(broken_chains(report))


def main():
    command = sys.argv[1]
    with open("docs/report.schema.json", encoding="utf-8") as file:
        schema = json.load(file)
    kind = jsonschema.validators.validator_for(schema)
    kind.check_schema(schema)
    passed = failed = 0
    for rig in sorted(rig for folder in FOLDERS for rig in glob.glob(folder + "/*.ini")):
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
