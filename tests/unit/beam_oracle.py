"""Seeded random beams, each worked by finite elements (cubic Hermite shape functions, dense stiffness matrix)
and by the program given. What hangs on lines that cannot push is found by trying every set of taut lines; on
springs by minimising the energy of a stiff bar. Nothing here knows of the three-moment equations.
"""
import itertools
import subprocess
import sys

import numpy as np
from scipy.optimize import minimize

SEED = 20261128
BEAMS = 300
CLOSE = 1e-7  # of all that hangs


def stiffness(length):
    l = length
    return np.array([[12, 6 * l, -12, 6 * l], [6 * l, 4 * l * l, -6 * l, 2 * l * l],
                     [-12, -6 * l, 12, -6 * l], [6 * l, 2 * l * l, -6 * l, 4 * l * l]]) / l ** 3


class Beam:
    """Bending stiffness 1; nodes at every support, load, and end of a load."""

    def __init__(self, length, supports, loads):
        self.length, self.supports, self.loads = length, supports, loads
        places = [0, length, *supports, *(p for load in loads for p in load[1:])]
        self.nodes = np.array(sorted(set(places)))
        self.index = {x: i for i, x in enumerate(self.nodes)}
        size = 2 * len(self.nodes)
        self.matrix, self.force = np.zeros((size, size)), np.zeros(size)
        for i, l in enumerate(np.diff(self.nodes)):
            self.matrix[2 * i:2 * i + 4, 2 * i:2 * i + 4] += stiffness(l)
        for weight, start, end in loads:
            if start == end:
                self.force[2 * self.index[start]] -= weight
                continue
            for i in range(self.index[start], self.index[end]):
                l = self.nodes[i + 1] - self.nodes[i]
                w = weight / (end - start)
                self.force[2 * i:2 * i + 4] -= w * l * np.array([.5, l / 12, .5, -l / 12])

    def held(self, taut, lift):
        """Reactions of all supports, deflections at them, with those in `taut` held."""
        fixed = [2 * self.index[self.supports[i]] for i in taut]
        free = [i for i in range(len(self.force)) if i not in fixed]
        moved = np.zeros(len(self.force))
        moved[fixed] = [lift[i] for i in taut]
        rest = self.force[free] - self.matrix[np.ix_(free, fixed)] @ moved[fixed]
        moved[free] = np.linalg.solve(self.matrix[np.ix_(free, free)], rest)
        reaction = self.matrix @ moved - self.force
        at = [2 * self.index[x] for x in self.supports]
        out = np.zeros(len(self.supports))
        out[list(taut)] = reaction[fixed]
        return out, moved[at] - lift

    def weight(self):
        return sum(load[0] for load in self.loads)

    def moment(self):
        return sum(load[0] * (load[1] + load[2]) / 2 for load in self.loads)

    def on_lines(self, lift):
        count = len(self.supports)
        small = 1e-9 * self.weight()
        for many in range(count, 1, -1):
            for taut in itertools.combinations(range(count), many):
                reaction, above = self.held(taut, lift)
                if reaction.min() >= -small and above.min() >= -small * self.length ** 3:
                    return reaction
        return None

    def on_springs(self):
        weight, moment = self.weight(), self.moment()
        x = np.array(self.supports)

        def energy(v):
            stretch = np.maximum(v[0] + v[1] * x, 0)
            return (stretch @ stretch / 2 - weight * v[0] - moment * v[1]) / weight ** 2

        def slope(v):
            stretch = np.maximum(v[0] + v[1] * x, 0)
            return np.array([stretch.sum() - weight, stretch @ x - moment]) / weight ** 2

        best = minimize(energy, [weight / len(x), 0], jac=slope, method='BFGS',
                        options={'gtol': 1e-16, 'maxiter': 5000}).x
        for _ in range(20):  # Newton, to the last digit
            taut = best[0] + best[1] * x > 0
            y = x[taut]
            curve = np.array([[len(y), y.sum()], [y.sum(), y @ y]])
            stretch = np.maximum(best[0] + best[1] * x, 0)
            best = best - np.linalg.solve(curve, [stretch.sum() - weight, stretch @ x - moment])
        return np.maximum(best[0] + best[1] * x, 0)


def random_beam(chance):
    length = chance.uniform(3, 20)
    count = chance.integers(2, 8)
    supports = sorted(float(x) for x in chance.uniform(0, length, count))
    if chance.random() < .3:
        supports[0], supports[-1] = 0.0, float(length)
    if min(np.diff(supports)) < .05 * length / count:
        return random_beam(chance)
    loads = [(float(chance.uniform(20, 300)), 0.0, float(length))]
    for _ in range(chance.integers(0, 5)):
        weight = float(chance.uniform(10, 3000))
        start, end = sorted(float(x) for x in chance.uniform(0, length, 2))
        kind = chance.random()
        if kind < .5:
            end = start
        elif kind < .6:
            start = end = supports[chance.integers(count)]
        loads.append((weight, start, end))
    lift = np.zeros(count)
    if chance.random() < .3:
        lift = chance.uniform(-1, 1, count) * 3e-4 * length ** 3 * sum(load[0] for load in loads) / count
    beam = Beam(float(length), supports, loads)
    # Elements of very different lengths cost the stiffness matrix its digits.
    return (beam, lift) if min(np.diff(beam.nodes)) > 1e-3 * length else random_beam(chance)


def line_of(beam, lift):
    numbers = [beam.length, len(beam.supports), len(beam.loads), int(lift.any()), *beam.supports]
    for load in beam.loads:
        numbers += load
    if lift.any():
        numbers += list(lift)
    return ' '.join(repr(float(n)) if i in (0,) or i > 3 else str(int(n)) for i, n in enumerate(numbers))


def differs(theirs, ours, scale):
    return ours is None or np.abs(np.array(theirs) - ours).max() > CLOSE * scale


def check(beam, lift, answer):
    """What is wrong, and whether any line is slack."""
    count = len(beam.supports)
    groups = [answer[i * (count + 1):(i + 1) * (count + 1)] for i in range(3)]
    props, _ = beam.held(range(count), lift)
    scale = max(beam.weight(), np.abs(props).max())
    wrong = ['on props'] if differs(groups[0][1:], props, scale) else []
    centre = beam.moment() / beam.weight()
    hangs = beam.supports[0] <= centre <= beam.supports[-1]
    for name, group, solve in (('on lines', groups[1], lambda: beam.on_lines(lift)),
                               ('on springs', groups[2], beam.on_springs)):
        if bool(group[0]) != hangs:
            wrong.append(f'{name}: hangs {bool(group[0])}')
        elif hangs and differs(group[1:], solve(), scale):
            wrong.append(f'{name}: {group[1:]}, not {solve()}')
    return wrong, hangs and min(groups[1][1:]) == 0


def main():
    chance = np.random.default_rng(SEED)
    beams = [random_beam(chance) for _ in range(BEAMS)]
    text = '\n'.join(line_of(beam, lift) for beam, lift in beams)
    out = subprocess.run([sys.argv[1]], input=text, capture_output=True, text=True, check=True).stdout
    answers = [[float(n) for n in line.split()] for line in out.splitlines()]
    failed = slack = 0
    for i, ((beam, lift), answer) in enumerate(zip(beams, answers, strict=True)):
        wrong, loose = check(beam, lift, answer)
        slack += loose
        failed += bool(wrong)
        for what in wrong:
            print(f'not ok seed {SEED}, beam {i}: {what}\n    {line_of(beam, lift)}')
    if slack < 30:
        print(f'not ok only {slack} beams with a slack line')
        failed += 1
    print(f'{slack} of {BEAMS} beams have a slack line')
    print(f'beam_oracle: {BEAMS + 1 - failed} passed, {failed} failed')
    return failed > 0


if __name__ == '__main__':
    sys.exit(main())
