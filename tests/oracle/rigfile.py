"""Reads a rig file into plain Python objects, in SI units, from what docs/rig-file.md promises.

Only for files that are known to be right: nothing here looks for faults.
"""
import math
import re
from dataclasses import dataclass, field

G0 = 9.80665
POUND = 0.45359237
MASSES = {'kg': 1, 'g': 1e-3, 't': 1e3, 'lb': POUND}
FORCES = {'n': 1, 'kn': 1e3, 'dan': 10, 'kgf': G0, 'lbf': POUND * G0, 'kip': 1e3 * POUND * G0}
LENGTHS = {'m': 1, 'cm': 1e-2, 'mm': 1e-3, 'ft': 0.3048, 'in': 0.0254}
ANGLES = {'deg': math.pi / 180, 'rad': 1}
ACCELERATIONS = {'m/s2': 1, 'ft/s2': 0.3048}

THINGS = ('anchor', 'block', 'fairlead', 'joint', 'load', 'hand')
LINES = ('rope', 'sling', 'spar')
TIES = ('anchor', 'joint', 'load', 'hand')  # a stop at one of these is tied wherever it stands in a path


@dataclass(eq=False)
class Item:
    """One section. What is not stated is None."""
    kind: str
    name: str
    keys: dict
    weight: float = 0.0
    capacity: float = None
    push_capacity: float = None
    # Things.
    at: tuple = None
    on: 'Item' = None
    via: list = field(default_factory=list)
    slip: tuple = None    # ('sheave', f) or ('bend', mu, turns): friction as stated
    wrap: float = None
    pull: float = None
    limit: float = None
    # Lines.
    stops: list = field(default_factory=list)  # (thing, connectors)
    length: float = None


@dataclass
class Rig:
    items: list
    dim: int
    gravity: float
    cases: list
    lifted: Item
    hand: Item           # the one whose pull is worked out

    def of(self, *kinds):
        return [item for item in self.items if item.kind in kinds]


def number(text, *tables):
    """A quantity such as `16 ft 4 in`; a bare number where no table is given."""
    total = 0.0
    for value, unit in re.findall(r'([-+]?[\d.]+(?:e[-+]?\d+)?)\s*([a-z/%]+2?)?', text.strip().lower()):
        scale = 1.0 if not unit else 0.01 if unit == '%' else next(t[unit] for t in tables if unit in t)
        total += float(value) * scale
    return total


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


def capacity(keys, gravity, factor):
    limits = [force(keys['wll'], gravity)] if 'wll' in keys else []
    own = float(keys['design factor']) if 'design factor' in keys else factor
    if 'mbs' in keys and own:
        limits.append(force(keys['mbs'], gravity) / own)
    return min(limits) if limits else None


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
    item.capacity = capacity(keys, gravity, factor)
    if 'push wll' in keys:
        item.push_capacity = force(keys['push wll'], gravity)
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
    if 'length' in keys:
        item.length = number(keys['length'], LENGTHS)


def read(text):
    """A rig file's text as a Rig."""
    found = sections(text)
    sheet = next((keys for kind, _, keys in found if kind == 'rig'), {})
    items = [Item(kind, name, keys) for kind, name, keys in found if kind != 'rig']
    named = {item.name.lower(): item for item in items}
    gravity = number(sheet['gravity'], ACCELERATIONS) if 'gravity' in sheet else G0
    factor = float(sheet['design factor']) if 'design factor' in sheet else None
    efficiency = number(sheet['efficiency']) if 'efficiency' in sheet else None
    for item in items:
        describe(item, named, gravity, factor, efficiency)
    hand = next((i for i in items if i.kind == 'hand' and i.pull is None), None)
    loads = [i for i in items if i.kind == 'load']
    lifted = named[sheet['load'].lower()] if 'load' in sheet else loads[0] if loads else None
    cases = [c.strip().lower() for c in sheet.get('cases', 'hold, raise, lower').split(',')]
    cases = [c for c in ('hold', 'raise', 'lower') if c == 'hold' or c in cases and hand]
    dim = len(next(i.at for i in items if i.at))
    return Rig(items, dim, gravity, cases, lifted if hand else None, hand)
