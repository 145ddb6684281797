"""What the documents print is what the program prints.

In a page, a block ```ini NAME or ```csv NAME is a file of that name, and a block ```console holds commands, each
behind `$ `, and under each what it prints, standard error included; a line `...` stands for any lines left out. Words
are held exactly, figures within one of the last printed digit. A page's blocks are run in order, in a folder of their
own.
In a page that holds MARK, every figure of the prose with a point or three digits stands in one of its blocks too.
In the manual, each .EX block is a rig (it begins with `[`) or commands. Links between pages lead somewhere.

usage: documents.py GANTLINE       run from the project's root
"""
import glob
import os
import re
import subprocess
import sys
import tempfile

sys.path.insert(0, "tests/golden")
from compare import same_line  # noqa: E402

PAGES = ["README.md", "SAFETY.md", "DEVELOPERS.md", *sorted(glob.glob("docs/**/*.md", recursive=True))]
MANUALS = sorted(glob.glob("docs/man/*.1"))
FENCE = re.compile(r"^```(\w+) ?(\S*)\n(.*?)^```$", re.M | re.S)
LINK = re.compile(r"\]\(([^)#:]+)(?:#[^)]*)?\)")
EXAMPLE = re.compile(r"^\.EX\n(.*?)^\.EE$", re.M | re.S)
SKIPPED = "..."
MARK = "<!-- every figure stands in a block -->"
FIGURE = re.compile(r"(?<![\w.])(?:\d+\.\d+|\d{3,})(?!\w)")


class Desk:
    """A folder to run a page's commands in: `gantline` on the path, docs/ and build/ where a reader has them."""

    def __init__(self, folder, command):
        self.folder = folder
        self.status = 0
        os.makedirs(f"{folder}/build")
        os.symlink(command, f"{folder}/build/gantline")
        os.symlink(os.path.abspath("docs"), f"{folder}/docs")
        self.write("build/lpr", "#!/bin/sh\ntest -s \"$1\"\n")  # the manual's printer: it takes what is not empty
        os.chmod(f"{folder}/build/lpr", 0o755)
        self.environment = {**os.environ, "PATH": f"{folder}/build:{os.environ['PATH']}"}

    def write(self, name, text):
        with open(f"{self.folder}/{name}", "w", encoding="utf-8") as file:
            file.write(text)

    def run(self, command):
        """What a command prints; `$?` is the status of the one before."""
        done = subprocess.run(["sh", "-c", f"(exit {self.status}); {command}"], cwd=self.folder,
                              env=self.environment, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                              stdin=subprocess.DEVNULL, text=True, check=False)
        self.status = done.returncode
        return done.stdout.splitlines()


def matches(expected, found):
    """Whether lines match, where SKIPPED stands for any number of them."""
    if not expected:
        return not found
    if expected[0].strip() == SKIPPED:
        return any(matches(expected[1:], found[i:]) for i in range(len(found) + 1))
    return bool(found) and same_line(expected[0], found[0]) and matches(expected[1:], found[1:])


def strange_figures(text):
    """The figures of a page's prose that stand in none of its files, commands and outputs."""
    shown = set(FIGURE.findall(" ".join(block for kind, _, block in FENCE.findall(text) if kind != "text")))
    return [figure for figure in FIGURE.findall(FENCE.sub("", text)) if figure not in shown]


def commands_of(block):
    """The commands of a console block, each with the lines under it."""
    command, lines = None, []
    for line in block.splitlines():
        if line.startswith("$ "):
            if command:
                yield command, lines
            command, lines = line[2:], []
        else:
            lines.append(line)
    if command:
        yield command, lines


def faults_of_page(page, desk):
    """One entry a thing tested: None where it is as the page says."""
    with open(page, encoding="utf-8") as file:
        text = file.read()
    for target in LINK.findall(text):
        missing = not os.path.exists(os.path.join(os.path.dirname(page), target))
        yield f"links to {target}, which is not there" if missing else None
    if MARK in text:
        strange = strange_figures(text)
        yield f"says figures that none of its blocks prints: {', '.join(strange)}" if strange else None
    for kind, name, block in FENCE.findall(text):
        if kind in ("ini", "csv") and name:
            desk.write(name, block)
        if kind != "console":
            continue
        for command, expected in commands_of(block):
            found = desk.run(command)
            same = matches(expected, found)
            yield None if same else "\n    ".join([f"`{command}` prints something else:", *found])


def faults_of_manual(page, desk):
    with open(page, encoding="utf-8") as file:
        blocks = EXAMPLE.findall(file.read().replace("\\-", "-"))
    for block in blocks:
        if block.startswith("["):
            desk.write("drop.ini", block)
            continue
        for command in block.splitlines():
            found = desk.run(command)
            yield None if desk.status == 0 else "\n    ".join([f"`{command}`: status {desk.status}", *found])


def main():
    command = os.path.abspath(sys.argv[1])
    passed = failed = 0
    for page in [*PAGES, *MANUALS]:
        with tempfile.TemporaryDirectory() as folder:
            desk = Desk(folder, command)
            for fault in (faults_of_manual if page in MANUALS else faults_of_page)(page, desk):
                passed, failed = passed + (fault is None), failed + (fault is not None)
                if fault:
                    print(f"not ok {page}: {fault}")
    print(f"documents: {passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
