"""What rope a rig takes for its lift, and where its load stops: the rig is hung again at heights of its own choice, and
the printed bill held against that."""
import copy
import math
import random
import re

import numpy as np

import hanging
import judge
from compare import RELATIVE, differ
from forces import Forces
from rigfile import LENGTHS, number
from statics import EQUAL, NoAnswer, Statics

STEPS = 12        # heights tried on the way
BESIDE = 1e-4     # of the rig's size: so far short of an end, and beyond it, is looked
FLAT = 0.5        # lines that stand this near to where nothing holds them any more are left out of the comparison


def garnish(text, seed):
    """A rig file with a lift, and here and there a spare, a clear distance and a sheave's size."""
    dice = random.Random(seed)
    lift = f'lift = {dice.uniform(0.2, 4):.3f} m\n'
    text = re.sub(r'^\[rig\]\n', lambda m: m[0] + lift, text, count=1, flags=re.M)
    text = text if lift in text else f'[rig]\n{lift}\n{text}'
    bent = {stop.strip() for path in re.findall(r'^path = (.*)$', text, re.M) for stop in path.split(',')[1:-1]}
    keys = lambda kind, key, low, high: re.sub(
        rf'^\[{kind} (\S+)\]\n',
        lambda m: m[0] + (f'{key} = {dice.uniform(low, high):.3f} m\n' if dice.random() < 0.4 and (
            kind == 'rope' or m[1] in bent) else ''), text, flags=re.M)
    text = keys('rope', 'spare', 0.2, 3)
    return keys('block', *dice.choice((('sheave diameter', 0.05, 0.2), ('clear', 0.1, 0.5))))


class Way:
    """Where the rig hangs with its load higher than drawn."""

    def __init__(self, rig):
        self.rig, self.drawn = rig, Statics(rig)
        self.first = hanging.shape(self.drawn)
        self.at = self.drawn.places(self.first.z)
        self.kept = self.drawn.kept
        self.node = self.drawn.node(rig.lifted) if rig.lifted else None

    def go(self, height, start=None):
        """(statics, state, places) with the load that much higher; the search begins at `start`."""
        s = copy.copy(self.drawn)
        at = (self.at if start is None else start).copy()
        at[self.node, -1] = self.at[self.node, -1] + height
        s.drawn = np.where(np.array(self.drawn.fixed)[:, None], self.drawn.drawn, at)
        s.kept = self.kept
        state = hanging.find_shape(s)
        if s.pull_of(s.driven, state) < -1e-9 * s.force:
            raise NoAnswer('it runs away')
        return s, state, s.places(state.z)

    def climb(self, height):
        """The same in steps, so that the place is the one that the rig comes to."""
        found = (self.drawn, self.first, self.at)
        for step in range(1, STEPS + 1):
            found = self.go(height * step / STEPS, found[2])
        return found


def size_of(way, thing):
    """(clear, half a sheave) of the blocks that move as one with a thing, None where not stated."""
    blocks = [b.keys for b in way.rig.of('block') if way.drawn.node(b) == way.drawn.node(thing)]
    most = lambda key: max([number(keys[key], LENGTHS) for keys in blocks if key in keys], default=None)
    half = most('sheave diameter')
    return most('clear'), half and half / 2


def meetings(way):
    """(one thing, another, how near they may come) of each part that can shorten."""
    for piece in way.drawn.pieces:
        if piece.rule == 'strut' or piece.rule == 'tied' and piece.count == 1:
            continue
        for _, one, other in way.drawn.parts[piece.first:piece.first + piece.count]:
            a, b = way.drawn.node(one), way.drawn.node(other)
            if a == b or way.drawn.fixed[a] and way.drawn.fixed[b]:
                continue
            (clear, half), (clear2, half2) = size_of(way, one), size_of(way, other)
            stated = [c for c in (clear, clear2) if c is not None]
            yield a, b, max(stated) if stated else (half or 0) + (half2 or 0)


def least_gap(way, at):
    return min((np.linalg.norm(at[a] - at[b]) - near for a, b, near in meetings(way)), default=math.inf)


def rove(way, s, at, line):
    """All of a line; a tied stretch is no shorter for being slack."""
    lengths = s.piece_lengths(at)
    return sum(max(length, kept) if piece.rule in ('tied', 'strut') else length
               for piece, length, kept in zip(s.pieces, lengths, way.kept) if piece.line is line)


def wraps(way, line):
    """What lies round sheaves of known size, and at how many stops none is known."""
    total, unknown = 0.0, 0
    thick = number(line.keys['diameter'], LENGTHS) if 'diameter' in line.keys else 0.0
    for run in way.drawn.runs:
        if way.drawn.pieces[run.piece].line is not line:
            continue
        key = 'sheave diameter' if run.thing.kind == 'block' else 'pin diameter'
        if key not in run.thing.keys:
            unknown += 1
            continue
        turns = int(run.thing.keys.get('turns', 0)) if run.thing.kind == 'fairlead' else 0
        angle = max(math.pi, run.thing.wrap or 0.0) + 2 * math.pi * turns
        total += angle * (number(run.thing.keys[key], LENGTHS) + thick) / 2
    return total, unknown


def compare_rope(way, row, end):
    line, size = way.rig.named(row['rope']), way.drawn.size
    now = rove(way, way.drawn, way.at, line)
    hauled = any(p.hand for p in way.drawn.pieces if p.line is line)
    laps, unknown = wraps(way, line)
    spare = number(line.keys['spare'], LENGTHS) if 'spare' in line.keys else None
    own = {'rove': now, 'wraps': laps, 'spare': spare,
           'length': number(line.keys['length'], LENGTHS) if hauled and 'length' in line.keys else None}
    if end:
        own['to_hand'] = now - rove(way, end[0], end[2], line) if hauled else None
    for key, value in own.items():
        if differ(value, row[key], size):
            yield f'rope bill: {row["rope"]} {key}: {value!r}, printed {row[key]!r}'
    if unknown != row['open_wraps']:
        yield f'rope bill: {row["rope"]}: {unknown} open wraps, printed {row["open_wraps"]}'
    if differ(row['most'] + laps + (spare or 0.0), row['needed'], size):
        yield f'rope bill: {row["rope"]}: needed {row["needed"]!r} does not add up'
    most = max(now, rove(way, end[0], end[2], line) if end else now)
    if row['most'] < most - RELATIVE * size:
        yield f'rope bill: {row["rope"]}: {most!r} m are rove, printed at most {row["most"]!r}'


def compare_run(way, bill):
    """Short of the end nothing has met; at it two things meet."""
    run, size = bill['run'], way.drawn.size
    if run['length'] is None or run['length'] == 0:
        return
    short = run['length'] - BESIDE * size
    try:
        gap = least_gap(way, way.climb(short)[2]) if short > 0 else 0.0
    except NoAnswer:
        return  # near its end a way may be too flat for difference quotients
    if gap < -RELATIVE * size:
        yield f'rope bill: short of the run of {run["length"]!r} m something has met already: {gap!r} m'
    if run['end'] == 'two-blocked' and gap > FLAT * size:
        yield f'rope bill: at the end of the run of {run["length"]!r} m there are {gap!r} m left'


def strains(way, found):
    """{part: the most that it bears at rest in these places}."""
    most = {}
    for s, state, _ in found:
        forces = Forces(s, state)
        for item in way.rig.of(*judge.RATED):
            most[item.name] = max(most.get(item.name, 0.0), *forces.demand(item))
    return most


def compare_strains(way, bill, mine, found):
    own, rated = strains(way, found), {row['component']: row for row in bill['strains']}
    for name, row in rated.items():
        if row['most'] < own[name] * (1 - RELATIVE) - RELATIVE * way.drawn.force:
            yield f'rope bill: {name} bears {own[name]!r} N on the way, printed at most {row["most"]!r}'
        capacity = mine['components'][name]['capacity']
        if capacity and row['most'] > max(row['drawn'], capacity * (1 + judge.SLACK)):
            mine['verdict'] = 'over'


def compare_resets(bill):
    length, lift, resets = bill['run']['length'], bill['lift'], bill['resets']
    if resets is None or length is None:
        return
    runs = math.ceil(lift / length * (1 - 1e-9)) if length else math.inf
    if runs != resets + 1:
        yield f'rope bill: {runs} runs of {length!r} m make {lift!r} m, printed {resets} resets'


def compare(rig, mine, printed):
    """Every disagreement on the rope bill; what it makes of the verdict is put into `mine`."""
    bill = printed['rope_bill']
    if not bill or not bill['worked']:
        return
    way, end, found = Way(rig), None, []
    if bill['way']:
        try:
            height = bill['way'] if bill['run']['end'] == 'open' or bill['way'] < bill['run']['length'] else (
                bill['way'] - BESIDE * way.drawn.size)
            found = [way.climb(height * share) for share in (0.5, 1.0)] if height > EQUAL * way.drawn.size else []
            end = found[-1] if found and height == bill['way'] else None
        except NoAnswer:
            found, end = [], None
    for row in bill['ropes']:
        yield from compare_rope(way, row, end)
    if bill['run']:
        yield from compare_run(way, bill)
        yield from compare_resets(bill)
    yield from compare_strains(way, bill, mine, found)
