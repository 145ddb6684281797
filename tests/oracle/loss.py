"""What is left of a rig once an anchor, a line or a connector has let go, in the state in which it was at rest."""
import copy
from dataclasses import dataclass, replace

from rigfile import LINES
from statics import Impossible

THINGS = ('anchor', 'block', 'fairlead', 'joint', 'load', 'hand')
FIXED = ('anchor', 'hand')


@dataclass
class Strand:
    """A line between two tied stops. `stops`: (thing, connectors, number in the line's path)."""
    stops: list
    length: float


class Remains:
    def __init__(self, s, state, lost):
        self.s, self.rig, self.lost = s, s.rig, lost
        self.at = s.places(state.z)
        self.on = {item: item.on for item in self.rig.items}
        self.gone = set()                 # things
        self.dangling = {}                # {spar: (the thing that it hangs plumb under, connectors)}
        self.strands = self.cut(state)
        self.let_go()
        while self.drop_loose():
            pass
        self.drop_falling()

    def cut(self, state):
        lengths, strands = self.s.piece_lengths(self.at), {line: [] for line in self.rig.of(*LINES)}
        first = {}
        for part, (line, _, _) in enumerate(self.s.parts):
            first.setdefault(line, part)
        for k, piece in enumerate(self.s.pieces):
            start = piece.first - first[piece.line]
            stops = [(*piece.line.stops[n], n) for n in range(start, start + piece.count + 1)]
            strands[piece.line].append(Strand(stops, lengths[k] if piece.rule == 'driven' else self.s.kept[k]))
        return strands

    # --- what lets go ---

    def let_go(self):
        lost = self.lost
        if lost.kind in LINES:
            self.strands[lost] = []
        for thing in self.rig.of(*THINGS):
            if self.on[thing] is lost or lost in thing.via:
                self.on[thing] = None
        for line in self.strands:
            self.untie(line, lambda stop: stop[0] is lost or lost in stop[1])

    def untie(self, line, free):
        """Each tied stop for which `free` holds: the two strands become one; at an end it runs out."""
        strands = self.strands[line]
        for k in range(len(strands) - 1, 0, -1):
            if free(strands[k].stops[0]):
                before, after = strands[k - 1], strands.pop(k)
                strands[k - 1] = Strand(before.stops[:-1] + after.stops[1:], before.length + after.length)
        ends = [strands[0].stops[0], strands[-1].stops[-1]] if strands else []
        held = [stop for stop in ends if not free(stop)]
        if strands and free(ends[0]):
            strands.pop(0)
        if strands and free(ends[1]):
            strands.pop()
        if line.kind == 'spar' and len(held) == 1:
            self.dangling[line] = held[0][:2]

    # --- what falls out ---

    def root(self, thing):
        while self.on[thing]:
            thing = self.on[thing]
        return thing

    def cluster_of(self):
        """Roots joined by lines, as {root: set of roots}."""
        groups = {self.root(thing): {self.root(thing)} for thing in self.rig.of(*THINGS) if thing not in self.gone}
        for strand in (strand for strands in self.strands.values() for strand in strands):
            joined = set().union(*(groups[self.root(stop[0])] for stop in strand.stops))
            groups |= {root: joined for root in joined}
        return groups

    def drop_loose(self):
        tied = {self.root(stop[0]) for strands in self.strands.values() for strand in strands
                for stop in (strand.stops[0], strand.stops[-1])}
        loaded = {self.root(load) for load in self.rig.of('load')}
        loose = {thing for thing in self.rig.of(*THINGS) if thing not in self.gone
                 and self.root(thing).kind not in FIXED and self.root(thing) not in tied | loaded}
        self.gone |= loose
        for strands in self.strands.values():
            for strand in strands:
                self.thread(strand)
        return loose

    def thread(self, strand):
        """Leave out running stops that are gone, and those that now lie at the place of their neighbour."""
        stops = [stop for stop in strand.stops if stop[0] not in self.gone]
        k = 1
        while k < len(stops) - 1:
            here = self.root(stops[k][0])
            if here in (self.root(stops[k - 1][0]), self.root(stops[k + 1][0])):
                stops.pop(k)
                k = 1
            else:
                k += 1
        strand.stops = stops

    def drop_falling(self):
        groups = self.cluster_of()
        falling = {root for root, group in groups.items() if not any(r.kind in FIXED for r in group)}
        for thing in self.rig.of(*THINGS):
            if thing not in self.gone and self.root(thing) in falling:
                self.gone.add(thing)
                if thing.kind == 'load':
                    raise Impossible(f'{thing.name} falls')
        for line, strands in self.strands.items():
            self.strands[line] = [strand for strand in strands if strand.stops[0][0] not in self.gone
                                  and not self.closed(strand)]

    def closed(self, strand):
        return len(strand.stops) == 2 and self.root(strand.stops[0][0]) is self.root(strand.stops[1][0])

    # --- the rig that is left ---

    def as_rig(self):
        """A rig in which every hand without a known pull holds on, drawn where its bodies were."""
        new = {item: copy.copy(item) for item in self.rig.items if item not in self.gone}
        for item, twin in new.items():
            if item.kind in THINGS:
                twin.on = new[self.on[item]] if self.on[item] else None
                twin.via = [new[connector] for connector in item.via] if twin.on else []
                twin.at = tuple(self.at[self.s.node(item)])
            elif item.kind in LINES:
                self.shorten(item, twin, new)
        return replace(self.rig, items=list(new.values()), lifted=None, hand=None, holding=True)

    def shorten(self, item, twin, new):
        strands = self.strands[item]
        stops = [stop for k, strand in enumerate(strands) for stop in strand.stops[k > 0:]]
        twin.stops = [(new[thing], [new[c] for c in connectors]) for thing, connectors, _ in stops]
        twin.kept = [strand.length for strand in strands]
        if strands:
            return
        if item in self.dangling and self.dangling[item][0] not in self.gone and item.weight:
            thing, connectors = self.dangling[item]
            new[thing].dangling = new[thing].dangling + [(twin, twin.weight, [new[c] for c in connectors])]
        twin.weight = 0.0

    def part_of(self):
        """{(line, number of a part in its path): number of the part that is left of it}."""
        found = {}
        for line, strands in self.strands.items():
            count = 0
            for strand in strands:
                for a, b in zip(strand.stops, strand.stops[1:]):
                    found |= {(line, n): count for n in range(a[2], b[2])}
                    count += 1
        return found
