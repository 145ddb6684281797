"""What each part of a rig has to carry, and the verdict: the report that the contract asks for, as a dictionary."""
import itertools
import math
from dataclasses import dataclass

import numpy as np

import drop
import gear
import hanging
import hardware
import motion
from forces import Forces
from loss import Remains
from rigfile import LINES
from statics import EQUAL, Impossible, NoAnswer, Statics

RATED = ('anchor', 'block', 'fairlead', 'joint', 'hand', 'rope', 'sling', 'spar', 'connector')
NOTHING = 1e-9      # of the rig's force: a part with no more than this is idle
SLACK = 1e-9        # of a rating: rounding must not decide


@dataclass
class Need:
    """What a part has to bear in one state. `share`: what the angle of its pull leaves; None: nothing is known."""
    pull: float = 0.0
    push: float = 0.0
    share: float = 1.0
    case: str = None

    @property
    def weight(self):
        return math.inf if self.pull and not self.share else self.pull / (self.share or 1.0)


@dataclass
class Worked:
    figures: dict
    needs: dict         # {name of a part: [Need, ...] of each state}
    lines: dict         # {name of a block: greatest tension over it}
    unsure: bool        # a state was left out
    drops: bool = False
    varied: bool = False
    doubtful: bool = False


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


def need_of(forces, item, factor):
    """Of an item in a state; of an anchor with an axis, what the angle of the pull leaves too."""
    pull, push = forces.demand(item)
    need = Need(pull * factor, push * factor)
    if item.kind == 'anchor' and 'axis' in item.keys:
        vector = forces.passed(item)
        axis = np.zeros(len(vector))
        words = {'down': -1.0, 'up': 1.0}
        axis[-1] = words.get(item.keys['axis'], 0.0)
        if not axis.any():
            axis[:] = [float(part) for part in item.keys['axis'].split(',')]
        if np.linalg.norm(vector) > NOTHING * forces.s.force:
            off = math.atan2(np.linalg.norm(vector / np.linalg.norm(vector) - axis / np.linalg.norm(axis)),
                             np.linalg.norm(vector / np.linalg.norm(vector) + axis / np.linalg.norm(axis)))
            need.share = hardware.kept(forces.s.rig.tables.find('fitting', item.keys['fitting']), 2 * off)
    return need


def states_of(s, case, shape):
    """Every state of a case that is rated, the printed one first; and whether one was left out."""
    first = motion.work(s, case, shape)
    states, unsure = [first], False
    if case == 'jam':
        states = [motion.catch(s, shape), first]
    if case == 'drop' and s.driven is not None and any(run.thing.slip for run in s.runs):
        states.append(motion.work(s, 'lower', shape))
    rough = [r for r in first.undecided if s.runs[r].thing.slip and any(s.runs[r].thing.slip[1:])]
    if rough:
        for forced in list(senses_to_try(rough))[1:]:
            try:
                states.append(motion.work(s, case, shape, forced))
            except NoAnswer:
                unsure = True
    return states, first.undecided, unsure


def work_case(s, case, name, shape, factor=1.0):
    """A case worked. Raises Impossible or NoAnswer."""
    states, undecided, unsure = states_of(s, case, shape)
    effort = None
    if s.driven is not None:
        pulls = [s.pull_of(s.driven, state) for state in states]
        if pulls[0] < -NOTHING * s.force:
            raise Impossible(case)
        effort = pulls[0]
        states = [state for state, pull in zip(states, pulls) if pull >= -NOTHING * s.force]
    needs, lines = {item.name: [] for item in s.rig.of(*RATED)}, {b.name: 0.0 for b in s.rig.of('block')}
    for state in states:
        forces = Forces(s, state)
        for item in s.rig.of(*RATED):
            needs[item.name].append(need_of(forces, item, factor))
        for block in s.rig.of('block'):
            lines[block.name] = max(lines[block.name], factor * forces.line_tension(block))
    worst = {name: max(need.pull for need in found) for name, found in needs.items()}
    figures = describe(s, case, states[0], Forces(s, states[0]), effort, worst, factor)
    figures |= {'case': name, 'factor': factor, 'loose': set(),
                'undecided': {s.runs[r].thing.name for r in undecided},
                'limp': {run.thing.name for run in s.runs if states[0].slack[run.piece]}}
    return Worked(figures, needs, lines, unsure, varied=len(states) > 1 + (case == 'jam'))


def hand_row(forces, piece, factor):
    """Its pull, and how far it goes for one unit of lift."""
    state = forces.state
    end = piece.first if piece.hand_first else piece.first + piece.count - 1
    travel = None if state.growth is None else -state.growth[piece.first:][:piece.count].sum()
    return {'force': factor * forces.tension[end], 'travel_ratio': travel}


def describe(s, case, state, forces, effort, worst, factor):
    """The figures of a case, keyed as in the report."""
    rig = s.rig
    figures = {'sound': state.sound}
    figures['lines'] = [(line.name, a.name, b.name, factor * t)
                        for (line, a, b), t in zip(s.parts, forces.tension)]
    figures['blocks'] = {b.name: {'force': worst[b.name],
                                  'rope_vector': factor * sum(forces.running[b], np.zeros(rig.dim))}
                         for b in rig.of('block', 'fairlead')}
    figures['joints'] = {j.name: {'force': factor * forces.demand(j)[0]} for j in rig.of('joint')}
    figures['anchors'] = {a.name: {'force': factor * forces.demand(a)[0], 'vector': factor * forces.passed(a)}
                          for a in rig.of('anchor')}
    figures['guides'] = {g.name: {'vector': factor * f, 'force': factor * np.linalg.norm(f)}
                         for g, f in forces.track.items()}
    figures['hands'] = {p.hand.name: hand_row(forces, p, factor) for p in s.pieces if p.hand}
    bodies = [(t.name, s.node(t)) for t in rig.of('block', 'fairlead', 'joint', 'load', 'hand')]
    figures['places'] = {name: {'at': forces.at[node], 'moved': np.linalg.norm(forces.at[node] - s.drawn[node])}
                         for name, node in bodies if not s.fixed[node]}
    if s.driven is not None and state.growth is not None:
        travel = lambda p: -state.growth[p.first:][:p.count].sum()
        ratio = travel(s.pieces[s.driven])
        done = state.rise[:, -1] @ s.weight - sum(p.hand.pull * travel(p) for p in s.pieces if p.rule == 'pulled')
        steady = case in ('hold', 'raise', 'lower')
        advantage = rig.lifted_weight() / effort if steady and abs(effort) > NOTHING * s.force else None
        figures |= {'velocity_ratio': ratio, 'estimated_advantage': advantage,
                    'efficiency': done / (effort * ratio) if case == 'raise' and effort * ratio > 0 else None}
    return figures


def drops(s, worked):
    """Whether a line that was slack at first catches something."""
    slack = s.kept - s.piece_lengths(s.drawn)
    pulls = [worked.figures['lines'][piece.first][3] for piece in s.pieces]
    return any(piece.rule == 'tied' and room > EQUAL * s.size and pull > NOTHING * s.force
               for piece, room, pull in zip(s.pieces, slack, pulls))


def work_loss(s, shape, name):
    """A part lets go of the rig as it is at rest; the figures are in the order of the whole rig's parts."""
    rig = s.rig
    hold = motion.work(s, 'hold', shape)
    if s.driven is not None and s.pull_of(s.driven, hold) < -NOTHING * s.force:
        raise Impossible('it cannot be held to begin with')
    remains = Remains(s, hold, rig.named(name.split()[1]))
    left = Statics(remains.as_rig())
    try:
        worked = work_case(left, 'lost', name, hanging.fallen_shape(left), rig.loss_factor)
    except NoAnswer as reason:
        raise Impossible(str(reason)) from reason
    worked.drops = drops(left, worked)
    figures, part_of = worked.figures, remains.part_of()
    first = {line: min((p for p, part in enumerate(left.parts) if part[0].name == line.name), default=0)
             for line in rig.of(*LINES)}
    tensions, figures['lines'], count = figures['lines'], [], {}
    for line, a, b in s.parts:
        number = count[line] = count.get(line, -1) + 1
        left_part = part_of.get((line, number))
        tension = 0.0 if left_part is None else tensions[first[line] + left_part][3]
        figures['lines'].append((line.name, a.name, b.name, tension))
    nothing = {'force': 0.0, 'rope_vector': np.zeros(rig.dim)}
    for table, kinds in (('blocks', ('block', 'fairlead')), ('joints', ('joint',))):
        for item in rig.of(*kinds):
            row = {key: value for key, value in nothing.items() if table == 'blocks' or key == 'force'}
            figures[table].setdefault(item.name, row)
    for item in rig.of('hand'):
        figures['hands'].setdefault(item.name, {'force': 0.0, 'travel_ratio': None})
    for place, row in figures['places'].items():
        row['moved'] = np.linalg.norm(row['at'] - s.drawn[s.node(rig.named(place))])
    figures['loose'] = {thing.name for thing in remains.gone}
    return worked


def work_drop(s, shape, name):
    """The figures at the peak; what parts are held against their ratings at is worked anew."""
    found = drop.caught(s, shape, prepare, lambda of, state: Forces(of, state).tension)
    top, checked = (prepare(drop.heavier(s.rig, weight)) for weight in (found.peak, found.checked))
    worked = work_case(top[0], 'drop', name, top[1])
    beyond = work_case(checked[0], 'drop', name, checked[1])
    worked.needs, worked.lines, worked.doubtful = beyond.needs, beyond.lines, found.doubtful
    for hand in s.rig.of('hand'):
        if drop.behind_turns(s, hand):
            worked.needs[hand.name] = []
            worked.figures['hands'][hand.name]['force'] = None
    worked.figures['drop'] = {'peak': found.peak, 'checked': found.checked, 'weight': found.weight,
                              'stiffness': found.stiffness}
    return worked


def counts(rig, item, case):
    """Whether a hand's pull is held against its limit in a case: not where it pulls all it can anyway, and at rest
    only where nothing else is known."""
    if item.kind != 'hand':
        return True
    stated = any(thing.slip for line in rig.of('rope') for thing, _ in line.stops
                 if thing.kind in ('block', 'fairlead'))
    return case != 'jam' and not (case == 'hold' and item.pull is None and stated)


def rate(rig, item, needs, nothing):
    """The row of one part: the state that uses most of it, and its chain."""
    row = {'kind': item.kind, 'demand': None, 'case': None, 'capacity': None, 'utilisation': None, 'chain': None,
           'status': 'unrated'}
    if not needs:  # no case counts for it
        pull, _ = gear.chains(rig, item)
        chain = gear.ruling(pull)
        return row | ({'capacity': chain.capacity, 'chain': chain.steps} if chain else {})
    ranks = [state for need in needs for state in states_of_need(rig, item, need, nothing)]
    best = max(ranks, key=lambda state: state['rank'])
    least = best['rank'][1] * (1 - 1e-6)
    alike = {s['case'] for s in ranks if s['rank'][0] == best['rank'][0] and s['rank'][1] >= least}
    return row | best | {'cases': alike}


def states_of_need(rig, item, need, nothing):
    """Pull and push of one state, each held against the chain that rules, with its place among all: an overload
    before what is not known, then by how much is used."""
    fitting = rig.tables.find('fitting', item.keys.get('fitting'))
    found = gear.chains(rig, item, (fitting, need.share) if fitting else None)
    for force, rated in [(need.pull, found[0])] + [(need.push, found[1])] * (need.push > 0):
        chain = gear.ruling(rated)
        limit = chain.capacity if chain else None
        used = None if limit is None else force / limit if limit else math.inf if force > nothing else 0.0
        status = ('idle' if force <= nothing else 'unrated' if used is None
                  else 'over' if used > 1 + SLACK else 'within')
        yield {'demand': force, 'case': need.case, 'capacity': limit, 'utilisation': used, 'status': status,
               'chain': chain.steps if chain else None,
               'rank': (('idle', 'within', 'unrated', 'over').index(status), force if used is None else used, force)}


def fittings(rig, components, lines):
    for block, fitting in gear.head_fittings(rig):
        needed = 2 * lines[block.name]
        most = 2 * max(components[line.name]['demand'] or 0 for line in rig.of('rope')
                       if any(thing is block for thing, _ in line.stops))
        capacity = components[fitting.name]['capacity']
        status = ('unrated' if capacity is None else 'over' if needed > capacity * (1 + SLACK) else 'within')
        if needed > 0:
            yield {'block': block.name, 'fitting': fitting.name, 'needed': needed, 'most': most,
                   'capacity': capacity, 'status': status}


def weakest(components, row):
    """The chain as names, and its part of greatest use where every part that carries something is rated."""
    used = [(components[item.name]['utilisation'], item.name) for item in row
            if components[item.name]['status'] != 'idle']
    known = used and all(share is not None for share, _ in used)
    worst = max(used, key=lambda pair: pair[0]) if known else (None, None)
    return {'parts': [item.name for item in row], 'weakest': worst[1],
            'utilisation': worst[0] if worst[0] != math.inf else None}


def prepare(rig, alone=True):
    """The statics of a rig and its shape without friction; NoAnswer where there is none. `alone`: no other hand
    holds the load in this one's stead."""
    s = Statics(rig)
    shape = hanging.shape(s) if s.driven is None else motion.move(s, hanging.shape(s))
    if s.driven is not None and rig.dim == 1 and alone:
        pushes = s.pull_of(s.driven, shape) < -NOTHING * s.force
        if pushes and shape.rise[:, -1] @ s.weight > 0:  # raising would take work, and hauling does not raise
            raise NoAnswer('nothing holds the load')
    return s, shape


@dataclass
class Tally:
    """What the cases of a rig come to together."""
    cases: dict         # figures, None: it cannot be
    why: dict           # why not
    needs: dict         # {name of a part: [Need, ...]}
    lines: dict         # {name of a block: greatest tension over it}
    cannot: bool = False
    unsure: bool = False
    varied: bool = False
    drops: bool = False
    doubtful: bool = False

    def add(self, rig, case, worked):
        self.cases[case] = worked.figures
        self.unsure |= worked.unsure
        self.varied |= worked.varied
        self.drops |= worked.drops
        self.doubtful |= worked.doubtful
        for item in rig.of(*RATED):
            if counts(rig, item, case.split()[0]):
                for need in worked.needs.get(item.name, []):
                    need.case = case
                    self.needs[item.name].append(need)
        for name, tension in worked.lines.items():
            self.lines[name] = max(self.lines[name], tension)


def work_either(ways, name):
    """A case by the one of two hands that need not push, and the rig in which it is worked out."""
    for s, shape in ways:
        try:
            return s.rig, work_case(s, name, name, shape)
        except (Impossible, NoAnswer) as reason:
            why = reason
    raise why


def holding(ways):
    """The rig as it holds, and its shape."""
    if len(ways) == 1:
        return ways[0]
    rig, _ = work_either(ways, 'hold')
    return next(way for way in ways if way[0].rig is rig)


def work_jam(ways):
    """Either of two hands pulls all it can while the other rests, from where the load is raised; that one's figures
    stand which lifts it."""
    rig, raised = work_either(ways, 'raise')
    s, shape = next(way for way in ways if way[0].rig is rig)
    other = next(p.hand for p in s.pieces if p.hand and p.hand.pull == 0)
    worked = []
    for hand in (other, rig.hand) if raised.figures['velocity_ratio'] > 0 else (rig.hand, other):
        hand.rests = True
        worked.append(work_case(s, 'jam', 'jam', shape))
        hand.rests = False
    first, second = worked
    for name, needs in second.needs.items():
        first.needs[name] += needs
    for name, tension in second.lines.items():
        first.lines[name] = max(first.lines[name], tension)
    for name, row in second.figures['blocks'].items():
        first.figures['blocks'][name]['force'] = max(first.figures['blocks'][name]['force'], row['force'])
    first.unsure |= second.unsure
    return first


def work_all(ways, refused):
    """`ways`: the rig and its shape; of two hands joined by `or` one after the other."""
    s, shape = ways[0]
    rig = s.rig
    tally = Tally({}, {}, {item.name: [] for item in rig.of(*RATED)}, {b.name: 0.0 for b in rig.of('block')})
    for case in rig.cases:
        try:
            if case in refused:
                raise Impossible('refused')
            by = rig
            if len(ways) > 1 and case == 'jam':
                worked = work_jam(ways)
            elif case == 'drop':
                worked = work_drop(*holding(ways), case)
            elif case.startswith('lost '):
                worked = work_loss(*holding(ways), case)
            else:
                by, worked = work_either(ways, case)
            tally.add(by, case, worked)
        except (Impossible, NoAnswer) as reason:
            tally.cases[case], tally.why[case] = None, str(reason)
            tally.cannot |= case != 'lower' or isinstance(reason, NoAnswer)
    return tally


def verdict(s, marks, tally):
    """Over before unrated, and within only where nothing is left open."""
    rig = s.rig
    stated = [run.thing.slip is not None for run in s.runs]
    unmoved = rig.hand and any(stated) and not {'raise', 'lower'} & set(rig.cases)
    choked = any(gear.choke_unknown(rig, item) for item in rig.of('sling'))
    left_open = 'unrated' in marks or not all(stated) or unmoved or choked or tally.cannot or tally.drops
    left_open = left_open or tally.doubtful
    return 'over' if 'over' in marks else 'unrated' if left_open else 'within'


def report(rig, refused=()):
    """The whole report: cases (None: cannot be), components, verdict. `refused`: cases that are not to be worked,
    although they could be."""
    ways = [prepare(each, not rig.twin) for each in (rig, rig.twin) if each]
    s = ways[0][0]
    tally = work_all(ways, refused)
    components = {item.name: rate(rig, item, tally.needs[item.name], NOTHING * s.force) for item in rig.of(*RATED)
                  if item.kind != 'hand' or item.limit is not None}
    heads = list(fittings(rig, components, tally.lines))
    marks = {c['status'] for c in components.values()} | {h['status'] for h in heads}
    return {'verdict': verdict(s, marks, tally), 'scope': list(rig.cases), 'cases': tally.cases, 'why': tally.why,
            'components': components, 'chains': [weakest(components, row) for row in gear.in_a_row(rig)],
            'head_fittings': heads, 'hardware': {item.name: item.row.name for item in rig.items if item.row},
            'use': rig.use and {item.name: gear.asked(rig, item) for item in rig.of(*RATED)
                                if item.kind != 'hand' and components[item.name]['chain']},
            'cannot': tally.cannot, 'unsure': tally.unsure or rig.unsure, 'varied': tally.varied, 'force': s.force, 'size': s.size}
