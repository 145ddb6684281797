"""Reads a rig file into plain Python objects, in SI units, from what docs/rig-file.md promises.

Only for files that are known to be right: nothing here looks for faults.
"""
import math
import re
import sys
from dataclasses import dataclass, field

import batten
import timber
from hardware import Tables

G0 = 9.80665
POUND = 0.45359237
MASSES = {'kg': 1, 'g': 1e-3, 't': 1e3, 'lb': POUND}
FORCES = {'n': 1, 'kn': 1e3, 'dan': 10, 'kgf': G0, 'lbf': POUND * G0, 'kip': 1e3 * POUND * G0}
LENGTHS = {'m': 1, 'cm': 1e-2, 'mm': 1e-3, 'ft': 0.3048, 'in': 0.0254}
ANGLES = {'deg': math.pi / 180, 'rad': 1}
ACCELERATIONS = {'m/s2': 1, 'ft/s2': 0.3048}
SPEEDS = {'m/s': 1, 'ft/s': 0.3048, 'm/min': 1 / 60, 'ft/min': 0.3048 / 60}
TIMES = {'s': 1, 'ms': 1e-3, 'min': 60}
MOVING = ('raise', 'lower', 'jam', 'start', 'stop')
FROM_ROW = {  # what a gear row gives to a kind that states none of it
    'block': ('mass', 'efficiency', 'sheave diameter', 'pin diameter'),
    'fairlead': ('mass', 'efficiency', 'friction', 'pin diameter'), 'joint': ('mass', 'pin diameter'),
    'anchor': ('pin diameter',), 'connector': ('pin diameter',), 'spar': ('mass',),
    'rope': ('diameter', 'material'), 'sling': ('diameter', 'material')}
INSTEAD = {'mass': 'weight', 'efficiency': 'friction', 'friction': 'efficiency'}

THINGS = ('anchor', 'block', 'fairlead', 'joint', 'load', 'hand')
LINES = ('rope', 'sling', 'spar')
TIES = ('anchor', 'joint', 'load', 'hand')  # a stop at one of these is tied wherever it stands in a path


class Refused(Exception):
    """A file that the contract refuses. Only what nobody may be talked out of is looked for here."""


@dataclass(eq=False)
class Item:
    """One section. What is not stated is None."""
    kind: str
    name: str
    keys: dict
    weight: float = 0.0
    ratings: list = field(default_factory=list)  # (key, newtons, design factor or None)
    row: object = None    # of gear
    # Things.
    at: tuple = None
    on: 'Item' = None
    via: list = field(default_factory=list)
    slip: tuple = None    # ('sheave', f) or ('bend', mu, turns): friction as stated
    wrap: float = None
    pull: float = None
    limit: float = None
    rests: bool = False   # of two hands joined by `or`: the other one pulls all it can
    dangling: list = field(default_factory=list)  # after a loss: (spar that hangs plumb here, weight, connectors)
    # Lines.
    stops: list = field(default_factory=list)  # (thing, connectors)
    length: float = None
    kept: list = None     # the length of each piece, where a loss left it so
    stretch: tuple = None  # elongation over length, and the pull that it is at
    fall: float = None    # of a load, how far it falls in the case drop


@dataclass
class Rig:
    items: list
    dim: int
    gravity: float
    cases: list          # names
    lifted: Item
    hand: Item           # the one whose pull is worked out
    tables: Tables = None
    use: object = None   # row
    acceleration: float = None
    loss_factor: float = 2.0
    holding: bool = False  # after a loss: hands hold on where they are
    unsure: bool = False   # more than two lines share a batten: demands take the worse of two ways
    springs: bool = False  # worked in the second of those, on lines that give alike
    twin: 'Rig' = None     # of two hands joined by `or` the other is worked out, and the first has 0 N

    def lifted_weight(self):
        """Of a batten all its picks."""
        whole = self.lifted.keys.get('batten')
        return sum(i.weight for i in self.of('load') if i is self.lifted or whole and i.keys.get('batten') == whole)

    def named(self, name):
        return next(item for item in self.items if item.name.lower() == name.lower())

    def of(self, *kinds):
        return [item for item in self.items if item.kind in kinds]


def number(text, *tables):
    """A quantity such as `16 ft 4 in`; a bare number where no table is given."""
    total = 0.0
    for value, unit in re.findall(r'([-+]?[\d.]+(?:e[-+]?\d+)?)\s*([a-z/%]+2?)?', text.strip().lower()):
        scale = 1.0 if not unit else 0.01 if unit == '%' else next(t[unit] for t in tables if unit in t)
        total += float(value) * scale
    return total


RANGE = re.compile(r'^([ \t]*(efficiency|friction)[ \t]*=[ \t]*)([^;#\n]*?)\s*\.\.\s*([^;#\n]*?)([ \t]*)$', re.M | re.I)


def at_ends(text, smooth):
    """The text with each range of friction at one end: the k-th at that of less where `smooth(k)` says so."""
    count = -1

    def end(match):
        nonlocal count
        count += 1
        low, high = match[3], match[4]
        if '%' in high and '%' not in low:
            low += ' %'
        less = high if match[2].lower() == 'efficiency' else low
        return match[1] + (less if smooth(count) else low if less == high else high)
    return RANGE.sub(end, text)


def force(text, gravity):
    """A rating or a pull; a mass is taken times g."""
    unit = re.findall(r'[a-z/]+', re.sub(r'\de[-+]?\d+', '', text.lower()))[-1]
    return number(text, MASSES) * gravity if unit in MASSES else number(text, FORCES)


def sections(text):
    """(kind, name, keys) of each section, comments and quotes taken away."""
    found = []
    for line in text.lstrip('\ufeff').splitlines():
        line = re.sub(r'(^|\s)[;#].*$', '', line).strip() if '"' not in line else line.strip()
        if line.startswith('['):
            words = line.strip('[]').split()
            found.append((words[0].lower(), words[1] if len(words) > 1 else '', {}))
        elif '=' in line:
            key, value = line.split('=', 1)
            found[-1][2][' '.join(key.lower().split())] = value.strip().strip('"')
    return found


def ratings(item, gravity, factor):
    """Every rating of the section and of its row, in the order in which the smaller is looked for."""
    own = float(item.keys['design factor']) if 'design factor' in item.keys else factor
    for key in ('wll', 'mbs', 'push wll'):
        for keys in (item.keys, item.row.keys if item.row else {}):
            if key in keys and (key != 'push wll' or item.kind == 'spar'):
                yield key, force(keys[key], gravity), own if key == 'mbs' else None


def take_row(item, tables):
    """Let the gear row give what the section does not state."""
    if 'hardware' not in item.keys:
        return
    item.row = tables.find('gear', item.keys['hardware'])
    for key in FROM_ROW[item.kind]:
        if key in item.row.keys and key not in item.keys and INSTEAD.get(key) not in item.keys:
            item.keys[key] = item.row.keys[key]


def slip(item, efficiency):
    """The friction that a running stop states: see `Item.slip`."""
    keys = item.keys
    own = number(keys['efficiency']) if 'efficiency' in keys else None
    if item.kind == 'block':
        own = efficiency if own is None else own
        return None if own is None else ('sheave', (1 - own) / (1 + own))
    if 'friction' not in keys and own is None:
        return None
    mu = float(keys['friction']) if 'friction' in keys else -math.log(own) / math.pi
    return ('bend', mu, int(keys.get('turns', 0)))


def weight(keys, gravity):
    if 'weight' in keys:
        return force(keys['weight'], gravity)
    return number(keys['mass'], MASSES) * gravity if 'mass' in keys else 0.0


def split_via(text, named):
    """`STOP via C1 + C2` as (thing, [connector, ...])."""
    words = re.split(r'\s+via\s+', text.strip(), flags=re.I)
    connectors = [named[c.strip().lower()] for c in words[1].split('+')] if len(words) > 1 else []
    return named[words[0].strip().lower()], connectors


def describe(item, named, gravity, factor, efficiency):
    """Fill in what the section's keys say."""
    keys = item.keys
    item.weight = weight(keys, gravity)
    item.ratings = list(ratings(item, gravity, factor))
    if 'at' in keys:
        item.at = tuple(number(part, LENGTHS) for part in keys['at'].split(','))
    if 'on' in keys:
        item.on, item.via = split_via(keys['on'], named)
    if item.kind in ('block', 'fairlead'):
        item.slip = slip(item, efficiency)
    if 'wrap' in keys:
        item.wrap = number(keys['wrap'], ANGLES)
    if 'pull' in keys:
        item.pull = force(keys['pull'], gravity)
    if 'people' in keys:
        item.limit = int(keys['people']) * force(keys['each'], gravity)
    if 'limit' in keys:
        item.limit = force(keys['limit'], gravity)
    if 'path' in keys:
        item.stops = [split_via(stop, named) for stop in keys['path'].split(',')]
    if 'length' in keys and all(thing.kind != 'hand' for thing, _ in item.stops):  # a hauled rope keeps none
        item.length = number(keys['length'], LENGTHS)
    if 'stretch' in keys:
        share, pull = re.split(r'\s+at\s+', keys['stretch'], flags=re.I)
        item.stretch = (number(share), force(pull, gravity))
    if 'fall' in keys:
        item.fall = number(keys['fall'], LENGTHS)


def cases_of(sheet, hand, all_limited, any_fall):
    """The names of the cases worked, in the contract's order."""
    words = [' '.join(c.lower().split()) for c in sheet.get('cases', 'hold, raise, lower').split(',')]
    if 'all' in words and hand:
        words += ['raise', 'lower'] + ['jam'] * all_limited
        words += ['start', 'stop'] * ('acceleration' in sheet or 'speed' in sheet)
    drops = 'drop' in words or ('all' in words and any_fall)
    return (['hold'] + [c for c in MOVING if c in words and hand] + [c for c in words if c.startswith('lost ')]
            + ['drop'] * drops)


def acceleration(sheet):
    if 'speed' in sheet:
        return number(sheet['speed'], SPEEDS) / number(sheet['time'], TIMES)
    return number(sheet['acceleration'], ACCELERATIONS) if 'acceleration' in sheet else None


def refuse(items, tables):
    """No knot in what takes no figure of knots; and a rig must be there."""
    for item in items:
        row = tables.find('material', item.keys.get('material'))
        if row and 'knots' in row.keys and 'knot' in item.keys:
            raise Refused(f'a knot in {item.name}')
    if not any(item.at for item in items):
        raise Refused('no rig')


def as_load(kind, name, keys):
    """An arbor is a load on a track of its own; `arbor` marks that nobody lifts it."""
    return Item('load', name, keys | {'guide': 'vertical', 'arbor': ''}) if kind == 'arbor' else Item(kind, name, keys)


def pair(hands, named):
    """The two hands of which one says `or`, in the order of the file; none where nobody does."""
    joined = {named[hand.keys['or'].lower()].name for hand in hands if 'or' in hand.keys}
    return [hand for hand in hands if 'or' in hand.keys or hand.name in joined]


def lifted_of(name, named, loads):
    """The load that is lifted; of a batten its heaviest pick."""
    chosen = named.get(name) or next((i for i in loads if i.keys.get('batten') == name or not name), None)
    picks = [i for i in loads if chosen and i.keys.get('batten', i) == chosen.keys.get('batten')]
    return max(picks, key=lambda i: i.weight, default=chosen) if name not in named else chosen


def read(text, folder='.', second=False, springs=False):
    """A rig file's text as a Rig. `folder` is where its own tables are. `second`: of two hands joined by `or` the
    second one is worked out. Ranges of friction are read at their end of more."""
    found = sections(at_ends(text, lambda k: False))
    sheet = next((keys for kind, _, keys in found if kind == 'rig'), {})
    tables = Tables([t.strip() for t in sheet['tables'].split(',')] if 'tables' in sheet else [], folder)
    gravity = number(sheet['gravity'], ACCELERATIONS) if 'gravity' in sheet else G0
    whole = batten.spread_out(found, gravity, tables, springs, sys.modules[__name__])
    items = [as_load(kind, name, keys) for kind, name, keys in whole if kind != 'rig']
    named = {item.name.lower(): item for item in items}
    factor = float(sheet['design factor']) if 'design factor' in sheet else None
    efficiency = number(sheet['efficiency']) if 'efficiency' in sheet else None
    for item in items:
        take_row(item, tables)
        timber.weigh(item.keys, tables)
        describe(item, named, gravity, factor, efficiency)
    refuse(items, tables)
    hands = [i for i in items if i.kind == 'hand']
    both = pair(hands, named)
    if both:
        both[0 if second else 1].pull = 0.0
    hand = next((i for i in hands if i.pull is None), None)
    loads = [i for i in items if i.kind == 'load' and 'arbor' not in i.keys]
    lifted = lifted_of(sheet.get('load', '').lower(), named, loads)
    dim = len(next(i.at for i in items if i.at))
    return Rig(items, dim, gravity, cases_of(sheet, hand, all(i.limit is not None for i in hands),
                                          any(i.fall is not None for i in items)),
               lifted if hand else None, hand, tables, tables.find('use', sheet.get('use')), acceleration(sheet),
               float(sheet.get('loss factor', 2)), unsure=batten.is_open(found), springs=springs,
               twin=read(text, folder, True) if both and not second else None)
