#!/usr/bin/python3
"""Reads worked solutions again and holds them to their word.

    run.py GANTLINE               the examples, the known rigs, the rigs beside this script, then random ones
    run.py GANTLINE FILE|SEED...  these rig files, or the random rigs of these seeds, with every fault found
    run.py GANTLINE --quick       every fifth random rig only

Every equation printed is parsed and worked out with intervals and units, and all its members have to agree to their
printed digits; symbols stand for the values given to them. Pulls, supports, effort, travel and efficiency are those of
the JSON report. Parts are counted only where the rig file, read by the oracle's reader, bears it out.
"""
import glob
import multiprocessing
import os
import sys
import tempfile

sys.dont_write_bytecode = True
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path[:0] = [HERE, os.path.join(HERE, '..', 'oracle')]

import check  # noqa: E402
import context  # noqa: E402
import equations  # noqa: E402
import generate  # noqa: E402

SEEDS = (*range(1000, 1300), 3186)
WORKERS = 2
FOLDERS = [os.path.join(HERE, *path) for path in (('..', '..', 'docs', 'examples'), ('..', 'known'), ('rigs',))]


def reads_equations():
    """The reader of equations can tell what holds; each that it cannot, told."""
    values = {'T': equations.Interval(1.25, 1.25, equations.FORCE), 'h': context.ONE_LIFT}
    with open(os.path.join(HERE, 'equations.txt'), encoding='utf-8') as file:
        lines = [line.rstrip('\n').split('  ', 1) for line in file if not line.startswith('#')]
    for expected, equation in lines:
        try:
            equations.Chain(equation).check(values.__getitem__)
            found = 'holds'
        except (equations.Wrong, KeyError):
            found = 'fails'
        if found != expected:
            yield f'{equation}: {found}'


def random_rig(folder, seed):
    path = os.path.join(folder, f'{seed}.ini')
    with open(path, 'w', encoding='utf-8') as file:
        file.write(generate.rig(seed))
    return path


def all_rigs(folder, seeds):
    """(name, path) of every rig of the suite."""
    for place in FOLDERS:
        files = sorted(glob.glob(os.path.join(place, '*.ini')))
        if not files:
            yield os.path.normpath(place), None
        for file in files:
            yield os.path.relpath(file, HERE), file
    for seed in seeds:
        yield f'seed {seed}', random_rig(folder, seed)


def check_one(job):
    command, name, path = job
    if not path:
        return name, False, ['there is no rig in this folder']
    try:
        return (name, *check.check(command, path))
    except Exception as fault:  # a worker that ends would end the suite without a word
        return name, False, [f'the check stumbled: {fault!r}']


def main(arguments):
    command, chosen = arguments[0], arguments[1:]
    seeds = SEEDS[::5] if '--quick' in chosen else SEEDS
    chosen = [word for word in chosen if word != '--quick']
    with tempfile.TemporaryDirectory() as folder, multiprocessing.Pool(WORKERS) as pool:
        rigs = [(c, random_rig(folder, int(c)) if c.isdigit() else c) for c in chosen] or all_rigs(folder, seeds)
        misread = list(reads_equations())
        for line in misread:
            print(f'not ok: equations.txt: {line}')
        passed, failed, refused = not misread, bool(misread), 0
        for name, none, wrong in pool.imap(check_one, [(command, *rig) for rig in rigs]):
            passed, failed, refused = passed + (not wrong), failed + bool(wrong), refused + none
            for line in wrong if chosen else wrong[:3]:
                print(f'not ok: {name}: {line}')
    print(f'{refused} of these rigs have no answer, so no explanation')
    print(f'explain: {passed} passed, {failed} failed')
    return failed > 0


if __name__ == '__main__':
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1:]))
