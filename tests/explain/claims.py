"""What a lesson claims, held against the rig file and the JSON report."""
import math
import re

from equations import Member, Wrong
from lesson import STEP_NUMBER
from truth import pieces, root

PULL = re.compile(r'^(?:E$|(?:[TSRWP]|R[xyz]|T\d+)(?:\(|$))')  # symbols that are forces of the report
RUNS = re.compile(r'^over (\S+), (\S+) runs from part (\d+) to part (\d+)\b')
COUNT = re.compile(r'^(\d+) parts?: the ideal advantage is (\d+)\.$')
ROPE = re.compile(r'^(\S+) h of rope (comes?|leaves?)(?: to)? (\S+) as the load rises by h\.$')
LOST = re.compile(r'(\S+ %) of the hand\'s work goes into friction\.')
SHEAVES = re.compile(r'the rope runs over (\d+) sheaves?, and the ideal advantage is (\d+)\.')
# How a closing sentence may tell of pull and way, and what has to be so of the ratio of the ways.
TRADES = (
    (re.compile(r'^Without friction the hand pulls (?:1/(\d+) of|(\S+) times) .* takes in rope (\S+) times as far'),
     lambda found, ratio: ratio > 1 and about(found[3], ratio)
     and (abs(ratio - int(found[1])) < 1e-6 if found[1] else about(found[2], 1 / ratio))),
    (re.compile(r'^Without friction the hand pulls just as much as .*, over the same way'),
     lambda found, ratio: abs(ratio - 1) < 1e-6),
    (re.compile(r'^Without friction the hand pulls about as much as .*, over about the same way'),
     lambda found, ratio: 0 < abs(ratio - 1) < 0.02),
    (re.compile(r'^Without friction the hand pulls (\S+) times .*, over (\S+) times the way of the load'),
     lambda found, ratio: ratio < 1 and about(found[1], 1 / ratio) and about(found[2], ratio)),
)
HOLDS = re.compile(r'^(At rest|While the load is raised)\b.*? holds? (\S+ \S+) upwards: '
                   r'(just|more|less)\b(?: than the (\S+ \S+) that)?')
PULLED = re.compile(r'^(At rest|While the load is raised)\b.*? pulled upwards, with (\S+ \S+): .* the (\S+ \S+) that')
ABOVE = re.compile(r'^And yet, at (\S+ \S+) it pulls more than the load\'s weight, (\S+ \S+): ')
BODY = re.compile(r'^The body (.+), cut free')
ROW = re.compile(r'^(?:part (\d+) of )?(\S+), to (\S+)$')


def figure(text):
    """The interval of a figure with its unit."""
    return Member(text).value(lambda name: None)


def about(text, value, noise=0.0):
    """Whether a figure stands for a value; `0` for all that is noise."""
    try:
        found = figure(text)
    except Wrong:
        return False
    return found.about(value) or (found.is_nothing() and abs(value) <= noise)


def symbols(lesson, context, truth):
    """Every value that is given to a symbol of a force is that of the report in its case."""
    known = {name: truth.symbols(name) for name in ('hold', 'raise') if truth.case(name)}
    known = known or {'hold': truth.weights()}
    for name, found in context.given.items():
        for position, value in found:
            element = context.entries[position][0]
            cases = [known[c] for c in known if element.case in (None, c)]
            if not PULL.match(name):
                continue
            if not any(name in case for case in cases):
                yield f'{element}: {name} is no force of {element.case or "the rig"}'
            elif not any(value.about(case[name]) or value.is_nothing() and abs(case[name]) <= truth.noise
                         for case in cases if name in case):
                yield f'{element}: {name} is {[case[name] for case in cases if name in case]}'


def ratios(lesson, context, truth):
    """Advantages, travel and efficiency are those of the report."""
    hold, up = truth.case('hold'), truth.case('raise')
    true = {('s', 'hold'): hold and hold['velocity_ratio'], ('A(distances)', 'hold'): hold and hold['velocity_ratio'],
            ('A(forces)', 'hold'): hold and hold['velocity_ratio'],
            ('A(load)', 'hold'): hold and hold['estimated_advantage'],
            ('A(estimated)', 'raise'): up and up['estimated_advantage'], ('e(rig)', 'raise'): up and up['efficiency']}
    for name, found in context.given.items():
        for position, value in found:
            element = context.entries[position][0]
            truly = true.get((name, element.case))
            if name.split('(')[0] in ('A', 'e') and truly is None:
                yield f'{element}: the report has no {name} in {element.case}'
            elif truly is not None and not value.about(truly):
                yield f'{element}: {name} is {truly}'
    # Where the hand holds back it gains nothing on the load alone.
    alone = hold and hold['velocity_ratio'] and hold['velocity_ratio'] > 0
    asked = [name for (name, case), value in true.items()
             if value is not None and name != 's' and (alone or name != 'A(load)')]
    if hold and truth.rig.hand and hold['velocity_ratio'] and hold['estimated_advantage']:
        for name in asked:
            if name.split('(')[1] != 'estimated)' and name[0] == 'A' and name not in context.given:
                yield f'{name} is not told'


def results(lesson, truth):
    """Sentences that hold figures of the report."""
    hold, up = truth.case('hold'), truth.case('raise')
    travel = {h['hand']: h['travel_ratio'] for h in (hold or up or {'hands': []})['hands']}
    for e in lesson.elements:
        if e.kind == 'pair' and (found := ROPE.match(e.text)):
            sign = 1 if found[2].startswith('come') else -1
            if not about(found[1], sign * travel[found[3]]):
                yield f'{e}: {travel[found[3]]}'
        if found := LOST.search(e.text):
            lost = 1 - up['efficiency']
            if not about(found[1], lost):
                yield f'{e}: {lost}'


def closing(lesson, truth):
    """What it means: the trade of pull for way, and what the supports hold."""
    hold, up, told = truth.case('hold'), truth.case('raise'), set()
    everything = sum(item.weight for item in truth.rig.items)
    for e in lesson.elements:
        if e.section != 'What it means':
            continue
        for form, is_so in TRADES:
            if found := form.match(e.text):
                told.add('trade')
                if not is_so(found, hold['velocity_ratio']):
                    yield f'{e}: {hold["velocity_ratio"]}'
        if found := ABOVE.match(e.text):
            force, weight = truth.symbols('hold')['E'], truth.rig.lifted.weight
            if not (about(found[1], force) and about(found[2], weight) and force > weight):
                yield f'{e}: {force} and {weight}'
        if found := HOLDS.match(e.text) or PULLED.match(e.text):
            told.add('supports')
            held = -sum(a['vector'][-1] for a in (hold if found[1] == 'At rest' else up)['anchors'])
            yield from supports(e, found, held, everything)
    if (hold or up) and truth.rig.of('anchor') and 'supports' not in told:
        yield 'the end does not tell what the supports hold'
    if hold and hold['estimated_advantage'] and hold['velocity_ratio'] > 0 and 'trade' not in told:
        yield 'the end does not tell what the hand gains'


def supports(element, found, held, everything):
    """A sentence about what the supports hold, against all that weighs."""
    if found.re is PULLED:
        right = about(found[2], -held) and about(found[3], everything)
    else:
        close = abs(held - everything) <= 1e-6 * everything
        right = about(found[2], held) and (not found[4] or about(found[4], everything))
        right = right and found[3] == ('just' if close else 'more' if held > everything else 'less')
    if not right:
        yield f'{element}: {held} of {everything}'


def counting(lesson, context, truth):
    """Parts are counted where that is valid, and nowhere else."""
    told = [(e, COUNT.match(e.text)) for e in lesson.elements if e.kind == 'pair' and COUNT.match(e.text)]
    count, why = truth.counted()
    for element, found in told:
        if count is None or int(found[1]) != count or int(found[2]) != count:
            yield f'{element}: {count} {why}'
    thumb = SHEAVES.search(lesson.words())
    if count and not told and truth.case('hold')['estimated_advantage']:
        yield f'{count} parts are not counted'
    if thumb:
        sheaves = truth.sheaves()
        if (int(thumb[1]), int(thumb[2])) != (sheaves, count):
            yield f'{thumb[0]}: {sheaves} sheaves, {count} parts'
        elif not all(v.about(truth.loads() * (1 + sheaves / 10) / count) for _, v in context.given['E(rule)']):
            yield f'the rule of thumb: {truth.loads()} on {count} parts over {sheaves} sheaves'
    if told:
        yield from bearing(lesson, truth)


def bearing(lesson, truth):
    """Which parts bear, and whether the one in the hand does."""
    parts = truth.bearing()
    for e in lesson.elements:
        if 'Counting the parts' not in e.step:
            continue
        if e.kind == 'pair' and re.match(r'^\d+( to \d+|[\d, and]*)*$', e.text):
            told = re.sub(r'(\d+) to (\d+)', lambda m: ' '.join(map(str, range(int(m[1]), int(m[2]) + 1))), e.text)
            if [int(n) for n in re.findall(r'\d+', told)] != parts:
                yield f'{e}: {parts}'
        if found := re.match(r'^The part (?:that goes to|in) \S+ (counts|does not count): ', e.text):
            rope, _ = truth.hauled()
            last = len(rope.stops) - 1 if rope.stops[-1][0] is truth.rig.hand else 1
            if (found[1] == 'counts') != (last in parts):
                yield f'{e}: {parts}'


def directions(lesson, truth):
    """The tables of bodies cut free: every part that acts, and the way it pulls."""
    for table in lesson.tables:
        found = BODY.match(STEP_NUMBER.sub('', table.step))
        if not found or table.rows[0][:2] != ['what acts', 'called'] or not truth.case(table.case):
            continue
        body = truth.rig.named(found[1].split(' with ')[0])
        places, pulls = truth.places(table.case), 0
        for row in table.rows[1:]:
            part = ROW.match(row[0])
            if not part:
                if not ('weight of' in row[0] and row[2:] in (['down'], ['0', '-1'], ['0', '0', '-1'])):
                    yield f'{table.step}: {row}'
                continue
            pulls += 1
            line, other = truth.rig.named(part[2]), truth.rig.named(part[3])
            ends = [[root(thing) for thing, _ in line.stops[k:k + 2]] for k in range(len(line.stops) - 1)]
            k = int(part[1]) - 1 if part[1] else 0
            if body not in ends[k] or root(other) not in ends[k]:
                yield f'{table.step}: {row[0]} is not there'
                continue
            way = [b - a for a, b in zip(places[body], places[root(other)])]
            size = math.hypot(*way)
            right = (row[2] == ('up' if way[0] > 0 else 'down') if len(way) == 1
                     else all(about_cosine(cell, x / size) for cell, x in zip(row[2:], way)))
            if not right:
                yield f'{table.step}: {row}: {way}'
        yield from all_listed(table, truth, body, pulls)


def about_cosine(cell, value):
    return about(cell, value) or (abs(value) < 1e-6 and cell == '0')


def all_listed(table, truth, body, pulls):
    """Every part at the body that pulls has its row, unless the lesson says how many it leaves out."""
    tensions, expected = truth.tensions(table.case), 0
    most = max(abs(t) for each in tensions.values() for t in each)
    for line, each in tensions.items():
        for k, tension in enumerate(each):
            ends = [root(thing) for thing, _ in line.stops[k:k + 2]]
            expected += ends.count(body) * (abs(tension) > 1e-7 * most)
    if pulls < expected and pulls < 40:
        yield f'{table.step}: {pulls} pulls listed, {expected} act'


def senses(lesson, truth):
    """Friction makes the part greater towards which the rope is said to run."""
    up = truth.case('raise')
    if not up:
        return
    tensions = truth.tensions('raise')
    for e in lesson.elements:
        if e.kind == 'bullet' and (found := RUNS.match(e.text)):
            each = tensions[truth.rig.named(found[2])]
            line = truth.rig.named(found[2])
            a, b = int(found[3]) - 1, int(found[4]) - 1
            if each[b] < each[a] * (1 - 1e-9) or line.stops[max(a, b)][0].name != found[1]:
                yield f'{e}: {each[a]}, {each[b]}'


def tables(lesson, truth):
    """Pulls and supports that stand in tables."""
    known = {name: truth.symbols(name) for name in ('hold', 'raise') if truth.case(name)}
    upward = {1: 'R', 2: 'Rz', 3: 'Rz'}[truth.rig.dim]
    for table in lesson.tables:
        head = table.rows[0]
        for row in table.rows[1:]:
            if head == ['part', 'called', 'pull'] and not about(row[2], known[table.case].get(row[1], math.nan),
                                                                      truth.noise):
                yield f'{table.step}: {row}: {known[table.case].get(row[1])}'
            if head[0] == 'support':
                for column, case in (('at rest', 'hold'), ('raising', 'raise')):
                    if column in head:
                        true = known[case][f'{upward}({row[0]})']
                        if not about(row[head.index(column)], true, truth.noise):
                            yield f'{table.step}: {row}: {true}'


def altogether(lesson, truth):
    """The size of what a support holds."""
    for step, case, text in ((e.step, e.case, e.text) for e in lesson.elements
                             if e.kind == 'pair' and e.section == 'Support'):
        found = re.match(r'\d+\. What (the track of )?(\S+) holds', step)
        if not found or not re.match(r'^[\d.]+ (N|kN|lbf|kip)$', text):
            continue
        kind, key = ('guides', 'thing') if found[1] else ('anchors', 'anchor')
        true = next(x['force'] for x in truth.case(case)[kind] if x[key] == found[2])
        if not about(text, true):
            yield f'{step}: {text}: {true}'


def ideal(lesson):
    """No word of friction's figures."""
    for word in ('Friction', 'Efficiency', "The handbook's rule of thumb"):
        if word in lesson.sections():
            yield f'a section of friction: {word}'
    words = ' '.join(e.text for e in lesson.elements if e.kind != 'title')
    for word in (r'\bk\d', r'efficiency', r'estimated', r'\bratio k', r' %', r'[Cc]oefficient', r'with friction'):
        if found := re.search(r'.{0,40}' + word + r'.{0,20}', words):
            yield f'a word of friction: {found[0]}'


def roads(lesson, truth):
    """The two roads to the ideal advantage agree as printed."""
    for table in lesson.tables:
        if table.rows[0][-1] != 'Ideal advantage':
            continue
        a, b = (row[-1] for row in table.rows[1:3])
        if a != b:
            yield f'{table.step}: {a} by distances, {b} by forces'


def efforts(lesson, context, truth, name):
    """Where somebody hauls the effort is told, in each case that is told."""
    if not truth.rig.hand or name == 'distances':
        return
    told = {context.entries[k][0].case for k, _ in context.given.get('E', [])}
    if truth.case('hold') and 'hold' not in told:
        yield 'no effort at rest'
    friction = any(thing.slip and thing.slip[1] > 0 for thing in truth.running())
    if truth.case('raise') and friction and name not in ('ideal',) and 'raise' not in told:
        yield 'no effort to raise'


def untold(lesson, truth, name):
    """What a lesson may not leave out, so that a check that finds nothing has nothing to find."""
    hold, up = truth.case('hold'), truth.case('raise')
    words = [e.text for e in lesson.elements]
    hauled = truth.rig.hand and hold and hold['estimated_advantage']
    if hauled and name != 'forces' and not any(ROPE.match(text) for text in words):
        yield 'no rope comes to the hand'
    if hold and name != 'distances' and not any('called' in table.rows[0] for table in lesson.tables):
        yield 'no body is cut free'
    if name not in ('page', 'forces') or not up:
        return
    if up['efficiency'] is not None and 0 < up['efficiency'] < 0.999 and not any(LOST.search(t) for t in words):
        yield 'nothing is said of what friction takes'
    tensions = truth.tensions('raise')
    differ = sum(abs(a - b) > 1e-6 * max(a, b) + truth.noise and cut[k] == cut[k + 1]
                 for line, each in tensions.items() for cut in [pieces(line)]
                 for k, (a, b) in enumerate(zip(each, each[1:])))
    runs = sum(bool(RUNS.match(text)) for text in words)
    if runs < min(differ, 40):
        yield f'{differ} stops rub, {runs} are told'


def claims(lesson, context, truth, name):
    """Every claim of a lesson that is not so. `name` is how it was asked for."""
    yield from symbols(lesson, context, truth)
    yield from ratios(lesson, context, truth)
    yield from results(lesson, truth)
    yield from closing(lesson, truth)
    yield from counting(lesson, context, truth)
    yield from directions(lesson, truth)
    yield from senses(lesson, truth)
    yield from tables(lesson, truth)
    yield from altogether(lesson, truth)
    yield from roads(lesson, truth)
    yield from efforts(lesson, context, truth, name)
    yield from untold(lesson, truth, name)
    if name == 'ideal':
        yield from ideal(lesson)
