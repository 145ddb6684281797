"""Hold the warnings of each rig file here against its name.

usage: check.py COMMAND

CODE.fires.ini or CODE.WORD.fires.ini is told CODE about exactly the parts in its line `; about: NAME, NAME` (`the rig`:
about no part); CODE.near.ini or CODE.WORD.near.ini is not told CODE. Every code of the library has both.
"""
import json
import pathlib
import re
import subprocess
import sys

HERE = pathlib.Path(__file__).resolve().parent
CODES = HERE.parents[1] / "src/rate/warnings.c"
WHOLE_RIG = "the rig"


def all_codes():
    """The spelling of every code that there is."""
    return re.findall(r'\[GTL_WARN_\w+\] = "([a-z-]+)"', CODES.read_text(encoding="utf-8"))


def told(command, path):
    """What the report warns of: code to the parts that it is about."""
    run = subprocess.run([command, "report", "--as", "json", path], capture_output=True, text=True, check=False)
    if run.returncode not in (0, 1, 3):
        raise ValueError(f"status {run.returncode}: {run.stderr.strip()}")
    found = {}
    for warning in json.loads(run.stdout)["warnings"]:
        found.setdefault(warning["code"], set()).add(warning["about"] or WHOLE_RIG)
    return found


def expected(path):
    """The parts that the file says it is told about; none for a near miss."""
    if path.name.endswith(".near.ini"):
        return set()
    about = re.search(r"^; about: (.*)$", path.read_text(encoding="utf-8"), re.MULTILINE)
    return set(about[1].split(", ")) if about else None


def fault(command, path):
    """What is wrong with one file, "" for nothing."""
    code, wanted = path.name.split(".")[0], expected(path)
    if code not in all_codes() or wanted is None:
        return "the name is no code of the library, or the line `; about:` is missing"
    try:
        found = told(command, path).get(code, set())
    except ValueError as error:
        return str(error)
    return "" if found == wanted else f"told about {sorted(found)}, not about {sorted(wanted)}"


def main():
    """Count and tell; status 1 where anything is wrong."""
    faults = [(path.name, fault(sys.argv[1], path)) for path in sorted(HERE.glob("*.ini"))]
    pairs = [f"{code}.{kind}.ini" for code in all_codes() for kind in ("fires", "near")]
    faults += [(name, "" if (HERE / name).exists() else "there is no such file") for name in pairs]
    faults.append(("codes", "" if pairs else f"found no codes in {CODES}"))
    for name, text in faults:
        if text:
            print(f"not ok {name}: {text}")
    failed = sum(bool(text) for _, text in faults)
    print(f"warnings: {len(faults) - failed} passed, {failed} failed")
    return failed > 0


if __name__ == "__main__":
    sys.exit(main())
