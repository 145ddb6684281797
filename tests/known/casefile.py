"""Known cases as they stand in rig files: structured comments, plain comments to the program.

    ; source: Wire Rope Users Manual, 4th ed., p. 88 (seen)
    ; expect: raise.hands.crew.force / 6000 lbf = 0.309 +- 0.0005
    ; expect not: hold.velocity_ratio = 1.5 +- 0.05
    ; expect: status = 2
    ; expect: message contains mover

A source holds for all expectations below it until the next; its last bracket says how it is known:
one of HOW_SEEN. A tolerance is in the unit of the published figure, or `1e-6 relative`, or `0.5 %`
of it; words take none. `status` is the exit status, `message` what went to standard error.

A table makes variants of the rig, one a row. A column headed `[kind name] key` replaces that key's
value, `[sling *] wll` that of every sling; any other is an expectation (`not` before it and `contains`
behind it as above), its published figures in the rows, with a tolerance of their own where the source
rounds them otherwise:

    ; table: parts   | [rope fall] path    | raise.estimated_advantage +- 0.012
    ; row:   1 part  | tail, head, crew    | 0.96
    ; row:   2 parts | head, tail, head, crew | 1.87

Hardware tables that a rig names stand in `tables`. Figures of `gantline limit` and of the shipped
tables are written as expression.py says; a file with nothing but these needs no rig below its title.
"""
import os
import re
from dataclasses import dataclass

HOW_SEEN = ('seen', 'seen twice', 'memory', 'derived', 'common practice, no source')
COMMENT = re.compile(r';\s*([A-Za-z]+(?: not)?):\s*(.*)')
SECTION = re.compile(r'\[(.+?)\]\s*(.*)')


class BadCase(Exception):
    """A known case that is written wrongly."""


@dataclass(frozen=True)
class Expectation:
    label: str       # the row of a table, else ''
    changes: tuple   # ((section, key, value), ...): how the rig differs from the file
    figure: str      # the expression
    negated: bool    # the published figure is known to be wrong
    contains: bool   # a text that holds the published words
    published: str
    tolerance: str   # '' for words
    source: str
    how: str


@dataclass
class CaseFile:
    path: str
    text: str
    title: str
    expectations: list

    @property
    def name(self):
        return os.path.basename(self.path)


def read_case(path):
    """A rig file with its expectations; BadCase where a comment is not understood."""
    with open(path, encoding='utf-8') as stream:
        text = stream.read()
    title = re.search(r'^title = (.*)$', text, re.M)
    case = CaseFile(path, text, title.group(1) if title else os.path.basename(path), [])
    reader = _Reader(case)
    for number, line in enumerate(text.splitlines(), 1):
        match = COMMENT.fullmatch(line.strip())
        try:
            if match:
                reader.take(match.group(1), match.group(2))
        except BadCase as fault:
            raise BadCase(f'{path}:{number}: {fault}') from None
    if not case.expectations:
        raise BadCase(f'{path}: nothing is expected; give it `; expect:` or `; table:`')
    return case


def varied(text, changes):
    """The text of a rig with some keys' values replaced."""
    for section, key, value in changes:
        header = re.escape(section).replace(r'\*', r'[^\]\n]*')
        pattern = re.compile(rf'(^\[{header}\]\n(?:[^\[\n].*\n)*?{re.escape(key)} = ).*$', re.M)
        text, count = pattern.subn(lambda match, new=value: match.group(1) + new, text)
        if count == 0 or count > 1 and '*' not in section:
            raise BadCase(f'a table changes [{section}] {key}, which the rig does not state, or not once')
    return text


class _Reader:
    """Takes one structured comment after the other."""

    def __init__(self, case):
        self.case = case
        self.source = self.how = ''
        self.columns = []

    def take(self, word, rest):
        take = {'source': self._source, 'expect': self._expect, 'expect not': self._expect_not,
                'table': self._table, 'row': self._row}.get(word)
        if not take:
            raise BadCase(f'"{word}:" is not a word of known cases')
        take(rest)

    def _source(self, rest):
        match = re.fullmatch(r'(.*?)\s*\(([^()]*)\)', rest)
        if not match or match.group(2) not in HOW_SEEN:
            raise BadCase(f'a source ends with how it is known, one of: {"; ".join(HOW_SEEN)}')
        self.source, self.how = match.groups()

    def _expect(self, rest, negated=False):
        match = re.fullmatch(r'(.*?) (=|contains) (.*)', rest)
        if not match:
            raise BadCase('an expectation is `FIGURE = PUBLISHED +- TOLERANCE`')
        published, _, tolerance = match.group(3).partition(' +- ')
        self._add('', (), match.group(1), published, tolerance, negated, match.group(2) == 'contains')

    def _expect_not(self, rest):
        self._expect(rest, negated=True)

    def _table(self, rest):
        self.columns = [cell.strip() for cell in rest.split('|')][1:]

    def _row(self, rest):
        label, *cells = [cell.strip() for cell in rest.split('|')]
        if len(cells) != len(self.columns):
            raise BadCase(f'a row of {len(cells)} cells under a table of {len(self.columns)}')
        changes, figures = [], []
        for column, cell in zip(self.columns, cells):
            section = SECTION.fullmatch(column)
            if section:
                changes.append((section.group(1), section.group(2), cell))
            else:
                figures.append((column, cell))
        for column, cell in figures:
            figure, _, tolerance = column.removeprefix('not ').partition(' +- ')
            published, _, own = cell.partition(' +- ')
            self._add(label, tuple(changes), figure.removesuffix(' contains'), published, own or tolerance,
                      column.startswith('not '), figure.endswith(' contains'))

    def _add(self, label, changes, figure, published, tolerance, negated, contains):
        if not self.source:
            raise BadCase('an expectation needs a `; source:` above it')
        self.case.expectations.append(Expectation(label, changes, figure.strip(), negated, contains,
                                                  published.strip(), tolerance.strip(), self.source, self.how))
