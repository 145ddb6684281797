"""Hostile words in a rig file stay words in every form of report.

Reads each report with a reader of its form, not with a search: the drawing as XML, the page as HTML, the table as
CSV, the data as JSON. No word may become a tag, an attribute, a formula or a line of its own, and the title comes
out as it went in, but for characters that steer (a `?` each, in what people read).

usage: stays_text.py GANTLINE RIG...
"""
import csv
import io
import json
import subprocess
import sys
import unicodedata
import xml.etree.ElementTree as xml
from html.parser import HTMLParser

DRAWN = {"svg", "title", "desc", "defs", "g", "path", "line", "rect", "circle", "polyline", "polygon", "text", "tspan",
         "style", "ellipse", "pattern", "clipPath", "use"}
# What runs or loads something.
FORBIDDEN = {"script", "iframe", "object", "embed", "img", "image", "link", "base", "form", "foreignobject", "audio",
             "video", "source", "animate", "set", "b"}
FORMULA = ("=", "+", "-", "@", "\t", "\r")


class Page(HTMLParser):
    """The tags and attributes of a page, and its title."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.tags, self.attributes, self.path, self.title, self.text = set(), set(), [], "", ""

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes.update((name, value or "") for name, value in attrs)
        self.path.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.handle_starttag(tag, attrs)
        self.path.pop()

    def handle_endtag(self, tag):
        while self.path and self.path.pop() != tag:
            pass

    def handle_data(self, data):
        self.text += data
        if self.path == ["html", "head", "title"]:
            self.title += data


def report(command, form, rig):
    done = subprocess.run([command, "report", "--as", form, rig], stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                          check=False)
    assert done.returncode in (0, 1, 3), f"{form}: status {done.returncode}: {done.stderr.decode(errors='replace')}"
    return done.stdout.decode("utf-8")


def steers(sign):
    return unicodedata.category(sign) in ("Cc", "Zl", "Zp") or unicodedata.bidirectional(sign) in (
        "LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI") or sign in "\u061c\u200b\u200e\u200f\ufeff"


def for_people(words):
    return "".join(" " if sign == "\t" else "?" if steers(sign) else sign for sign in words)


def is_title(told, title):
    """Whether words are the title, or as much of it as a head has room for."""
    wanted = for_people(title)
    return told == wanted or (told.endswith("...") and len(told) > 60 and wanted.startswith(told[:-3]))


def check_svg(text, title):
    root = xml.fromstring(text)
    for element in root.iter():
        name = element.tag.rpartition("}")[2]
        assert name in DRAWN, f"svg: an element {name}"
        assert not [key for key in element.attrib if key.lower().startswith("on") or "href" in key], f"svg: {name}"
    told = root.find("{http://www.w3.org/2000/svg}title").text
    assert is_title(told, title), f"svg: the title is {told!r}"


def check_html(text, title):
    page = Page()
    page.feed(text)
    page.close()
    assert not page.tags & FORBIDDEN, f"html: {page.tags & FORBIDDEN}"
    events = [name for name, _ in page.attributes if name.startswith("on")]
    assert not events, f"html: {events}"
    away = [value for name, value in page.attributes if name in ("href", "src") and not value.startswith("#")]
    assert not away, f"html: leads to {away}"
    assert is_title(page.title, title), f"html: the title is {page.title!r}"
    assert for_people(title) in page.text, "html: the title is nowhere whole"


def check_csv(text, title):
    rows = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert len({len(row) for row in rows}) == 1, "csv: rows of different length"
    for cell in (cell for row in rows for cell in row):
        if cell.lstrip(" ").startswith(FORMULA):
            float(cell)  # a number may begin with its sign
    told = [row[1] for row in rows if row[0] == "verdict"]
    wanted = for_people(title)
    assert told in ([wanted], ["'" + wanted]), f"csv: the title is {told!r}"
    assert (told[0][0] == "'") == (wanted.lstrip().startswith(FORMULA) or wanted[0] == "'"), "csv: apostrophe"


def check_json(text, title):
    told = json.loads(text)["title"]
    assert told == title, f"json: the title is {told!r}"


def check_text(text, title):
    assert all(len(line) <= 80 for line in text.splitlines()), "text: a long line"
    assert not any(steers(sign) for sign in text.replace("\n", "")), "text: steers"
    assert "".join(for_people(title).split())[:60] in "".join(text.split()), "text: no title"


def main():
    command, *rigs = sys.argv[1:]
    checks = {"text": check_text, "json": check_json, "csv": check_csv, "svg": check_svg, "html": check_html}
    for rig in rigs:
        with open(rig, encoding="utf-8") as file:
            title = next(line for line in file if line.startswith("title = "))[len("title = "):].rstrip("\n")
        title = title.strip().strip('"')
        for form, check in checks.items():
            check(report(command, form, rig), title)
    return 0


if __name__ == "__main__":
    try:
        sys.exit(main())
    except (AssertionError, ValueError, csv.Error, xml.ParseError) as fault:
        print(f"{type(fault).__name__}: {fault}")
        sys.exit(1)
