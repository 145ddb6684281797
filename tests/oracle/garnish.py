"""Gives a random rig gear from tables, what takes from its ratings, and more cases. The same for the same seed."""
import random

import generate
from hardware import Tables

ROWS = {  # gear that a kind may be
    'anchor': ['stock-pad', 'example-eyebolt'],
    'block': ['stock-block', 'example-single-block', 'example-double-block'],
    'fairlead': ['stock-ring', 'example-lowering-bollard'], 'joint': ['stock-plate'],
    'rope': ['stock-line', 'stock-wire', 'example-rope-12', 'example-rope-16-manila', 'example-wire-6',
             'example-rope-12-hmpe', 'example-chain-7'],
    'sling': ['stock-strop', 'stock-line', 'stock-wire', 'example-round-sling', 'example-chain-7'],
    'spar': ['stock-pole', 'example-spar'],
    'connector': ['stock-shackle', 'example-shackle', 'en12275-basic-closed']}
MATERIALS = ['polyester', 'nylon', 'manila', 'wire-rope', 'stock-seale', 'steel-chain', 'hmpe']
KNOTS = ['bowline', 'stock-loop', 'clove-hitch', 'reef', 'any-other']
TIES = {'fibre': ['eye-splice', 'stock-socket'], 'natural-fibre': ['eye-splice'],
        'wire': ['poured-socket', 'wedge-socket', 'clips', 'stock-socket'], 'chain': [],
        None: ['wedge-socket', 'clips']}
FITTINGS = ['shoulder-eyebolt', 'stock-pad', 'stock-swivel', 'plain-eyebolt']
USES = ['eu-machinery', 'over-people-germany', 'stock-lifts', 'rigging-blocks', 'marine-terminal']
LINES = ('rope', 'sling')
KINDS = {'hardware': 'gear'} | {key: key for key in ('material', 'knot', 'termination', 'fitting', 'use')}


class Garnish:
    def __init__(self, writer, rng, tables):
        self.w, self.rng, self.tables = writer, rng, tables
        self.sections = writer.sections
        self.ample = rng.random() < 0.3            # nothing is unstated, and all is strong, so that it may be within
        self.plenty = 1.0 if self.ample else rng.choice([0.0, 0.3, 0.9])  # how often gear is strong enough

    def maybe(self, chance):
        return self.rng.random() < chance

    def each(self, *kinds):
        return [(kind, name, keys) for kind, name, keys in self.sections if kind in kinds]

    def share(self, low=50):
        return f'{self.rng.randint(low, 99)} %'

    # --- gear ---

    def gear(self):
        if self.ample:
            self.w.sheet['efficiency'] = '90 %'
        for kind, _, keys in self.each(*ROWS):
            if kind == 'fairlead' and self.ample and not {'friction', 'efficiency'} & set(keys):
                keys['friction'] = '0.2'
            if self.maybe(0.1 if self.ample else 0.4):
                keys['hardware'] = self.rng.choice(ROWS[kind])
            elif self.maybe(self.plenty):
                keys['wll'] = f'{self.rng.uniform(80, 400):.1f} kN'
                if kind == 'spar':
                    keys['push wll'] = keys['wll']
            if self.maybe(0.2):
                keys['wear'] = self.share()

    def ropes(self):
        for kind, _, keys in self.each(*LINES):
            row = self.tables.find('gear', keys.get('hardware'))
            if self.maybe(0.4) and not (row and 'material' in row.keys and self.maybe(0.7)):
                keys['material'] = self.rng.choice(MATERIALS)
            material = keys.get('material') or row and row.word('material')
            made_of = self.tables.find('material', material)
            self.ends(keys, made_of)
            if self.maybe(0.2):
                keys['wet'] = self.share(70)
            if kind == 'sling' and self.maybe(0.4):
                keys['hitch'] = self.rng.choice(['straight', 'choke', 'choke', 'basket'])
                natural = made_of and made_of.word('class') == 'natural-fibre'
                if self.ample and not made_of:
                    keys['hitch'] = 'basket'
                if keys['hitch'] == 'choke' and not natural and (self.ample or self.maybe(0.7)):
                    keys['choke angle'] = self.rng.choice(
                        ['120 deg', '90 deg', '119.99 deg', f'{self.rng.uniform(0, 180):.1f} deg'])
            if self.maybe(0.4):
                keys['diameter'] = f'{self.rng.choice([6, 8, 10, 12, 16])} mm'

    def ends(self, keys, made_of):
        kind = made_of.word('class') if made_of else None
        bare = made_of and 'knots' in made_of.keys
        if self.maybe(0.35) and not bare and kind not in ('wire', 'chain'):
            keys['knot'] = self.rng.choice(KNOTS)
        ties = [] if bare and kind == 'fibre' else TIES[kind] if made_of else TIES[None] if 'knot' not in keys else []
        if self.maybe(0.3) and ties:
            keys['termination'] = self.rng.choice(ties)

    # --- bends ---

    def meets(self, by_row):
        """What lies round what: the names of lines with a diameter, and of pins and sheaves, that meet."""
        named, met = {name: keys for _, name, keys in self.sections}, set()
        kinds = {name: kind for kind, name, _ in self.sections}
        row = lambda keys: self.tables.find('gear', keys.get('hardware'))
        has = lambda keys, key: key in keys or by_row and row(keys) and key in row(keys).keys
        for _, line, keys in self.each(*LINES):
            stops = [stop.strip().split(' via ') for stop in keys['path'].split(',')]
            for k, (thing, *connectors) in enumerate(stops):
                tied = k in (0, len(stops) - 1) or kinds[thing] in ('anchor', 'joint', 'load')
                other = connectors[0].split(' + ')[-1] if connectors else thing
                key = 'sheave diameter' if kinds[thing] == 'block' and not tied else 'pin diameter'
                if has(keys, 'diameter') and has(named[other], key):
                    met |= {(line, 'diameter'), (other, key)}
        return met

    def bends(self):
        for kind, _, keys in self.each('block', 'anchor', 'fairlead', 'joint', 'load', 'connector'):
            if kind == 'block' and self.maybe(0.4):
                keys['sheave diameter'] = f'{self.rng.randint(20, 160)} mm'
            if self.maybe(0.25):
                keys['pin diameter'] = f'{self.rng.randint(10, 60)} mm'
        met = self.meets(by_row=True)
        for _, name, keys in self.sections:
            for key in ('diameter', 'sheave diameter', 'pin diameter'):
                if (name, key) not in met:
                    keys.pop(key, None)

    # --- angles ---

    def angles(self):
        for _, _, keys in self.each('anchor'):
            if self.maybe(0.25) and not self.ample:
                lean = [f'{self.rng.uniform(-0.8, 0.8):.2f}' for _ in range(self.w.dim - 1)]
                keys['fitting'] = self.rng.choice(FITTINGS)
                keys['axis'] = self.rng.choice(['down', ', '.join([*lean, '-1']), ', '.join([*lean, '-1'])])
                if self.maybe(0.1):
                    keys['axis'] = 'up'
        for _, _, keys in self.each('connector'):
            if self.maybe(0.25):
                keys['side load'] = self.rng.choice(['4 deg', '30 deg', f'{self.rng.uniform(0, 95):.1f} deg'])

    # --- the sheet ---

    def cases(self):
        sheet, rng = self.w.sheet, self.rng
        hands = [keys for _, _, keys in self.each('hand')]
        hauled = any('pull' not in keys for keys in hands)
        words = []
        if hauled:
            if self.maybe(0.85):
                for keys in hands:
                    if not {'limit', 'people'} & set(keys):
                        keys['limit'] = f'{rng.uniform(0.1, 8):.2f} kN'
            able = all({'limit', 'people'} & set(keys) for keys in hands)
            words = rng.choice([['all'], ['all'], ['raise', 'start'], ['jam', 'lower', 'stop'], ['raise', 'lower']])
            words = [word for word in words if word != 'jam' or able]
            if {'all', 'start', 'stop'} & set(words):
                if self.maybe(0.5):
                    sheet['acceleration'] = f'{rng.uniform(0.05, 6):.2f} m/s2'
                else:
                    sheet |= {'speed': f'{rng.uniform(5, 90):.1f} ft/min', 'time': f'{rng.uniform(80, 900):.0f} ms'}
        losable = [name for _, name, _ in self.each('anchor', 'rope', 'sling', 'spar', 'connector')]
        for name in rng.sample(losable, min(len(losable), rng.choice([0, 1, 2]))):
            words.append(f'lost {name}')
        sheet.pop('cases', None)
        if words:
            sheet['cases'] = ', '.join(words)
        if any('lost' in word for word in words) and self.maybe(0.4):
            sheet['loss factor'] = f'{rng.uniform(1, 3):.2f}'

    def sheet(self):
        if self.maybe(0.35):
            self.w.sheet['use'] = self.rng.choice(USES)
        self.w.sheet['design factor'] = str(self.rng.choice([3, 5, 8]))
        named = [row for _, _, keys in self.sections for key, value in keys.items()
                 if (row := self.tables.find(KINDS.get(key), value))]
        if any(row.file == 'stock.ini' for row in named):
            self.w.sheet['tables'] = 'stock.ini'


def rig(seed, tables):
    """The rig of a seed, garnished. `tables`: those that it may use."""
    rng = random.Random(f'garnish {seed}')
    writer = generate.sketch(rng)
    garnish = Garnish(writer, rng, tables)
    for step in (garnish.gear, garnish.ropes, garnish.bends, garnish.angles, garnish.cases, garnish.sheet):
        step()
    return writer.text()


def stock(folder):
    return Tables(['stock.ini'], folder)
