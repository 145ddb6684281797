"""Plant faults in the code one by one, and see that the tests catch each.

usage: mutate.py [WORD]      only the faults whose file or description holds WORD

The table is tests/tools/mutations.txt: blocks of four lines, blank lines between, `#` for comments:

    what: friction works the wrong way round
    file: src/solve/friction.c
    old:  the exact fragment of one line, found once in the file
    new:  what takes its place

Each worker has a scratch copy of the project, where only what changed is built again and the suites stop at the
first that fails. Golden reports do not count: they would catch any change, right or wrong. Status 1 if a fault
goes unnoticed, 2 if the table does not fit the code.
"""
import concurrent.futures
import os
import pathlib
import queue
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
TABLE = ROOT / "tests/tools/mutations.txt"
FIELDS = ["what", "file", "old", "new"]
BUILD_SECONDS = 120
# A fault may make a loop endless; that is caught too.
SUITE_SECONDS = 90
LAW_RIGS = "200"


class TableError(Exception):
    """The table does not fit the code."""


def read_table():
    """The faults, each a dictionary of FIELDS."""
    faults, block = [], {}
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    for number, line in enumerate(lines + [""], 1):
        if line.startswith("#"):
            continue
        if line.strip():
            field, _, value = line.partition(":")
            if field not in FIELDS or field in block:
                raise TableError(f"{TABLE.name}:{number}: expected one of {', '.join(FIELDS)}, once")
            block[field] = value.strip()
        elif block:
            if len(block) != len(FIELDS):
                raise TableError(f"{TABLE.name}:{number}: the block before needs {', '.join(FIELDS)}")
            faults.append(block)
            block = {}
    return faults


def planted(fault):
    """The text of the file with the fault in it."""
    text = (ROOT / fault["file"]).read_text(encoding="utf-8")
    found = text.count(fault["old"])
    if found != 1:
        raise TableError(f"{fault['file']}: found {found} times, not once: {fault['old']}")
    return text.replace(fault["old"], fault["new"])


def suites(copy):
    """Commands, the quick and telling ones first."""
    built = copy / "build/tests"
    units = sorted(path for path in built.glob("unit/test_*") if not path.suffix)
    laws = sorted(path for path in built.glob("laws/*") if not path.suffix)
    python = os.environ.get("PYTHON", "/usr/bin/python3")
    yield "sample", ["sh", "tests/tools/test_sample.sh", "build/tests/sample"]
    yield "known", [python, "tests/known/run.py", "build/gantline"]
    for path in units:
        yield path.name, [str(path)]
    yield "explain", [python, "tests/explain/run.py", "build/gantline", "--quick"]
    yield "bad-input", ["sh", "tests/bad-input/run.sh", "build/gantline"]
    yield "warnings", ["sh", "tests/warnings/run.sh", "build/gantline"]
    for path in laws:
        yield path.name, [str(path), LAW_RIGS]
    yield "cli", ["sh", "tests/cli/run.sh", "build/gantline"]


def fails(command, copy, seconds):
    """Whether the command ends with anything but 0, or not in time."""
    try:
        run = subprocess.run(command, cwd=copy, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                             stderr=subprocess.DEVNULL, timeout=seconds, check=False)
    except subprocess.TimeoutExpired:
        return True
    return run.returncode != 0


def build_fails(copy):
    return fails(["make", "-s", "tests", "CFLAGS=-O1"], copy, BUILD_SECONDS)


def catcher(copy):
    """The first suite that fails, None where all pass."""
    return next((name for name, command in suites(copy) if fails(command, copy, SUITE_SECONDS)), None)


def prepared_copy(parent, number):
    """A copy of the project that is built."""
    copy = pathlib.Path(parent) / f"copy-{number}"
    shutil.copytree(ROOT, copy, ignore=shutil.ignore_patterns(".git", "build"))
    if build_fails(copy):
        raise TableError("the code does not build without any fault")
    return copy


def try_fault(fault, copies):
    """What came of one fault: the suite that caught it, "" for none, None where it does not build."""
    copy = copies.get()
    try:
        path = copy / fault["file"]
        sound = path.read_text(encoding="utf-8")
        path.write_text(planted(fault), encoding="utf-8")
        result = None if build_fails(copy) else catcher(copy) or ""
        path.write_text(sound, encoding="utf-8")
        return result
    finally:
        copies.put(copy)


def run(faults, parent):
    """Try all faults; the numbers of those caught, missed and not building."""
    workers = os.cpu_count() or 2
    tally = {"caught": 0, "missed": 0, "does not build": 0}
    with concurrent.futures.ThreadPoolExecutor(workers) as pool:
        copies = queue.Queue()
        for copy in pool.map(lambda number: prepared_copy(parent, number), range(workers)):
            copies.put(copy)
        first = copies.get()
        broken = catcher(first)
        if broken:
            raise TableError(f"{broken} fails without any fault")
        copies.put(first)
        for fault, suite in zip(faults, pool.map(lambda fault: try_fault(fault, copies), faults)):
            outcome = "does not build" if suite is None else "caught" if suite else "missed"
            tally[outcome] += 1
            print(f"{outcome + (' by ' + suite if suite else ''):<34} {fault['file']}: {fault['what']}", flush=True)
    return tally


def main():
    word = sys.argv[1] if len(sys.argv) > 1 else ""
    try:
        table = read_table()
        faults = [fault for fault in table if word in fault["file"] + fault["what"]]
        for fault in table:
            planted(fault)
        with tempfile.TemporaryDirectory(prefix="gantline-mutate-") as parent:
            tally = run(faults, parent)
    except (TableError, OSError) as error:
        print(f"mutate: {error}", file=sys.stderr)
        return 2
    print(f"mutate: {tally['caught']} of {len(faults)} caught")
    return 2 if tally["does not build"] or not faults else 1 if tally["missed"] else 0


if __name__ == "__main__":
    sys.exit(main())
