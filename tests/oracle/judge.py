"""What each part of a rig has to carry, and the verdict: the report that the contract asks for, as a dictionary."""
import itertools

import numpy as np

from statics import Impossible, NoAnswer, Statics, unit

BODIES = ('block', 'fairlead', 'joint')
RATED = ('anchor', 'block', 'fairlead', 'joint', 'hand', 'rope', 'sling', 'spar', 'connector')
NOTHING = 1e-9      # of the rig's force: a part with no more than this is idle


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
    """Every force of one state, as what it does to the thing named."""

    def __init__(self, statics, state):
        self.s, self.state, rig = statics, state, statics.rig
        self.at = statics.places(state.z)
        heading = unit(statics.directions(self.at))
        self.tension = statics.tensions(state.z, state.sense) * statics.force
        zero = lambda: np.zeros(rig.dim)
        self.running, self.tied, self.weights, self.spars = {}, {}, {}, {}
        for item in rig.items:
            self.running[item], self.tied[item] = [], []
            self.weights[item] = zero()
            if item.kind != 'spar':
                self.weights[item][-1] = -item.weight
        runs = {run.before: run for run in statics.runs}
        for part, (line, a, b) in enumerate(statics.parts):
            pull = self.tension[part] * heading[part]
            half = zero()
            if line.kind == 'spar':
                half[-1] = -line.weight / 2
            for thing, force, runs_here in ((a, pull, part - 1 in runs), (b, -pull, part in runs)):
                if not runs_here:
                    self.tied[thing].append((line, part, force))
                if half.any():
                    self.tied[thing].append((line, None, half))
        for part, run in runs.items():
            self.running[run.thing].append(self.tension[part + 1] * heading[part + 1]
                                           - self.tension[part] * heading[part])
        self.track = {item: self.track_force(item) for item in rig.items if 'guide' in item.keys}

    def track_force(self, item):
        """What a guide feels: the level pull of all that moves with its body."""
        node = self.s.node(item)
        total = self.s.node_forces(self.state.z, self.state.sense)[node] * self.s.force
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
            for k, (stop, connectors) in enumerate(thing.stops):
                if connector in connectors:
                    first = next(p for p, part in enumerate(self.s.parts) if part[0] is thing)
                    mine = [(part, f) for line, part, f in self.tied[stop] if line is thing]
                    met = [f for part, f in mine if part in (first + k - 1, first + k)]
                    half = [f for part, f in mine if part is None]
                    # Of a spar its own pull or push counts, or with the half of its weight, whichever is more.
                    return max(np.linalg.norm(np.sum(met, axis=0)), np.linalg.norm(np.sum(met + half, axis=0)))
        raise KeyError(connector.name)


def senses_to_try(undecided):
    """Equal tensions first, then one way and the other: all combinations up to four stops."""
    yield {}
    if len(undecided) <= 4:
        for ways in itertools.product((0, 1, -1), repeat=len(undecided)):
            if any(ways):
                yield dict(zip(undecided, ways))
        return
    for way in (1, -1):
        for r in undecided:
            yield {r: way}
        yield {r: way for r in undecided}


def work_case(s, case, shape):
    """(figures of the case, {component: (demand, push)}, whether a variant was left out).

    Raises Impossible or NoAnswer.
    """
    state = s.work(case, shape)
    effort = None
    if s.driven is not None:
        effort = state.z[len(s.free) + s.driven] * s.force
        if effort < -NOTHING * s.force:
            raise Impossible(case)
    forces = Forces(s, state)
    rated = [item for item in s.rig.of(*RATED)]
    worst, unsure = {item: forces.demand(item) for item in rated}, False
    if any(s.runs[r].thing.slip for r in state.undecided):
        for forced in list(senses_to_try(state.undecided))[1:]:
            try:
                other = s.work(case, shape, forced)
            except NoAnswer:
                unsure = True
                continue
            if s.driven is not None and other.z[len(s.free) + s.driven] < -NOTHING:
                continue
            theirs = Forces(s, other)
            for item in rated:
                worst[item] = tuple(max(pair) for pair in zip(worst[item], theirs.demand(item)))
    return describe(s, case, state, forces, effort, worst), worst, unsure


def describe(s, case, state, forces, effort, worst):
    """The figures of a case, keyed as in the report."""
    rig = s.rig
    figures = {'case': case, 'sound': state.sound, 'undecided': {s.runs[r].thing.name for r in state.undecided}}
    travel = lambda p: -s.piece_length(p, state.growth) if state.growth is not None else None
    figures['lines'] = [(line.name, a.name, b.name, t) for (line, a, b), t in zip(s.parts, forces.tension)]
    blocks = rig.of('block', 'fairlead')
    figures['blocks'] = {b.name: {'force': worst[b][0], 'rope_vector': sum(forces.running[b], np.zeros(rig.dim))}
                         for b in blocks}
    figures['joints'] = {j.name: {'force': forces.demand(j)[0]} for j in rig.of('joint')}
    figures['anchors'] = {a.name: {'force': forces.demand(a)[0], 'vector': forces.passed(a)}
                          for a in rig.of('anchor')}
    figures['guides'] = {g.name: {'vector': f, 'force': np.linalg.norm(f)} for g, f in forces.track.items()}
    figures['hands'] = {p.hand.name: {'force': p.hand.pull if p.rule == 'pulled' else effort,
                                      'travel_ratio': travel(p)} for p in s.pieces if p.hand}
    bodies = [(t.name, s.node(t)) for t in rig.of('block', 'fairlead', 'joint', 'load', 'hand')]
    figures['places'] = {name: {'at': forces.at[node], 'moved': np.linalg.norm(forces.at[node] - s.drawn[node])}
                         for name, node in bodies if not s.fixed[node]}
    if s.driven is not None:
        ratio = travel(s.pieces[s.driven])
        done = state.rise[:, -1] @ s.weight - sum(p.hand.pull * travel(p) for p in s.pieces if p.rule == 'pulled')
        advantage = rig.lifted.weight / effort if abs(effort) > NOTHING * s.force else None
        figures |= {'velocity_ratio': ratio, 'estimated_advantage': advantage,
                    'efficiency': done / (effort * ratio) if case == 'raise' and effort > 0 else None}
    return figures


def status(item, demand, push, nothing):
    if demand is None:  # no case counts for it
        return 'unrated'
    if max(demand, push) <= nothing:
        return 'idle'
    capacity = item.limit if item.kind == 'hand' else item.capacity
    checks = [(demand, capacity)] if demand > nothing else []
    checks += [(push, item.push_capacity)] if push > nothing else []
    if any(c is not None and d > c * (1 + 1e-9) for d, c in checks):
        return 'over'
    return 'unrated' if any(c is None for _, c in checks) else 'within'


def report(rig):
    """The whole report: cases (None: cannot be), components, verdict."""
    s = Statics(rig)
    shape = s.shape() if s.driven is None else s.move(s.shape())
    if s.driven is not None and rig.dim == 1:
        pushes = shape.z[len(s.free) + s.driven] < -NOTHING
        if pushes and shape.rise[:, -1] @ s.weight > 0:  # raising would take work, and hauling does not raise
            raise NoAnswer('nothing holds the load')
    stated = [run.thing.slip is not None for run in s.runs]
    cases, worst, unsure, cannot = {}, {}, False, False
    for case in rig.cases:
        try:
            cases[case], demands, some = work_case(s, case, shape)
            unsure |= some
        except (Impossible, NoAnswer) as reason:
            cases[case] = None
            cannot |= case != 'lower' or isinstance(reason, NoAnswer)
            continue
        for item, pair in demands.items():
            if item.kind == 'hand' and item.pull is None and case == 'hold' and any(stated):
                continue
            worst[item] = tuple(max(two) for two in zip(worst.get(item, (0, 0)), pair))
    components = {}
    for item in rig.of(*RATED):
        if item.kind == 'hand' and item.limit is None:
            continue
        demand, push = worst.get(item, (None, 0))
        components[item.name] = {'kind': item.kind, 'demand': None if demand is None else max(demand, push),
                                 'status': status(item, demand, push, NOTHING * s.force)}
    marks = {c['status'] for c in components.values()}
    unmoved = rig.hand and any(stated) and not {'raise', 'lower'} & set(rig.cases)
    verdict = ('over' if 'over' in marks else
               'unrated' if 'unrated' in marks or not all(stated) or unmoved or cannot else 'within')
    return {'verdict': verdict, 'scope': rig.cases, 'cases': cases, 'components': components, 'unsure': unsure,
            'force': s.force, 'size': s.size}
