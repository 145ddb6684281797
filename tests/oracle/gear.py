"""What a part's paper rating comes to in the rig: each step with its row, and gear held against gear."""
import math
from dataclasses import dataclass

import hardware
from rigfile import ANGLES, LENGTHS, LINES, TIES, number

CLASSES = {'wire': ('wire rope',), 'chain': ('chain',), 'fibre': ('fibre rope',), 'natural-fibre': ('fibre rope',),
           None: ('wire rope', 'fibre rope')}


@dataclass
class Step:
    what: str
    factor: float         # newtons in the first step; None: nothing is known
    row: object = None


@dataclass
class Chain:
    """From one paper rating to what it comes to."""
    steps: list

    @property
    def capacity(self):
        product = 1.0
        for step in self.steps:
            if step.factor is None:
                return None
            product *= step.factor
        return product

    @property
    def rank(self):
        """The least first, what is not known before all; of several that come to nothing the least on paper."""
        paper = math.prod(step.factor for step in self.steps if step.factor)
        return (-1.0 if self.capacity is None else self.capacity, paper)


def measure(item, key):
    return number(item.keys[key], LENGTHS) if key in item.keys else None


def material(rig, item):
    return rig.tables.find('material', item.keys.get('material'))


def rope_class(rig, item):
    row = material(rig, item)
    return row.word('class') if row else None


def bends(line):
    """(diameter of the bend over the line's, thing) at each stop where both are stated."""
    own = measure(line, 'diameter')
    for k, (thing, connectors) in enumerate(line.stops if own else ()):
        tied = k in (0, len(line.stops) - 1) or thing.kind in TIES
        key = 'sheave diameter' if thing.kind == 'block' and not tied else 'pin diameter'
        other = measure(connectors[-1] if connectors else thing, key)
        if other:
            yield other / own, connectors[-1] if connectors else thing


def weakest_end(rig, line):
    """The worst of knot, termination and bend, as a list of at most one step."""
    steps = []
    for kind in ('knot', 'termination'):
        row = rig.tables.find(kind, line.keys.get(kind))
        if row:
            steps.append(Step(f'{kind} {row.name}', hardware.kept(row), row))
    tightest, thing = min(bends(line), key=lambda bend: bend[0], default=(None, None))
    if tightest and rope_class(rig, line) in (None, 'wire'):
        row = rig.tables.find('bend', 'wire-rope')
        steps.append(Step(f'bend {row.name} at {thing.name}', hardware.kept(row, tightest), row))
    unknown = [step for step in steps if step.factor is None]
    return unknown or [min(steps, key=lambda step: step.factor)] if steps else []


def hitched(rig, sling):
    if 'hitch' not in sling.keys:
        return []
    hitch, made_of, kind = sling.keys['hitch'].lower(), material(rig, sling), rope_class(rig, sling)
    names = [f'{hitch}-{made_of.name}', f'{hitch}-{kind}'] if made_of and hitch != 'straight' else []
    row = rig.tables.find('hitch', *names, hitch)
    fits = row.suits(kind) or not made_of
    steps = [Step(f'hitch {row.name}', hardware.kept(row) if fits else None, row)]
    if 'choke angle' in sling.keys:
        choke = rig.tables.find('choke', kind if kind in ('chain', 'natural-fibre') else None, 'sling')
        fits = choke.suits(kind) or not made_of
        share = hardware.kept(choke, number(sling.keys['choke angle'], ANGLES)) if fits else None
        last = Step(f'choke angle {choke.name}', share, choke)
        steps = [last] if choke.word('on') == 'straight' else [*steps, last]
    return steps


def chains(rig, item, share=None):
    """All ratings of an item as chains: (of its pull, of its push). `share`: (row, what the angle leaves)."""
    if item.kind == 'hand':
        return ([Chain([Step('limit', item.limit)])] if item.limit is not None else []), []
    steps = (weakest_end(rig, item) if item.kind in LINES else []) + (hitched(rig, item))
    if share:
        steps.append(Step(f'axis {share[0].name}', share[1], share[0]))
    if 'side load' in item.keys:
        row = rig.tables.find('side-load', 'shackle')
        steps.append(Step(f'side load {row.name}', hardware.kept(row, number(item.keys['side load'], ANGLES)), row))
    for key in ('wear', 'wet'):
        if key in item.keys:
            steps.append(Step(key, number(item.keys[key])))
    pull, push = [], []
    for key, newtons, factor in item.ratings:
        if key == 'mbs' and not factor:
            continue
        last = [Step(f'design factor {factor:g}', 1 / factor)] if key == 'mbs' else []
        (push if key == 'push wll' else pull).append(Chain([Step(key, newtons), *steps, *last]))
    return pull, push


def ruling(found):
    """The chain that comes to least; one of which nothing is known if there is any; None without a rating."""
    return min(found, key=lambda chain: chain.rank, default=None)


def choke_unknown(rig, item):
    """What takes from the rating of a choked sling is not stated."""
    choked = item.keys.get('hitch', '').lower() == 'choke'
    return choked and ('choke angle' not in item.keys or not material(rig, item))


def asked(rig, item):
    """The design factor that the use asks for this part, None where it says nothing of its class."""
    names = (CLASSES[rope_class(rig, item)] if item.kind in ('rope', 'sling')
             else ('shackle',) if item.kind == 'connector' else ('metal',))
    figures = [float(rig.use.keys[name]) for name in names if name in rig.use.keys]
    if item.kind == 'connector' and not figures and 'metal' in rig.use.keys:
        figures = [float(rig.use.keys['metal'])]
    return max(figures, default=None)


def down(thing):
    """A thing and all gear that it hangs on."""
    row = [thing]
    while row[-1].on:
        row += [*reversed(row[-1].via), row[-1].on]
    return row


def in_a_row(rig):
    """Chains of gear from a line or a body down to an anchor, as lists of items."""
    tied = [(line, stop) for line in rig.of(*LINES) for k, stop in enumerate(line.stops)
            if k in (0, len(line.stops) - 1) or stop[0].kind in TIES]
    rows = [[line, *reversed(connectors), *down(thing)] for line, (thing, connectors) in tied]
    rows += [down(thing) for thing in rig.of('block', 'fairlead', 'joint')]
    return [row for row in rows if row[-1].kind == 'anchor']


def head_fittings(rig):
    """(block, the connector next to it) of blocks with one sheave."""
    for block in rig.of('block'):
        passes = sum(thing is block for line in rig.of('rope') for thing, _ in line.stops[1:-1])
        if block.via and passes and int(block.keys.get('sheaves', passes)) == 1:
            yield block, block.via[-1]
