"""agree.py COMMAND RIG SCHEMA - the JSON keeps its schema, and the text says the same.

The text rounds forces and utilisations up to three digits and to 0.1 %: a printed figure is never below the
number in the JSON, and above it by no more than one unit of its last digit.
"""
import json
import re
import subprocess
import sys

import jsonschema

UNITS = {"N": 1.0, "kN": 1e3, "lbf": 4.4482216152605, "kip": 4448.2216152605}
NOISE = 2e-9  # the report's own slack, and the reading of the figure


def report(command, rig, form):
    done = subprocess.run([command, "report", "--as", form, rig], capture_output=True)
    if done.returncode not in (0, 1, 3):
        sys.exit(f"status {done.returncode}: {done.stderr.decode()}")
    return done.returncode, done.stdout.decode("utf-8")


def last_digit(figure):
    digits = figure.lstrip("-").replace(".", "")
    point = len(figure.split(".")[1]) if "." in figure else 0
    idle = len(digits) - len(digits.rstrip("0")) if point == 0 and len(digits) > 3 else 0
    return 10.0 ** (max(idle, len(digits) - 3) if point == 0 and len(digits) > 3 else -point)


def rounded_up(figure, number):
    """Whether `figure` is `number` rounded away from zero."""
    printed, size = float(figure), abs(number)
    shown = abs(printed)
    return size * (1 - NOISE) - 1e-6 <= shown <= size + last_digit(figure) * (1 + 1e-6) and printed * number >= -1e-6


class Text:
    def __init__(self, text):
        self.lines = text.splitlines()
        self.flat = " ".join(text.split())
        self.unit = UNITS[re.search(r"worst first \[(\w+)\]", text).group(1)]
        self.cases = re.search(r"\(cases: (.*?)\)", self.flat).group(1).split(", ")

    def section(self, begins):
        start = next((i for i, line in enumerate(self.lines) if line.startswith(begins)), None)
        if start is None:
            return []
        rows = []
        for line in self.lines[start + 3:]:
            if not line:
                break
            rows.append(line)
        return rows

    def cells(self, section, label):
        """The figures of the rows with that label, which may stand on a line of their own."""
        found, hanging = [], False
        for row in self.section(section):
            if row.strip() == label:
                hanging = True
            elif hanging or row.strip().startswith(label + " "):
                found.append(row.strip()[0 if hanging else len(label):].split())
                hanging = False
        return found


class Checker:
    def __init__(self):
        self.faults = []

    def expect(self, good, what):
        if not good:
            self.faults.append(what)

    def figure(self, figure, number, what):
        good = figure == "-" if number is None else figure not in ("-", "slack") and rounded_up(figure, number)
        self.expect(good, f"{what}: text {figure}, JSON {number}")


def check_sentences(check, text, data):
    check.expect(f"Verdict {data['verdict'].upper()}" in text.flat, "verdict")
    check.expect(text.cases == data["scope"], "scope")
    for name in ("cautions", "not_checked"):
        for sentence in data[name]:
            check.expect(" ".join(sentence.split()) in text.flat, f"{name}: {sentence}")
    for warning in data["warnings"]:
        check.expect(f"[{warning['code']}]" in text.flat, f"code {warning['code']}")
        check.expect(" ".join(warning["text"].split()) in text.flat, f"warning: {warning['text']}")


def check_lines(check, text, data):
    used = {}
    parts = [[(p["from"], p["to"]) for p in case["lines"]] for case in data["cases"] if case["possible"]]
    for k, (start, end) in enumerate(parts[0] if parts else []):
        label = f"{start} to {end}"
        rows = text.cells("Tension in each part", label)
        at = used.get(label, 0)
        used[label] = at + 1
        check.expect(at < len(rows), f"no row for {label}")
        if at >= len(rows):
            continue
        for case in data["cases"]:
            cell = rows[at][text.cases.index(case["case"])]
            if not case["possible"]:
                check.expect(cell == "-", f"{label}, {case['case']}: {cell}, but it cannot be")
            elif case["lines"][k]["slack"]:
                check.expect(cell == "slack", f"{label}: {cell}, but it is slack")
            else:
                check.figure(cell, case["lines"][k]["tension"] / text.unit, f"{label}, {case['case']}")


def check_anchors(check, text, data):
    for case in data["cases"]:
        for anchor in case["anchors"]:
            rows = text.cells("Anchors, largest first", anchor["anchor"])
            check.expect(len(rows) == 1, f"one row for {anchor['anchor']}")
            for row in rows:
                check.figure(row[text.cases.index(case["case"])], anchor["force"] / text.unit, anchor["anchor"])


def check_hands(check, text, data):
    unit = next(name for name, size in UNITS.items() if size == text.unit)
    for case in data["cases"]:
        for hand in case["hands"]:
            for row in text.cells("Effort", f"pull of {hand['hand']} [{unit}]"):
                check.figure(row[text.cases.index(case["case"])], hand["force"] / text.unit, hand["hand"])


def check_components(check, text, data):
    for part in data["components"]:
        label = f"{part['kind']} {part['component']}"
        rows = text.cells("Parts against their ratings", label)
        check.expect(len(rows) == 1, f"one row for {label}")
        for row in rows:
            demand = part["demand"]
            check.figure(row[0], demand if demand is None else demand / text.unit, f"{label}: demand")
            if part["utilisation"] is not None:
                check.figure(row[-3], 100 * part["utilisation"], f"{label}: utilisation")
                check.expect((row[-1] == "over") == (float(row[-3]) > 100), f"{label}: {row[-3]} %, {row[-1]}")
            check.expect(row[-1] == part["status"], f"{label}: status {row[-1]}")


def main():
    command, rig, schema = sys.argv[1:]
    status, printed = report(command, rig, "text")
    json_status, dumped = report(command, rig, "json")
    data, text, check = json.loads(dumped), Text(printed), Checker()
    jsonschema.Draft202012Validator(json.load(open(schema))).validate(data)
    check.expect(status == json_status, "the same exit status")
    check.expect(status == {"within": 0, "over": 1, "unrated": 3}[data["verdict"]], "the verdict's exit status")
    for one in (check_sentences, check_lines, check_anchors, check_hands, check_components):
        one(check, text, data)
    print("\n".join(check.faults))
    sys.exit(bool(check.faults))


main()
