#!/usr/bin/python3
"""Works rigs a second time, by an oracle that shares nothing with the program but the contract, and compares.

    run.py GANTLINE               the known rigs, the examples, the rigs beside this script, then random ones
    run.py GANTLINE FILE|SEED...  these rig files, or the random rigs of these seeds, with every difference
    run.py --show SEED            print the random rig of a seed

Statics, friction, motion and ratings are written anew in Python from docs/rig-file.md. A rig counts as passed when
every tension, force, place, ratio, demand, status, the verdict and the exit status agree to a millionth, or when
neither side finds an answer. A pair of refusals is counted apart, on a line of its own: nothing is left out.
"""
import glob
import json
import os
import subprocess
import sys
import tempfile

for variable in ('OPENBLAS_NUM_THREADS', 'OMP_NUM_THREADS'):  # tiny matrices: threads only cost
    os.environ.setdefault(variable, '1')
sys.dont_write_bytecode = True
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, HERE)

try:
    import numpy as np
    import scipy  # noqa: F401
except ImportError as missing:
    print(f'oracle: {missing}: install python3-numpy and python3-scipy, or run with /usr/bin/python3')
    print('oracle: 0 passed, 1 failed')
    sys.exit(1)

import compare  # noqa: E402
import generate  # noqa: E402
import judge  # noqa: E402
import rigfile  # noqa: E402
from statics import NoAnswer  # noqa: E402

SEEDS = range(320)
SECONDS = 10        # more than any of these rigs may take, in a sanitized build too
FOLDERS = [os.path.join(HERE, *path) for path in (('..', 'known'), ('..', '..', 'docs', 'examples'), ('rigs',))]


def read(path):
    with open(path, encoding='utf-8') as file:
        return file.read()


def run_program(command, text):
    with tempfile.NamedTemporaryFile('w', suffix='.ini', encoding='utf-8') as rig:
        rig.write(text)
        rig.flush()
        done = subprocess.run([command, 'report', '--as', 'json', rig.name], capture_output=True, text=True,
                              timeout=SECONDS, check=False)
        return done.returncode, done.stdout, done.stderr.replace(rig.name, 'RIG').strip()


def bad_numbers(value, where='report'):
    """Numbers that must never be printed: not finite, or minus zero."""
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from bad_numbers(inner, f'{where}.{key}')
    elif isinstance(value, list):
        for k, inner in enumerate(value):
            yield from bad_numbers(inner, f'{where}[{k}]')
    elif isinstance(value, float) and (not np.isfinite(value) or value == 0 and np.signbit(value)):
        yield f'{where} is {value!r}'


def check(command, text):
    """(whether both refused the rig, every disagreement)."""
    try:
        status, out, said = run_program(command, text)
    except subprocess.TimeoutExpired:
        return False, [f'took more than {SECONDS} s']
    if status not in (0, 1, 2, 3):
        return False, [f'ended with status {status}: {said}']
    try:
        mine = judge.report(rigfile.read(text))
    except NoAnswer as reason:
        if status == 2 and not out:
            return True, []
        return False, [f'the oracle finds no answer ({reason}), status {status}']
    if status == 2:
        return False, [f'no answer: {said}; the oracle finds one: {mine["verdict"]}']
    printed = json.loads(out)
    return False, [*bad_numbers(printed), *compare.compare(mine, printed, status)]


def all_rigs():
    """(name, text) of every rig of the suite."""
    for folder in FOLDERS:
        files = sorted(glob.glob(os.path.join(folder, '*.ini')))
        if not files:
            yield os.path.normpath(folder), None
        for file in files:
            yield os.path.relpath(file, HERE), read(file)
    for seed in SEEDS:
        yield f'seed {seed}', generate.rig(seed)


def main(arguments):
    if arguments[:1] == ['--show']:
        print(generate.rig(int(arguments[1])))
        return 0
    command, chosen = arguments[0], arguments[1:]
    rigs = [(c, generate.rig(int(c)) if c.isdigit() else read(c)) for c in chosen] or all_rigs()
    passed = failed = refused = 0
    for name, text in rigs:
        both, wrong = check(command, text) if text else (False, ['there is no rig in this folder'])
        passed, failed, refused = passed + (not wrong), failed + bool(wrong), refused + both
        for line in wrong if chosen else wrong[:3]:
            print(f'not ok: {name}: {line}')
    print(f'{refused} of these rigs have no answer on either side')
    print(f'oracle: {passed} passed, {failed} failed')
    return failed > 0


if __name__ == '__main__':
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1:]))
