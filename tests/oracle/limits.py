"""The heaviest load that a rig is permitted, by trying loads on the oracle's own statics."""
import math

import judge
from statics import NoAnswer

GROW = 1.5        # from one load tried to the next
FURTHEST = 1e4    # times the drawn load
CLOSE = 1e-10     # a bracket so narrow, as a share of the load, is closed
FEATHER = 1e-3    # of the drawn load: at less the rig's other weights leave no figures to compare
SAME = 1e-6       # two limits that differ by less agree


class Tried:
    """One load: whether it is permitted, and how much of the rating that is used most it uses."""

    def __init__(self, rig, load, newtons):
        load.weight = newtons
        self.newtons, self.used, self.bars = newtons, math.inf, {}
        self.permitted, self.rated = False, set()
        try:
            report = judge.report(rig)
        except NoAnswer:
            return
        rows = {name: (row['utilisation'], row['cases'] if row['demand'] is not None else set())
                for name, row in report['components'].items()}
        known = {name: pair for name, pair in rows.items() if pair[0] is not None}
        self.rated = set(known) | {name for name, row in report['components'].items() if row['status'] == 'idle'}
        heads = [row['needed'] / row['capacity'] for row in report['head_fittings'] if row['capacity']]
        self.used = max([used for used, _ in known.values()] + heads + [0.0])
        self.bars = {name: cases for name, (used, cases) in known.items() if used >= self.used * (1 - 1e-7)}
        self.permitted = self.used <= 1 and not report['cannot']


def find(rig):
    """The last permitted load of the range that holds the drawn one, or of that next below it: a Tried with the
    first that is not permitted as its `next`. None where there is none."""
    load = rig.lifted or rig.of('load')[0]
    drawn = load.weight
    first = Tried(rig, load, drawn)
    good = lambda tried: tried.permitted and first.rated <= tried.rated
    step = GROW if first.permitted else 1 / GROW
    here = first
    while good(here) == first.permitted:
        here, last = Tried(rig, load, here.newtons * step), here
        if not 1 / FURTHEST < here.newtons / drawn < FURTHEST:
            load.weight = drawn
            return None
    low, high = (last, here) if first.permitted else (here, last)
    low = close_in(rig, load, low, high, good)
    load.weight = drawn
    return low


def close_in(rig, load, low, high, good):
    """Regula falsi on what is used (the Illinois way), bisection where that is not known or drags."""
    weights = [1.0, 1.0]
    for count in range(120):
        if high.newtons - low.newtons <= CLOSE * high.newtons:
            break
        at = 0.5 * (low.newtons + high.newtons)
        if math.isfinite(high.used) and high.used > 1 and count % 4 < 3:
            below, above = weights[0] * (1 - low.used), weights[1] * (high.used - 1)
            at = (low.newtons * above + high.newtons * below) / (above + below)
            edge = 0.1 * CLOSE * high.newtons
            at = min(max(at, low.newtons + edge), high.newtons - edge)
        tried = Tried(rig, load, at)
        if good(tried):
            low, weights = tried, [1.0, weights[1] * 0.5]
        else:
            high, weights = tried, [weights[0] * 0.5, 1.0]
    low.next = high
    return low


def compare(rig, printed):
    """Every disagreement with what the program prints for a rig whose load is limited by a rating."""
    edge = printed['heaviest'] or {'edge': None}
    if edge['edge'] not in ('rating', 'head fitting'):
        yield f'limit: {printed["found"]}, {edge}'
        return
    mine = find(rig)
    if mine is None or abs(mine.newtons / rig.gravity / printed['mass'] - 1) > SAME:
        yield f'limit: {mine and mine.newtons / rig.gravity!r} kg, printed {printed["mass"]!r}'
        return
    if edge['edge'] == 'rating' and printed['case'] not in mine.bars.get(printed['component'], ()):
        yield f'limit: barred by {mine.bars}, printed {printed["component"]} in {printed["case"]}'
    if (printed['least'] or 0) > FEATHER * printed['drawn']:
        yield from compare_least(rig, printed['least'] * rig.gravity)


def compare_least(rig, least):
    """The lightest load is permitted, and a lighter one is not."""
    load = rig.lifted or rig.of('load')[0]
    for share, permitted in ((1 + SAME, True), (1 - SAME, False)):
        if Tried(rig, load, least * share).permitted != permitted:
            yield f'limit: least {least * share / rig.gravity!r} kg: permitted {not permitted}'
