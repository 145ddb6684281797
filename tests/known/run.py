#!/usr/bin/python3
"""Run every known case through the command and hold its figures against the published ones.

    run.py COMMAND [FILE ...]           one `not ok` line a failure, then the count
    run.py --table COMMAND              docs/verification.md on standard output

The rig files beside this script carry their expectations in comments: casefile.py has the grammar.
"""
import glob
import json
import os
import subprocess
import sys
from dataclasses import dataclass

sys.dont_write_bytecode = True
HERE = os.path.dirname(os.path.abspath(__file__))
sys.path[:0] = [HERE, os.path.join(HERE, '..', 'tools')]

from casefile import BadCase, Expectation, read_case, varied  # noqa: E402
from expression import UNITS, Unanswered, evaluate  # noqa: E402
import verification  # noqa: E402


@dataclass
class Outcome:
    expectation: Expectation
    passed: bool
    computed: object     # number in the published figure's unit, word, or None
    published: object    # likewise
    tolerance: float     # in that unit; 0 for words
    unit: str
    why: str             # where nothing was computed


class Answers(dict):
    """What the command says about one rig, each asked for when it is first wanted.

    `report` and `limit`: the JSON, the exit status and the message among it. `hardware NAME`: the text.
    """

    def __init__(self, command, rig):
        super().__init__()
        self.command = os.path.abspath(command)
        self.rig = rig

    def __missing__(self, asked):
        words = asked.split() if asked.startswith('hardware ') else [asked, '--as', 'json', '-']
        # A rig's `tables` are looked for from the current folder, since the rig comes by standard input.
        done = subprocess.run([self.command, *words], input=self.rig, cwd=HERE, capture_output=True, text=True,
                              encoding='utf-8', timeout=60, check=False)
        if words[0] == 'hardware':
            self[asked] = done.stdout
        else:
            self[asked] = json.loads(done.stdout) if done.stdout.strip() else {}
            self[asked] |= {'status': done.returncode, 'message': done.stderr.strip()}
        return self[asked]


def compare(expectation, answers):
    """One expectation held against the answers on its rig."""
    words = Outcome(expectation, False, None, expectation.published, 0.0, '', '')
    try:
        found = evaluate(expectation.figure, answers)
    except (Unanswered, ZeroDivisionError) as fault:
        words.why = answers.get('report', {}).get('message') or str(fault)
        return words
    if not expectation.tolerance:
        return _compare_words(words, found)
    unit = expectation.published.split()[-1]
    scale = UNITS.get(unit, 1.0)
    published = evaluate(expectation.published, {}) / scale
    tolerance = _tolerance(expectation.tolerance, published)
    # The slack lets a figure through that lies on the edge of its rounding by arithmetic alone.
    near = abs(found / scale - published) <= tolerance * (1 + 1e-9)
    return Outcome(expectation, near != expectation.negated, found / scale, published, tolerance,
                   unit if unit in UNITS else '', '')


def _compare_words(outcome, found):
    outcome.computed = str(found)
    wanted = outcome.expectation.published
    same = wanted in outcome.computed if outcome.expectation.contains else wanted == outcome.computed
    outcome.passed = same != outcome.expectation.negated
    return outcome


def _tolerance(text, published):
    number, _, kind = text.partition(' ')
    share = {'': None, 'relative': 1.0, '%': 0.01}[kind]
    return float(number) if share is None else float(number) * share * abs(published)


def run_case(command, case):
    """All outcomes of a rig file; each variant of it is run once."""
    variants = {}
    outcomes = []
    for expectation in case.expectations:
        if expectation.changes not in variants:
            variants[expectation.changes] = Answers(command, varied(case.text, expectation.changes))
        outcomes.append(compare(expectation, variants[expectation.changes]))
    return outcomes


def failure_line(case, outcome):
    """`not ok FILE: what, published, computed`, for a reader of the log."""
    wanted = outcome.expectation
    label = f'{wanted.label}: ' if wanted.label else ''
    sense = 'not ' if wanted.negated else ''
    got = outcome.why or f'computed {outcome.computed} {outcome.unit}'.rstrip()
    tolerance = f' +- {wanted.tolerance}' if wanted.tolerance else ''
    return f'not ok {case.name}: {label}{wanted.figure}, published {sense}{wanted.published}{tolerance}, {got}'


def main(arguments):
    table = '--table' in arguments
    command, *paths = [argument for argument in arguments if argument != '--table']
    try:
        cases = [read_case(path) for path in paths or sorted(glob.glob(os.path.join(HERE, '*.ini')))]
        results = [(case, run_case(command, case)) for case in cases]
    except (BadCase, OSError) as fault:
        sys.exit(f'known: {fault}')
    failures = [failure_line(case, outcome) for case, outcomes in results for outcome in outcomes
                if not outcome.passed]
    count = sum(len(outcomes) for _, outcomes in results)
    for line in failures:
        print(line, file=sys.stderr if table else sys.stdout)
    if table:
        print(verification.page(results), end='')
    else:
        print(f'known: {count - len(failures)} passed, {len(failures)} failed')
    return 1 if failures or not count else 0


if __name__ == '__main__':
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1:]))
