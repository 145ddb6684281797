"""Every force of one state of a rig, as what it does to the thing named; and what each part has to bear."""
import itertools

import numpy as np

from statics import unit

BODIES = ('block', 'fairlead', 'joint')


def worst_sum(vectors):
    """The greatest resultant of any set of pulls, by trying each set. Pulls the same way stand or fall together."""
    ways = []
    for vector in vectors:
        same = next((k for k, way in enumerate(ways) if np.linalg.norm(unit(way) - unit(vector)) < 1e-13), None)
        if same is None:
            ways.append(vector)
        else:
            ways[same] = ways[same] + vector
    sets = itertools.chain.from_iterable(itertools.combinations(ways, n) for n in range(1, len(ways) + 1))
    return max((np.linalg.norm(np.sum(chosen, axis=0)) for chosen in sets), default=0.0)


class Forces:
    def __init__(self, statics, state):
        self.s, self.state, rig = statics, state, statics.rig
        self.at = statics.places(state.z)
        heading = unit(statics.directions(self.at))
        self.tension = statics.tensions(state.z, state) * statics.force
        self.heavy = np.zeros(statics.drawn.shape)  # what each newton of weight pulls with, at each node
        self.heavy[:, -1] = -1
        if state.lean is not None:
            self.heavy -= state.lean
        self.running = {item: [] for item in rig.items}
        self.tied = {item: [] for item in rig.items}
        self.weights = {item: self.weight(item) for item in rig.items}
        self.pull_on_stops(heading)
        for item in rig.items:
            for spar, weight, _ in item.dangling:
                self.tied[item].append((spar, None, weight * self.heavy[self.s.node(item)]))
        self.track = {item: self.track_force(item) for item in rig.items if 'guide' in item.keys}

    def weight(self, item):
        """Of a thing, with its inertia, and with what catches it."""
        own = np.zeros(self.s.rig.dim)
        if item.kind != 'spar' and item.weight:
            own = item.weight * self.heavy[self.s.node(item)]
        if self.state.caught and item is self.s.rig.lifted:
            own[-1] += self.state.z[len(self.s.free) + self.s.driven] * self.s.force
        return own

    def pull_on_stops(self, heading):
        runs = {run.before: run for run in self.s.runs}
        for part, (line, a, b) in enumerate(self.s.parts):
            pull = self.tension[part] * heading[part]
            for thing, force, runs_here in ((a, pull, part - 1 in runs), (b, -pull, part in runs)):
                if not runs_here:
                    self.tied[thing].append((line, part, force))
                if line.kind == 'spar' and line.weight:
                    self.tied[thing].append((line, None, line.weight / 2 * self.heavy[self.s.node(thing)]))
        for part, run in runs.items():
            self.running[run.thing].append(self.tension[part + 1] * heading[part + 1]
                                           - self.tension[part] * heading[part])

    def track_force(self, item):
        """What a guide feels: the level pull of all that moves with its body."""
        total = self.s.node_forces(self.state.z, self.state)[self.s.node(item)] * self.s.force
        total[-1] = 0
        return total

    def children(self, item):
        return [other for other in self.s.rig.items if other.on is item]

    def passed(self, item):
        """What an item passes to what it is on; of an anchor, all that it holds."""
        own = [self.weights[item], *self.running[item], *(f for _, _, f in self.tied[item])]
        own += [self.passed(other) for other in self.children(item)]
        return np.sum(own, axis=0) - self.track.get(item, 0)

    def pulls(self, item):
        found = [self.weights[item], *self.running[item], *(f for _, _, f in self.tied[item])]
        found += [self.passed(other) for other in self.children(item)]
        return [f for f in found + ([-self.passed(item)] if item.on else []) if f.any()]

    def demand(self, item):
        """(demand, push) in newtons; push is of spars alone."""
        if item.kind == 'anchor':
            return np.linalg.norm(self.passed(item)), 0
        if item.kind in BODIES:
            return worst_sum(self.pulls(item)), 0
        if item.kind == 'connector':
            return self.through(item), 0
        mine = [t for t, (line, a, b) in zip(self.tension, self.s.parts)
                if item in (line, a, b) and (line is item or item.kind == 'hand')]
        return max(mine + [0]), max([-t for t in mine] + [0]) if item.kind == 'spar' else 0

    def through(self, connector):
        for thing in self.s.rig.items:
            if connector in thing.via:
                return np.linalg.norm(self.passed(thing))
            for _, weight, connectors in thing.dangling:
                if connector in connectors:
                    return weight
            for k, (stop, connectors) in enumerate(thing.stops):
                if connector in connectors:
                    first = next(p for p, part in enumerate(self.s.parts) if part[0] is thing)
                    mine = [(part, f) for line, part, f in self.tied[stop] if line is thing]
                    met = [f for part, f in mine if part in (first + k - 1, first + k)]
                    half = [f for part, f in mine if part is None]
                    # Of a spar its own pull or push counts, or with the half of its weight, whichever is more.
                    return max(np.linalg.norm(np.sum(met, axis=0)), np.linalg.norm(np.sum(met + half, axis=0)))
        return 0.0  # it let go

    def line_tension(self, block):
        """The greatest tension of what runs over a block."""
        return max((self.tension[run.before + k] for run in self.s.runs if run.thing is block for k in (0, 1)),
                   default=0.0)
