"""docs/verification.md: every known case with its source, the published and the computed figure.

Fed by tests/known/run.py; computes nothing but the difference.
"""
import math
import os

LEFT_OUT = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', 'known', 'left-out.md')

# The first word of a file's name says where it belongs.
SECTIONS = {
    't01': 'Tackles: hoisting', 't02': 'Tackles: lowering', 't03': 'Lead lines and lead blocks',
    't04': 'Efficiency of reeving', 't05': 'Fast line, dead line and crown',
    't06': 'Other sheaves and reevings', 't08': 'Named tackles', 't09': 'Several ropes',
    't10': 'Bends and derricks', 't11': 'Knots, bridles and taut lines',
    't12': 'Bends without a sheave', 'errors': 'Tackles: figures known to be wrong',
    'r01': 'Sling angles', 'r02': 'Chain slings', 'r03': 'Natural fibre slings', 'r04': 'Hitches and modes',
    'r05': 'Bends and ends of wire rope', 'r06': 'Knots and splices', 'r07': 'Side loads, head fittings, connectors',
    'r08': 'Design factors by use', 'r09': 'Ratings and units', 'd01': 'Green wood', 'd02': 'Volumes of a stem',
    'd03': 'Drops', 'd05': 'Starting and stopping', 'd06': 'Battens and counterweight sets',
    'd07': 'Battens on level lines',
    'c01': 'Textbook problems', 'c03': 'Rope and throw', 'bench': 'Set-ups of a pulley class',
}

HEAD = """<!-- Written by tests/known/run.py --table; do not edit. -->
# Verification

Published figures, and what `gantline` computes for the same rig. The files are rig files in `tests/known/`:
each runs as it is, and its comments name the source, the published figure and its tolerance, which is the
source's own rounding. `make check` runs them all and compares this page.

How a figure is known: *seen*, read in the source or in a copy of it (*seen twice*: in two); *memory*, not
looked up again; *derived*, follows from the given figures by the arithmetic named with it; *common practice,
no source*, what everybody does in class.

The difference is computed minus published. *Not* stands before a figure that is in print and wrong: there the
program has to disagree. Paths such as `raise.hands.crew.force` are those of `gantline report --as json`, those under
`limit` of `gantline limit --as json`, those under `hardware` of the tables that `gantline hardware` prints; a
line's parts are numbered in path order. A figure without words beside it belongs to the file as it stands.
"""


def page(results):
    """The whole page, from (case file, outcomes) pairs."""
    unknown = {_section(case) for case, _ in results} - set(SECTIONS)
    if unknown:
        raise KeyError(f'name a section for files that begin with: {", ".join(sorted(unknown))}')
    count = sum(len(outcomes) for _, outcomes in results)
    lines = [HEAD, f'{count} figures in {len(results)} files.', '']
    for section, title in SECTIONS.items():
        lines += [f'## {title}', '']
        for case, outcomes in results:
            if _section(case) == section:
                lines += _case_lines(case, outcomes)
    with open(LEFT_OUT, encoding='utf-8') as stream:
        return '\n'.join(lines) + '\n' + stream.read()


def _section(case):
    return case.name.removesuffix('.ini').split('-')[0]


def _case_lines(case, outcomes):
    """One file: its title, and a table for each source."""
    lines = [f'### {case.title}', '', f'`{case.name}`', '']
    source = None
    for outcome in outcomes:
        expectation = outcome.expectation
        if (expectation.source, expectation.how) != source:
            source = (expectation.source, expectation.how)
            lines += [] if lines[-1] == '' else ['']
            lines += [f'{source[0]} (*{source[1]}*)', '',
                      '| case | figure | published | computed | difference |', '|---|---|---|---|---|']
        lines.append(_row(outcome))
    return lines + ['']


def _row(outcome):
    expectation = outcome.expectation
    published = ('not ' if expectation.negated else '') + expectation.published
    if outcome.computed is None or not expectation.tolerance:
        computed, difference = _words(outcome)
    else:
        computed = f'{_number(outcome.computed, outcome)} {outcome.unit}'.rstrip()
        difference = _number(outcome.computed - outcome.published, outcome)
    return f'| {expectation.label} | `{expectation.figure}` | {published} | {computed} | {difference} |'


def _words(outcome):
    """A long message is not repeated: that it holds the published words is what counts."""
    if outcome.computed is None:
        return 'no answer', ''
    if outcome.expectation.contains:
        return ('names it' if outcome.passed != outcome.expectation.negated else 'does not name it'), ''
    return outcome.computed, ''


def _number(value, outcome):
    """Shown to a tenth of the tolerance, if any, nine digits at most: machines which round differently print the same page."""
    decimals = math.ceil(-math.log10(outcome.tolerance)) + 1 if outcome.tolerance > 0 else 9
    size = max(abs(outcome.computed), abs(outcome.published))
    if size > 0:
        decimals = min(decimals, 8 - math.floor(math.log10(size)))
    # Nudged, so that a tie such as 2.5 does not fall to either side by the last bit.
    text = f'{value * (1 + 1e-11):.{max(0, decimals)}f}'
    return text.removeprefix('-') if float(text) == 0 else text
