"""lab.py COMMAND SCHEMA TABLE... - the forms of `gantline lab` say the same, and the user's words stay words.

The JSON keeps its schema; the spreadsheet has every row and set-up with the very same numbers and codes; the text
and the page name every row and finding; what does not count stands in brackets; no form holds a number that is none,
a formula, a tag or an attribute of the user's.
"""
import csv
import io
import json
import os
import re
import subprocess
import sys
import xml.etree.ElementTree as xml

import jsonschema

sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from stays_text import FORBIDDEN, FORMULA, Page, for_people  # noqa: E402

COLUMNS = 80
NOTHING = re.compile(r"(?i)(?<![\w.-])-?(nan|inf|infinity)(?![\w-])")
ROW = {"load [N]": ("readings", "load"), "effort as read [N]": ("readings", "effort"), "effort [N]": ("effort",),
       "load distance [m]": ("readings", "load_distance"), "effort distance [m]": ("readings", "effort_distance"),
       "reading [N]": ("readings", "reading"), "distance reading [m]": ("readings", "distance_reading"),
       "moving weight [N]": ("readings", "moving_weight"), "scale weight [N]": ("readings", "scale_weight"),
       "work in [J]": ("work_in",), "work out [J]": ("work_out",), "ideal advantage [1]": ("ideal_advantage",),
       "ideal advantage u [1]": ("ideal_advantage_u",), "measured advantage [1]": ("measured_advantage",),
       "measured advantage u [1]": ("measured_advantage_u",), "efficiency [1]": ("efficiency",),
       "efficiency u [1]": ("efficiency_u",), "efficiency school [1]": ("efficiency_by_percentages",),
       "efficiency with all raised [1]": ("efficiency_all",), "predicted effort [N]": ("predicted_effort",),
       "predicted least [N]": ("prediction", "held_least"), "predicted most [N]": ("prediction", "held_most")}
SET_UP = {"efficiency mean [1]": "efficiency_mean", "efficiency spread [1]": "efficiency_spread",
          "sheave efficiency [1]": "sheave_efficiency", "sheave efficiency u [1]": "sheave_efficiency_u"}


def report(command, form, table):
    done = subprocess.run([command, "lab", "--as", form, table], capture_output=True, check=False)
    assert done.returncode == 0, f"{form}: status {done.returncode}: {done.stderr.decode(errors='replace')}"
    assert not done.stderr, f"{form}: says {done.stderr.decode(errors='replace')}"
    return done.stdout.decode("utf-8")


def number(field):
    return float(field) if field else None


def codes(found):
    return [one["code"] for one in found["findings"]]


def at(row, path):
    for name in path:
        row = row[name]
    return row


def check_csv(text, data):
    records = list(csv.DictReader(io.StringIO(text)))
    rows = [one for one in records if one["record"] == "row"]
    set_ups = [one for one in records if one["record"] == "set-up"]
    assert len(rows) == len(data["rows"]) and len(set_ups) == len(data["set_ups"]), "csv: rows are missing"
    assert len(records) == len(rows) + len(set_ups), "csv: a record of no kind"
    for record, row in zip(rows, data["rows"]):
        assert int(record["line"]) == row["line"], "csv: another line"
        assert record["counts"] == ("yes" if row["counted"] else "no"), f"csv: line {row['line']}: counts"
        for head, path in ROW.items():
            assert number(record[head]) == at(row, path), f"csv: line {row['line']}: {head}"
        assert record["findings"].split() == codes(row), f"csv: line {row['line']}: findings"
    for record, one in zip(set_ups, data["set_ups"]):
        for head, name in SET_UP.items():
            assert number(record[head]) == one[name], f"csv: {record['set-up']}: {head}"
        assert int(record["rows [1]"]) == len(one["rows"]), "csv: rows of a set-up"
        assert int(record["rows that count [1]"]) == len(one["counted"]), "csv: rows that count"
        assert record["findings"].split() == codes(one), "csv: findings of a set-up"
    for record in csv.reader(io.StringIO(text)):
        for field in record:
            runs = field.startswith(FORMULA) and not re.fullmatch(r"-?[0-9.]+(e[-+]?\d+)?", field)
            assert not runs, f"csv: a formula: {field!r}"


def label(row):
    return f"{row['line']}, {for_people(row['group'])}" if row["group"] else str(row["line"])


def check_findings(words, data):
    """Every finding stands in a form's words, behind the name of its row."""
    for row in data["rows"]:
        name = f"Line {row['line']}" + (f", group {for_people(row['group'])}" if row["group"] else "") + ":"
        for code in codes(row):
            assert re.search(rf"{re.escape(' '.join(name.split()))}.*?\[{code}\]", words), f"{name} lacks {code}"
    for code in (code for one in data["set_ups"] for code in codes(one)):
        assert f"[{code}]" in words, f"lacks {code}"


def near(token, value):
    return re.fullmatch(r"-?[0-9.]+(e\d+)?", token) and abs(float(token) - value) <= max(0.051, 0.006 * abs(value))


def check_text(text, data):
    assert all(len(line) <= COLUMNS for line in text.splitlines()), "text: a line is too long"
    flat = " ".join(text.split())
    check_findings(flat, data)
    work = text[text.index("\nWork, advantage"):text.index("\nAgainst the prediction")]
    for row in data["rows"]:
        lines = [line for line in work.splitlines() if " ".join(line.split()).startswith(" ".join(label(row).split()))]
        assert lines, f"text: line {row['line']} is missing"
        if row["efficiency"] is None:
            continue
        tokens = [token for line in lines for token in line.split()]
        wanted = [token.strip("()") for token in tokens if token.startswith("(") != row["counted"]]
        assert any(near(token, 100 * row["efficiency"]) for token in wanted), f"text: line {row['line']}: efficiency"


def check_html(text, data):
    page = Page()
    page.feed(text)
    page.close()
    assert not page.tags & FORBIDDEN, f"html: {page.tags & FORBIDDEN}"
    assert not [name for name, _ in page.attributes if name.startswith("on")], "html: a handler"
    check_findings(" ".join(page.text.split()), data)
    figures = [one for one in re.findall(r"<svg\b.*?</svg>", text, re.S) if "<desc" in one]
    assert figures, "html: no figure"
    for figure in figures:
        root = xml.fromstring(figure)
        told = root.find("{http://www.w3.org/2000/svg}desc").text
        assert len(told) > 60, f"html: a figure tells only {told!r}"


def check(command, schema, table):
    data = json.loads(report(command, "json", table))
    jsonschema.validate(data, schema)
    forms = {form: report(command, form, table) for form in ("text", "html", "csv")}
    for form, text in forms.items():
        assert not NOTHING.search(re.sub(r"<style>.*?</style>", "", text, flags=re.S)), f"{form}: a number that is none"
        assert text == report(command, form, table), f"{form}: not the same bytes again"
    check_csv(forms["csv"], data)
    check_text(forms["text"], data)
    check_html(forms["html"], data)


def main():
    command, schema_file, *tables = sys.argv[1:]
    with open(schema_file, encoding="utf-8") as file:
        schema = json.load(file)
    for table in tables:
        try:
            check(command, schema, table)
        except (AssertionError, jsonschema.ValidationError, xml.ParseError) as error:
            sys.exit(f"{table}: {error}")


if __name__ == "__main__":
    main()
