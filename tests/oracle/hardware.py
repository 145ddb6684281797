"""Hardware tables read with Python's own reader of INI files, and what a row leaves of a rating."""
import configparser
import functools
import glob
import math
import os
from dataclasses import dataclass

SHIPPED = os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', '..', 'hardware-tables')
ON_EDGE = 1e-9    # what differs less from the edge of a step lies on it


@dataclass(eq=False)
class Row:
    kind: str
    name: str
    keys: dict
    file: str

    def word(self, key, other=''):
        return self.keys.get(key, other)

    def list(self, key):
        return [part.strip() for part in self.keys[key].split(',')]

    def suits(self, rope_class):
        return 'class' not in self.keys or rope_class in self.list('class')


def read(path, shown):
    parser = configparser.ConfigParser(comment_prefixes=('#', ';'), inline_comment_prefixes=None,
                                       delimiters=('=',), strict=False, interpolation=None)
    parser.read(path, encoding='utf-8')
    for header in parser.sections():
        kind, name = header.lower().split()
        yield Row(kind, name, {k: v.strip('"') for k, v in parser[header].items()}, shown)


@functools.lru_cache
def shipped():
    paths = sorted(glob.glob(os.path.join(SHIPPED, '*.ini')))
    return [row for path in paths for row in read(path, 'hardware-tables/' + os.path.basename(path))]


class Tables:
    """All rows: a rig's own tables before the shipped ones."""

    def __init__(self, own=(), folder='.'):
        self.rows = {}
        mine = [row for name in own for row in read(os.path.join(folder, name), name)]
        for row in mine + shipped():
            self.rows.setdefault((row.kind, row.name), row)

    def find(self, kind, *names):
        """The first row of any of these names."""
        return next((self.rows[kind, n.lower()] for n in names if n and (kind, n.lower()) in self.rows), None)


def fraction(text):
    return float(text.strip('% ')) / 100 if '%' in text else float(text)


def angle(text):
    return math.radians(float(text.replace('deg', '')))


def kept(row, at=None):
    """What the row leaves at an angle or ratio: 0 where it is forbidden, None where nothing is known."""
    if 'coefficient' in row.keys:
        least, power = float(row.word('from')), float(row.word('power'))
        return 1 - float(row.word('coefficient')) / at ** power if at >= least * (1 - ON_EDGE) else None
    if 'from' in row.keys:
        read_edge = angle if row.kind == 'choke' else float
        steps = sorted(zip(map(read_edge, row.list('from')), map(fraction, row.list('keeps'))))
        reached = [share for edge, share in steps if at >= edge * (1 - ON_EDGE)]
        return reached[-1] if reached else None
    if 'up to' in row.keys:
        steps = zip(map(angle, row.list('up to')), map(fraction, row.list('keeps')))
        left = [share for edge, share in steps if at <= edge * (1 + ON_EDGE)]
        return left[0] if left else 0.0 if row.word('beyond') == 'not allowed' else None
    return fraction(row.word('keeps'))
