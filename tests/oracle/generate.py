"""Random rigs as text, the same for the same seed: tackles with heights alone, rigs in two and three quantities."""
import math
import random
import re

UNITS = {'m': 1.0, 'cm': 0.01, 'mm': 0.001, 'ft': 0.3048, 'in': 0.0254}
WEIGHTS = {'mass': (('kg', 9.80665), ('lb', 4.4482216152605), ('t', 9806.65)),
           'weight': (('N', 1.0), ('kN', 1e3), ('lbf', 4.4482216152605), ('kgf', 9.80665))}


class Writer:
    """A rig file that grows section by section. Every name is new."""

    def __init__(self, rng, dim, name):
        self.rng, self.dim, self.sections, self.counts = rng, dim, [], {}
        sheet = {'title': name}
        if rng.random() < 0.4:
            sheet['efficiency'] = f'{rng.randint(85, 98)} %'
        if rng.random() < 0.5:
            sheet['design factor'] = str(rng.choice([4, 5, 8, 10]))
        if rng.random() < 0.1:
            sheet['gravity'] = '9.81 m/s2'
        if rng.random() < 0.2:
            sheet['units'] = 'us'
        self.sheet = sheet
        self.rated = rng.random()  # how many parts of this rig state a rating
        self.sections.append(('rig', '', sheet))

    def add(self, kind, keys, name=None):
        self.counts[kind] = self.counts.get(kind, 0) + 1
        name = name or f'{kind}-{self.counts[kind]}'
        if kind not in ('load', 'hand', 'spar'):
            keys |= self.rating(50 if kind != 'anchor' else 200)
        if kind == 'spar':
            keys |= self.rating(50, 'wll') | self.rating(50, 'push wll')
        self.sections.append((kind, name, keys))
        return name

    def rating(self, most, key=None):
        roll, keys = self.rng.random(), {}
        if roll > self.rated:
            return keys
        if key:
            return {key: f'{self.rng.uniform(0.2, most):.3f} kN'}
        if roll < 0.8 * self.rated:
            keys['wll'] = self.rng.choice([f'{self.rng.uniform(0.2, most):.3f} kN',
                                           f'{self.rng.uniform(0.1, most / 10):.2f} t',
                                           f'{self.rng.uniform(50, most * 200):.0f} lbf'])
        if roll > 0.6 * self.rated:
            keys['mbs'] = f'{self.rng.uniform(2, most * 8):.1f} kN'
            if self.rng.random() < 0.3:
                keys['design factor'] = f'{self.rng.uniform(1.5, 12):.1f}'
        return keys

    def at(self, *quantities):
        words = []
        for value in quantities:
            unit = self.rng.choice(['m', 'm', 'm', 'cm', 'mm', 'ft', 'in'])
            words.append(f'{value / UNITS[unit]:.7g} {unit}')
        return ', '.join(words)

    def weight(self, newtons):
        key = self.rng.choice(['mass', 'weight'])
        unit, scale = self.rng.choice(WEIGHTS[key])
        return {key: f'{newtons / scale:.6g} {unit}'}

    def slip(self, kind):
        """Friction keys; sometimes none."""
        rng, keys = self.rng, {}
        if kind == 'block':
            if rng.random() < 0.7:
                keys['efficiency'] = f'{rng.uniform(60, 99.5):.1f} %' if rng.random() < 0.95 else '100 %'
        elif rng.random() < 0.9:
            keys['friction' if rng.random() < 0.6 else 'efficiency'] = f'{rng.uniform(0.05, 0.4):.3f}'
            if 'efficiency' in keys:
                keys['efficiency'] = f'{rng.uniform(55, 95):.0f} %'
            if rng.random() < 0.25:
                keys['turns'] = str(rng.randint(1, 2))
        if rng.random() < 0.12 and keys:
            keys['wrap'] = rng.choice([f'{rng.uniform(20, 270):.0f} deg', f'{rng.uniform(0.5, 3):.2f} rad'])
        return keys

    def via(self, thing, chance=0.3):
        """The thing, now and then with connectors."""
        if self.rng.random() > chance:
            return thing
        return f'{thing} via ' + ' + '.join(self.add('connector', {}) for _ in range(self.rng.choice([1, 1, 2])))

    def keys(self, name):
        return next(keys for _, other, keys in self.sections if other == name)

    def drop_idle_keys(self):
        """A key of the sheet that changes nothing is a fault."""
        kinds = [(kind, keys) for kind, _, keys in self.sections]
        if not any(kind == 'block' and not {'efficiency', 'hardware'} & set(keys) for kind, keys in kinds):
            self.sheet.pop('efficiency', None)
        if not any('mbs' in keys and 'design factor' not in keys for _, keys in kinds):
            self.sheet.pop('design factor', None)
        masses = r'(mass|wll|mbs|pull|limit|each) = .*\b(kg|g|t|lb)$'
        if not re.search(masses, '\n'.join(f'{k} = {v}' for _, keys in kinds for k, v in keys.items()), re.M):
            self.sheet.pop('gravity', None)

    def text(self):
        self.drop_idle_keys()
        lines = []
        for kind, name, keys in self.sections:
            lines.append(f'[{kind} {name}]' if name else f'[{kind}]')
            lines += [f'{key} = {value}' for key, value in keys.items()] + ['']
        return '\n'.join(lines)


def newtons(rng):
    return 10 ** rng.uniform(1.5, 4.5)


def hand(w, **keys):
    if w.rng.random() < 0.4:
        keys |= {'people': str(w.rng.randint(1, 4)), 'each': f'{w.rng.randint(150, 400)} N'}
    elif w.rng.random() < 0.5:
        keys['limit'] = f'{w.rng.uniform(0.1, 10):.2f} kN'
    return w.add('hand', keys)


def cases(w):
    if w.rng.random() < 0.25:
        w.sheet['cases'] = w.rng.choice(['raise', 'hold', 'raise, lower', 'hold, lower', 'hold, raise', 'lower'])


def tackle(rng, dim=1):
    """A fixed and a travelling block with one to four parts, perhaps a second tackle on its fall, all upright."""
    w = Writer(rng, dim, 'Tackle')
    where = lambda height, across=0.0: w.at(*([across, 0.0][:dim - 1] + [height]))
    beam = w.add('anchor', {'at': where(10)})
    head = w.add('block', {'on': w.via(beam)} | w.slip('block'))
    tail_keys = {'at': where(3)} | w.slip('block') | (w.weight(newtons(rng) / 20) if rng.random() < 0.6 else {})
    tail = w.add('block', tail_keys)
    load = w.add('load', {'on': w.via(tail)} | w.weight(newtons(rng)))
    parts = rng.randint(1, 5)
    path = [head, tail] * 3
    path = path[-parts:] if parts % 2 else path[1 - parts - 1:]
    start = w.via(rng.choice([beam, head] if path[0] == tail else [tail, load]))
    path = [start] + path
    if path[-1] == tail and rng.random() < 0.5:
        path.append(head)
    if rng.random() < 0.5:
        kind = rng.choice(['block', 'fairlead'])
        post = w.add('anchor', {'at': where(1 if path[-1] == head else 9)})
        lead = w.add(kind, {'on': w.via(post)} | w.slip(kind))
        path.append(lead)
    pull = 0.5 if path[-1] == head else 9.5 if path[-1] == tail or 'lead' not in path[-1] else 5
    if rng.random() < 0.3:
        runner = w.add('block', {'at': where(5)} | w.slip('block') | (w.weight(20) if rng.random() < 0.5 else {}))
        w.add('rope', {'path': ', '.join(path + [runner])})
        up = path[-1] != head and pull == 9.5
        floor = w.add('anchor', {'at': where(11 if up else 0.2)})
        w.add('rope', {'path': f'{w.via(floor)}, {runner}, {hand(w, at=where(10.5 if up else 0.4))}'})
    else:
        on = {'on': load} if rng.random() < 0.15 and path[-1] == head else {'at': where(pull)}
        w.add('rope', {'path': ', '.join(path + [hand(w, **on)])})
    cases(w)
    return w


def spot(rng, dim, low, high, spread=4.0):
    return [round(rng.uniform(-spread, spread), 3) for _ in range(dim - 1)] + [round(rng.uniform(low, high), 3)]


def around(rng, dim, k, count, radius, height):
    """A place on a ring, so that several legs spread."""
    turn = 2 * math.pi * (k + rng.uniform(-0.2, 0.2)) / count
    if dim == 3:
        return [radius * math.cos(turn), radius * math.sin(turn), height]
    return [radius * (1 if k % 2 else -1)][:dim - 1] + [height]


def suspension(rng, dim):
    """A load on a travelling block, a sling perhaps between them, a rope over fixed stops to a hand; then extras."""
    w = Writer(rng, dim, 'Suspension')
    loads = newtons(rng)
    body_at = spot(rng, dim, 2, 4, 1.0)
    own = w.weight(loads / 15) if rng.random() < 0.6 else {}
    body = w.add('block', {'at': w.at(*body_at)} | w.slip('block') | own)
    bridled = rng.random() < 0.5
    if bridled:
        low = body_at[:-1] + [body_at[-1] - 1.5]
        load = w.add('load', {'at': w.at(*low)} | w.weight(loads))
        w.add('sling', {'path': f'{w.via(body)}, {w.via(load)}'})
        if rng.random() < 0.3:
            w.sections[-1][2]['length'] = w.at(1.5 + rng.uniform(-0.2, 0.3))
    else:
        load = w.add('load', {'on': w.via(body)} | w.weight(loads))
        if rng.random() < 0.25:
            w.keys(body)['guide'] = 'vertical'
    start = w.add('anchor', {'at': w.at(*spot(rng, dim, 8, 11))})
    path = [w.via(start), body]
    for _ in range(rng.randint(1, 3)):
        post = w.add('anchor', {'at': w.at(*spot(rng, dim, 7, 11))})
        kind = rng.choice(['block', 'block', 'fairlead'])
        path.append(w.add(kind, {'on': w.via(post)} | w.slip(kind)))
    if rng.random() < 0.3:
        path += [body, w.add('block', {'on': start} | w.slip('block'))]
    path.append(hand(w, at=w.at(*spot(rng, dim, 0, 6, 6.0))))
    w.add('rope', {'path': ', '.join(path)})
    extras(w, body_at, body, load, loads)
    cases(w)
    return w


def extras(w, body_at, body, load, loads):
    """Tag lines, slack slings, counterweights, hands with known pulls, a spreader with two more loads."""
    rng, dim = w.rng, w.dim
    several = False
    if rng.random() < 0.35:
        place = w.at(*spot(rng, dim, 0, 4, 8.0))
        puller = w.add('hand', {'at': place, 'pull': f'{loads * rng.uniform(0, 0.3):.4g} N'})
        w.add('rope', {'path': f'{w.via(load)}, {puller}'})
    if rng.random() < 0.25:
        stay = w.add('anchor', {'at': w.at(*spot(rng, dim, 5, 9, 6.0))})
        w.add('sling', {'path': f'{w.via(stay)}, {w.via(body)}', 'length': w.at(rng.uniform(6, 14))})
    if rng.random() < 0.25:
        post = w.add('anchor', {'at': w.at(*spot(rng, dim, 7, 11))})
        sheave = w.add('block', {'on': w.via(post)} | w.slip('block'))
        other = w.add('load', {'at': w.at(*spot(rng, dim, 1, 5))} | w.weight(loads * rng.uniform(0.05, 0.4)))
        w.add('rope', {'path': f'{w.via(body)}, {sheave}, {w.via(other)}'})
        several = True
    if rng.random() < 0.2:
        ends = []
        for off in (-1.2, 1.2):
            at = body_at[:-2] + [body_at[-2] + off, body_at[-1] - 3]
            ends.append(w.add('load', {'at': w.at(*at)} | w.weight(loads * rng.uniform(0.1, 0.2))))
        own = w.weight(loads / 20) if rng.random() < 0.5 else {}
        w.add('spar', {'path': ', '.join(w.via(end) for end in ends)} | own)
        for end in ends:
            w.add('sling', {'path': f'{w.via(load)}, {end}'})
        several = True
    if several:
        w.sheet['load'] = load


def derrick(rng, dim):
    """A spar with its foot on the ground and its head held by guys or a topping lift, a fall over its head."""
    w = Writer(rng, dim, 'Derrick')
    side = [0.0] * (dim - 2)
    foot = w.add('anchor', {'at': w.at(0.0, *side, 0.5)})
    reach, up = rng.uniform(2, 5), rng.uniform(4, 8)
    head = w.add('joint', {'at': w.at(reach, *side, up)} | (w.weight(50) if rng.random() < 0.5 else {}))
    own = w.weight(rng.uniform(50, 400)) if rng.random() < 0.6 else {}
    w.add('spar', {'path': f'{w.via(foot)}, {w.via(head)}'} | own)
    guys = [w.add('anchor', {'at': w.at(-rng.uniform(2, 5), *([off] * (dim - 2)), rng.uniform(5, 11))})
            for off in ((-2.5, 2.5) if dim == 3 else (0.0,))]
    lift = rng.random() < 0.4 and dim == 2
    sheave = w.add('block', {'on': w.via(head)} | w.slip('block'))
    load = w.add('load', {'at': w.at(reach + rng.uniform(-0.2, 0.2), *side, up - 2.5)} | w.weight(newtons(rng)))
    crew = hand(w, at=w.at(rng.uniform(-4, 0.3), *side, rng.uniform(0.2, 1)))
    if lift:
        topping = w.add('block', {'on': w.via(guys[0])} | w.slip('block'))
        w.add('sling', {'path': f'{w.via(head)}, {w.via(load)}'})
        w.add('rope', {'path': f'{w.via(head)}, {topping}, {crew}'})
        return w
    for guy in guys:
        w.add('sling', {'path': f'{w.via(guy)}, {w.via(head)}'})
    foot_block = w.add('block', {'on': foot} | w.slip('block'))
    w.add('rope', {'path': f'{w.via(load)}, {sheave}, {foot_block + ", " if rng.random() < 0.5 else ""}{crew}'})
    cases(w)
    return w


def tangle(rng, dim):
    """Bodies of several things each, one hauled rope that wanders over them, ropes and slings between them."""
    w = Writer(rng, dim, 'Tangle')
    tops, sheaves, bodies = [], [], []
    for _ in range(rng.randint(2, 4)):
        top = w.add('anchor', {'at': w.at(*spot(rng, dim, 8, 12))})
        kind = rng.choice(['block', 'block', 'fairlead'])
        sheave = w.add(kind, {'on': w.via(top)} | w.slip(kind))
        if rng.random() < 0.2:
            sheave = w.add('block', {'on': w.via(sheave)} | w.slip('block') | w.weight(30))
        tops.append(top)
        sheaves.append(sheave)
    for k in range(rng.randint(1, 3)):
        at = w.at(*spot(rng, dim, 2, 6, 2.5))
        root = w.add('block', {'at': at} | w.slip('block') | (w.weight(40) if rng.random() < 0.5 else {}))
        if rng.random() < 0.1 and dim > 1:
            w.keys(root)['guide'] = 'vertical'
        ring = root
        if rng.random() < 0.5:
            ring = w.add('joint', {'on': w.via(root)} | (w.weight(15) if rng.random() < 0.3 else {}))
        w.add('load', {'on': w.via(ring)} | w.weight(newtons(rng)))
        bodies.append((root, ring, f'load-{k + 1}'))
    if len(bodies) > 1:
        w.sheet['load'] = 'load-1'
    path = [w.via(rng.choice(tops))]
    unused = sheaves[:]
    rng.shuffle(unused)
    for root, _, _ in bodies if rng.random() < 0.15 else bodies[:1]:
        path += [root, unused.pop()] if len(unused) > 1 or len(bodies) < 2 else [root]
    if rng.random() < 0.25:
        path += [bodies[0][0]] + ([unused.pop()] if unused else []) if path[-1] != bodies[0][0] else []
    on = {'on': bodies[0][2]} if rng.random() < 0.15 else {'at': w.at(*spot(rng, dim, 0, 5, 6))}
    w.add('rope', {'path': ', '.join(path + [hand(w, **on)])})
    for root, ring, load in [b for b in bodies if b[0] not in path]:
        ties = rng.sample(tops, k=min(len(tops), rng.choice([1, dim])))
        for tie in ties:
            w.add('sling', {'path': f'{w.via(tie)}, {w.via(ring if ring != root else load)}'})
    if len(bodies) > 1 and rng.random() < 0.5:
        a, b = rng.sample(bodies, 2)
        w.add('rope', {'path': f'{w.via(a[2])}, {w.via(b[2])}'})
    if rng.random() < 0.3:
        puller = hand(w, at=w.at(*spot(rng, dim, 0, 3, 7)), pull=f'{rng.uniform(5, 60):.1f} N')
        w.add('rope', {'path': f'{puller}, {w.via(rng.choice(bodies)[2])}'})
    cases(w)
    return w


def still(rng, dim):
    """No hand that is worked out: bridles, weights over blocks, known pulls."""
    w = Writer(rng, dim, 'At rest')
    knot_at = spot(rng, dim, 3, 5, 1.0)
    kind = rng.choice(['joint', 'load', 'block'])
    loads = newtons(rng)
    body = w.add(kind, {'at': w.at(*knot_at)} | (w.weight(loads) if kind == 'load' else {}))
    if kind != 'load':
        w.add('load', {'on': w.via(body)} | w.weight(loads))
    legs = rng.randint(2, dim) if dim > 1 else 1
    for k in range(legs):
        top = w.add('anchor', {'at': w.at(*around(rng, dim, k, legs, rng.uniform(1, 4), rng.uniform(7, 10)))})
        if rng.random() < 0.35:
            sheave = w.add('block', {'on': w.via(top)} | w.slip('block'))
            if rng.random() < 0.5:
                low = w.at(*spot(rng, dim, 1, 2, 3))
                other = w.add('load', {'at': low} | w.weight(loads * rng.uniform(0.6, 0.9)))
            else:
                other = hand(w, at=w.at(*spot(rng, dim, 0, 2, 3)), pull=f'{loads * rng.uniform(0.6, 0.95):.4g} N')
            w.add('rope', {'path': f'{w.via(body)}, {sheave}, {other}'})
        else:
            w.add('sling', {'path': f'{w.via(top)}, {w.via(body)}'})
    if rng.random() < 0.3:
        slack = w.add('anchor', {'at': w.at(*spot(rng, dim, 6, 8))})
        w.add('sling', {'path': f'{slack}, {w.via(body)}', 'length': w.at(rng.uniform(7, 12))})
    return w


def sketch(rng):
    """A rig of a kind that the dice choose."""
    make = rng.choice([tackle, suspension, suspension, still, derrick, tangle, tangle])
    return make(rng, rng.choice([1, 1, 2]) if make is tackle else rng.choice([2, 3]))


def rig(seed):
    """The rig of a seed."""
    return sketch(random.Random(f'oracle {seed}')).text()
