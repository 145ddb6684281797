"""What a lesson has to agree with, from the rig file and the JSON report alone."""
import os
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, '..', 'oracle'))
import rigfile  # noqa: E402

SAME = 1e-6  # of lengths and ratios


def root(item):
    while item.on:
        item = item.on
    return item


def is_free(item):
    """Whether the root of a body moves."""
    return item.kind not in ('anchor', 'hand')


def pieces(line):
    """The piece of each part of a line: ties in the middle begin a new one."""
    piece, found = 0, []
    for k in range(len(line.stops) - 1):
        if k > 0 and line.stops[k][0].kind in rigfile.TIES:
            piece += 1
        found.append(piece)
    return found


class Truth:
    """A rig and its report."""

    def __init__(self, text, folder, report):
        self.rig = rigfile.read(text, folder)
        self.report = report
        self.cases = {case['case']: case for case in report['cases'] if case['case'] in ('hold', 'raise')}
        self.take_hand()
        self.lines = self.rig.of(*rigfile.LINES)
        # A force as small as this is rounding of the program's arithmetic.
        self.noise = 1e-9 * max([sum(self.weights().values())] + [a['force'] for c in self.cases.values()
                                                                  for a in c['anchors']])

    def take_hand(self):
        """Of two hands joined by `or` a lesson is about the one that holds, and tells of raising if it raises too."""
        by = {name: case['hauled_by'] for name, case in self.cases.items() if case['possible']}
        hand = by.get('hold', by.get('raise'))
        if self.rig.twin and hand == self.rig.twin.hand.name:
            self.rig = self.rig.twin
        if by.get('raise', hand) != hand:
            del self.cases['raise']

    def weights(self):
        found = {f'W({item.name})': item.weight for item in self.rig.items if item.weight}
        lifted = self.rig.lifted
        if lifted and 'batten' in lifted.keys:
            found[f"W({lifted.keys['batten']})"] = self.rig.lifted_weight()
        return found

    def case(self, name):
        """A case that was worked and can be, else None."""
        found = self.cases.get(name)
        return found if found and found['possible'] else None

    def tensions(self, name):
        """line -> the tension of each of its parts."""
        found, entries = {}, iter(self.case(name)['lines'])
        for line in self.lines:
            found[line] = [next(entries)['tension'] for _ in line.stops[1:]]
        return found

    def symbols(self, name):
        """symbol -> value of every pull, weight, support and of the effort in a case."""
        found = self.weights() | {f'P({hand.name})': hand.pull for hand in self.rig.of('hand') if hand.pull is not None}
        case, tensions = self.case(name), self.tensions(name)
        ropes = [(line, piece) for line in self.lines if line.kind != 'spar' for piece in sorted(set(pieces(line)))]
        for line in self.lines:
            cut = pieces(line)
            for k, tension in enumerate(tensions[line]):
                if line.kind == 'spar':
                    found[f'S({line.name})'] = tension
                    continue
                if name == 'hold':
                    symbol = ('T' if len(ropes) == 1 else f'T({line.name})' if len(set(cut)) == 1
                              else f'T({line.name}, piece {cut[k] + 1})')
                else:
                    letter = 'T' if len(cut) == 1 else f'T{k + 1}'
                    symbol = letter if len(ropes) == 1 else f'{letter}({line.name})'
                found[symbol] = tension
        axes = {1: ['R'], 2: ['Rx', 'Rz'], 3: ['Rx', 'Ry', 'Rz']}[self.rig.dim]
        for anchor in case['anchors']:
            for axis, value in zip(axes, anchor['vector']):
                found[f'{axis}({anchor["anchor"]})'] = -value
        for guide in case['guides']:
            for axis, value in zip(axes, guide['vector']):
                found[f'{axis}({guide["thing"]})'] = -value
        if self.rig.hand:
            found['E'] = next(h['force'] for h in case['hands'] if h['hand'] == self.rig.hand.name)
        return found

    def places(self, name):
        """Where the root of every body is in a case."""
        moved = {place['thing'].lower(): place['at'] for place in self.case(name)['places']}
        return {item: moved.get(item.name.lower(), list(item.at)) for item in self.rig.items if item.at}

    def hauled(self):
        """(the hauled rope, which of its pieces comes to the hand)."""
        rope = next(line for line in self.lines if any(thing is self.rig.hand for thing, _ in line.stops))
        return rope, pieces(rope)[-1] if rope.stops[-1][0] is self.rig.hand else pieces(rope)[0]

    def running(self):
        """Every stop over which a line runs."""
        for line in self.lines:
            cut = pieces(line)
            yield from (line.stops[k][0] for k in range(1, len(cut)) if cut[k] == cut[k - 1])

    def sheaves(self):
        """How many blocks the hauled rope runs over, each as often as it does."""
        rope, piece = self.hauled()
        cut = pieces(rope)
        return sum(cut[k] == cut[k - 1] == piece for k in range(1, len(cut)))

    def together(self, rope, hauled, tensions):
        """The free bodies that hang together with the load, by lines that carry, other than the hauled one."""
        found = {root(self.rig.lifted)}
        joined = [(root(line.stops[k][0]), root(line.stops[k + 1][0])) for line in self.lines
                  for k, here in enumerate(pieces(line))
                  if (line, here) != (rope, hauled) and abs(tensions[line][k]) > self.noise]
        while more := {b for a, b in joined + [(b, a) for a, b in joined] if a in found and is_free(b)} - found:
            found |= more
        return found

    def loads(self):
        """What the loads that hang together weigh."""
        bodies = self.together(*self.hauled(), self.tensions('hold'))
        return sum(item.weight for item in self.rig.of('load') if root(item) in bodies)

    def bearing(self):
        """The parts of the hauled rope at what hangs together with the load, numbered along the rope."""
        rope, hauled = self.hauled()
        bodies = self.together(rope, hauled, self.tensions('hold'))
        return [k + 1 for k, here in enumerate(pieces(rope)) if here == hauled
                and bodies & {root(rope.stops[k][0]), root(rope.stops[k + 1][0])}]

    def counted(self):
        """How many parts hold up the load, where counting them gives the ideal advantage; else (None, why).

        It does where what hangs together with the load hangs by upright parts of the one hauled piece, by nothing
        else that carries, and the report's ratio is that number."""
        case = self.case('hold')
        if not self.rig.hand or not case:
            return None, 'nobody hauls'
        places, tensions = self.places('hold'), self.tensions('hold')
        rope, hauled = self.hauled()
        bodies, count = self.together(rope, hauled, tensions), 0
        for line in self.lines:
            for k, here in enumerate(pieces(line)):
                ends = [root(line.stops[k][0]), root(line.stops[k + 1][0])]
                inside = [end for end in ends if end in bodies]
                if not inside or (len(inside) == 2 and (line, here) != (rope, hauled)):
                    continue
                if len(inside) == 2:
                    return None, 'the hauled rope runs between bodies that hang together'
                if (line, here) != (rope, hauled):
                    if abs(tensions[line][k]) > self.noise:
                        return None, f'{line.name} carries too'
                    continue
                a, b = (places[end] for end in ends)
                way = [q - p for p, q in zip(a, b)] if ends[0] is inside[0] else [p - q for p, q in zip(a, b)]
                if way[-1] < (1 - SAME * SAME) * sum(x * x for x in way) ** 0.5:
                    return None, 'a part at the load is not upright'
                count += 1
        if abs(case['velocity_ratio'] - count) > SAME:
            return None, f'the ratio is {case["velocity_ratio"]}, the parts are {count}'
        return count, ''
