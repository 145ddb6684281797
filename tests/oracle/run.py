#!/usr/bin/python3
"""Works rigs a second time, by an oracle that shares nothing with the program but the contract, and compares.

    run.py GANTLINE               the known rigs, the examples, the rigs beside this script, then random ones
    run.py GANTLINE FILE|SEED...  these rig files, or the random rigs of these seeds, with every difference
    run.py --show SEED            print the random rig of a seed: 12, or g12 with gear from tables; l12 is the
                                  same, for its limit; b12 is 12 with a lift, for its rope bill

Statics, friction, motion, losses, ratings and limits are written anew in Python from docs/rig-file.md. A rig counts
as passed when every tension, force, place, ratio, demand, step of a rating, status, the verdict and the exit status
agree to a millionth, or when neither side finds an answer. Pairs of refusals are counted apart, on a line of their
own, and so are jams, starts, stops and losses of which the program alone says that it finds no figures: the rest of
the rig is compared without them, and too many of them fail the suite.
"""
import glob
import json
import multiprocessing
import os
import re
import shutil
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
import garnish  # noqa: E402
import generate  # noqa: E402
import judge  # noqa: E402
import limits  # noqa: E402
import ranges  # noqa: E402
import rigfile  # noqa: E402
import ropebill  # noqa: E402
from statics import NoAnswer  # noqa: E402

SEEDS = range(320)
GEAR_SEEDS = (*range(300), 787, 842, 1423, 1766, 2378)
LIMIT_SEEDS = (6, 7, 9, 10, 13, 15, 19, 34, 37, 38, 41, 49, 55, 58, 59, 64, 65, 66, 67, 73, 75, 77, 78, 81, 82, 83, 88,
               94, 98, 103, 105, 121, 122, 124)  # loads that a rating limits
# Where nobody hauls, or nothing can come closer, a lift or a clear distance is a fault.
BILL_SEEDS = [n for n in range(80) if n not in (5, 6, 22, 26, 31, 36, 39, 46, 52, 58, 59, 64, 71, 74)]
SEED = re.compile(r'[glb]?\d+')
LIMIT = re.compile(r'\bl\d+$')
WORKERS = 2
ALONE_AT_MOST = 30  # cases that the program may refuse where the oracle works them: it is cautious
SECONDS = 10        # more than any of these rigs may take, in a sanitized build too
FOLDERS = [os.path.join(HERE, *path) for path in (('..', 'known'), ('..', '..', 'docs', 'examples'), ('rigs',))]


def read(path):
    with open(path, encoding='utf-8') as file:
        return file.read()


def run_program(command, path, asked='report'):
    done = subprocess.run([command, asked, '--as', 'json', path], capture_output=True, text=True,
                          timeout=SECONDS, check=False)
    return done.returncode, done.stdout, done.stderr.replace(path, 'RIG').strip()


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


def check(command, path):
    """(whether both refused the rig, how many cases the program alone refused, every disagreement)."""
    try:
        status, out, said = run_program(command, path)
    except subprocess.TimeoutExpired:
        return False, 0, [f'took more than {SECONDS} s']
    if status not in (0, 1, 2, 3):
        return False, 0, [f'ended with status {status}: {said}']
    printed = json.loads(out) if out else None
    if printed and rigfile.RANGE.search(read(path)):
        return False, 0, [*bad_numbers(printed), *ranges.check(read(path), path, printed)]
    try:
        rig = rigfile.read(read(path), os.path.dirname(path))
        mine = judge.report(rig)
        alone = {case for case in compare.refused(printed) if mine['cases'][case]} if printed else set()
        if alone:
            mine = judge.report(rig, alone)
    except (NoAnswer, rigfile.Refused) as reason:
        if status == 2 and not out:
            return True, 0, []
        return False, 0, [f'the oracle finds no answer ({reason}), status {status}']
    if status == 2:
        return False, 0, [f'no answer: {said}; the oracle finds one: {mine["verdict"]}']
    bill = list(ropebill.compare(rig, mine, printed))
    if rig.unsure:
        bill += compare.short_of(judge.report(rigfile.read(read(path), os.path.dirname(path), springs=True), alone), printed)
    return False, len(alone), [*bad_numbers(printed), *bill, *compare.compare(mine, printed, status)]


def check_limit(command, path):
    """As `check`, of the command `limit`."""
    status, out, said = run_program(command, path, 'limit')
    if not out:
        return False, 0, [f'limit: status {status}: {said}']
    return False, 0, [*limits.compare(rigfile.read(read(path), os.path.dirname(path)), json.loads(out))]


def write(folder, name, text):
    path = os.path.join(folder, f'{name}.ini')
    with open(path, 'w', encoding='utf-8') as file:
        file.write(text)
    return path


def random_rig(folder, name):
    """The file of the random rig of a seed; of one with gear where a `g` (or for its limit an `l`) stands before
    the number, of one with a lift where a `b` does."""
    number = int(name.lstrip('glb'))
    text = generate.rig(number) if name[0] not in 'gl' else garnish.rig(number, garnish.stock(HERE))
    if name[0] == 'b':
        text = ropebill.garnish(text, number)
    return write(folder, name, text)


def all_rigs(folder):
    """(name, path) of every rig of the suite."""
    for place in FOLDERS:
        files = sorted(glob.glob(os.path.join(place, '*.ini')))
        if not files:
            yield os.path.normpath(place), None
        for file in files:
            yield os.path.relpath(file, HERE), file
    for name in [f'{seed}' for seed in SEEDS] + [f'g{seed}' for seed in GEAR_SEEDS] + [f'l{n}' for n in LIMIT_SEEDS] + [
            f'b{seed}' for seed in BILL_SEEDS]:
        yield f'seed {name}', random_rig(folder, name)


def check_one(job):
    command, name, path = job
    try:
        if not path:
            return name, False, 0, ['there is no rig in this folder']
        return (name, *(check_limit if LIMIT.search(name) else check)(command, path))
    except Exception as fault:  # a StopIteration would end the caller's loop without a word
        return name, False, 0, [f'the oracle stumbled: {fault!r}']


def main(arguments):
    command, chosen = arguments[0], arguments[1:]
    with tempfile.TemporaryDirectory() as folder, multiprocessing.Pool(WORKERS) as pool:
        shutil.copy(os.path.join(HERE, 'stock.ini'), folder)
        rigs = [(c, random_rig(folder, c) if SEED.fullmatch(c) else c) for c in chosen] or all_rigs(folder)
        if command == '--show':
            print(*(read(path) for _, path in rigs), sep='\n')
            return 0
        passed = failed = refused = alone = 0
        for name, both, cases, wrong in pool.imap(check_one, [(command, *rig) for rig in rigs]):
            passed, failed, refused, alone = passed + (not wrong), failed + bool(wrong), refused + both, alone + cases
            if cases and chosen:
                print(f'{name}: {cases} cases refused by the program alone')
            for line in wrong if chosen else wrong[:3]:
                print(f'not ok: {name}: {line}')
    print(f'{refused} of these rigs have no answer on either side')
    if alone > ALONE_AT_MOST:
        failed += 1
        print(f'not ok: the program refuses too much: at most {ALONE_AT_MOST} of the cases that the oracle works')
    print(f'{alone} jams, starts, stops and losses have figures by the oracle, but none by the program')
    print(f'oracle: {passed} passed, {failed} failed')
    return failed > 0


if __name__ == '__main__':
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1:]))
