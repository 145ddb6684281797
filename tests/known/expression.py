"""Figures of a known case: numbers with units, and paths into what the command prints.

    raise.hands.crew.force / 6000 lbf        a ratio of a figure of the report and a known force
    hold.anchors.beam.from_vertical * 2      angles are radians inside, whatever unit stands outside
    hold.lines.fall.2.tension                the second part of a line, in path order
    hold.places.crate.at.height              one coordinate: across, along or height
    drop.drop.peak                           what a case has beside its lists: of a drop its peak
    components.fall.utilisation, verdict     of the rig as a whole
    components.fall.chain.knot.factor        a step by the beginning of its `what`, `-` for a blank
    rope_bill.ropes.fall.to_hand             of a rope of the rope bill
    balance.arbor.needed                     what has to be in an arbor for balance
    raise.band.hands.crew.most               between what a force lies where friction is a range
    posts.post.turns.1.to_hold               of a post with one turn; in a list without names by number, from 0
    limit.mass / 1000 kg                     of `gantline limit`
    hardware.clip.half-inch.spacing          a key of a row of the shipped tables

Words stand apart by blanks, brackets group, `*` and `/` bind tighter than `+` and `-`.
"""
import math
import re

# To SI. Pound, pounds-force, kilogram-force, foot and inch are exact (NIST SP 811); `tf` is 1,000 kgf.
UNITS = {
    'N': 1.0, 'J': 1.0, 'kN': 1e3, 'lbf': 4.4482216152605, 'kip': 4448.2216152605, 'kgf': 9.80665, 'tf': 9806.65,
    'kg': 1.0, 'lb': 0.45359237, 'm': 1.0, 'mm': 1e-3, 'ft': 0.3048, 'in': 0.0254, 'deg': math.pi / 180, 'rad': 1.0, '%': 0.01,
    'cm': 1e-2, 'm3': 1.0, 'ft3': 0.3048**3, 'kg/m3': 1.0, 'lb/ft3': 0.45359237 / 0.3048**3,
}
AXES = {'across': 0, 'along': 1, 'height': -1}
CASES = ('hold', 'raise', 'lower', 'jam', 'start', 'stop', 'drop')
# The key that holds the name of an entry, by the list that it stands in.
NAMED_BY = {'cases': 'case', 'lines': 'line', 'blocks': 'block', 'joints': 'joint', 'anchors': 'anchor',
            'guides': 'thing', 'hands': 'hand', 'places': 'thing', 'components': 'component', 'chain': 'what',
            'head_fittings': 'block', 'parts': 'component', 'next': 'component', 'needed': 'component',
            'battens': 'batten', 'picks': 'pick', 'balance': 'arbor',
            'ropes': 'rope', 'strains': 'component', 'warnings': 'code', 'loads': 'load',
            'posts': 'post'}


class Unanswered(Exception):
    """No answer holds the figure asked for; the text says why."""


def evaluate(text, answers):
    """The value of an expression in SI, or the word or truth value that its path leads to."""
    words = text.replace('(', ' ( ').replace(')', ' ) ').split()
    value, rest = _sum(words, answers)
    if rest:
        raise ValueError(f'"{rest[0]}" is not expected in "{text}"')
    return value


def _sum(words, answers):
    value, words = _product(words, answers)
    while words and words[0] in '+-':
        other, rest = _product(words[1:], answers)
        value = value + other if words[0] == '+' else value - other
        words = rest
    return value, words


def _product(words, answers):
    value, words = _factor(words, answers)
    while words and words[0] in '*/':
        other, rest = _factor(words[1:], answers)
        value = value * other if words[0] == '*' else value / other
        words = rest
    return value, words


def _factor(words, answers):
    if not words:
        raise ValueError('the expression ends too early')
    word, rest = words[0], words[1:]
    if word == '(':
        value, rest = _sum(rest, answers)
        if not rest or rest[0] != ')':
            raise ValueError('a bracket is not closed')
        return value, rest[1:]
    try:
        number = float(word)
    except ValueError:
        return _figure(word, answers), rest
    if rest and rest[0] in UNITS:
        return number * UNITS[rest[0]], rest[1:]
    return number, rest


def _figure(path, answers):
    """What stands in the answers at a path."""
    head, *steps = path.split('.')
    if head == 'hardware':
        value = _row(answers[f'hardware {steps[1]}'], steps, path)
    elif head == 'limit':
        value = _walk(answers['limit'], steps, path)
    elif head in CASES or head.startswith('lost-'):
        value = _case(answers['report'], head, steps, path)
    else:
        value = _walk(answers['report'], [head] + steps, path)
    if value is None:
        raise Unanswered(f'{path} is null')
    return value


def _case(report, name, steps, path):
    case = _walk(report, ['cases', name], path)
    if not case['possible'] and steps != ['possible']:
        raise Unanswered(f'{name} cannot be: {case["why"]}')
    return _walk(case, steps, path)


def _walk(value, steps, path):
    """Down through dictionaries by key, and through lists by axis or by name."""
    inside = ''
    while steps:
        step, *steps = steps
        if isinstance(value, list) and step in AXES:
            value = value[AXES[step]]
        elif isinstance(value, list) and inside in NAMED_BY:
            value, steps = _pick(value, NAMED_BY[inside], step, steps, path)
        elif isinstance(value, list) and step.isdigit() and int(step) < len(value):
            value = value[int(step)]
        elif isinstance(value, dict) and step in value:
            value = value[step]
        else:
            raise Unanswered(f'{path} is not in the answer')
        inside = step
    return value


def _pick(items, key, name, steps, path):
    """The one entry of a name; of several with the same name the one whose number follows."""
    names = [item[key].replace(' ', '-') for item in items]
    found = [item for item, at in zip(items, names) if at == name or key == 'what' and at.startswith(name + '-')]
    if steps and steps[0].isdigit():
        found, steps = found[int(steps[0]) - 1:int(steps[0])], steps[1:]
    if len(found) != 1:
        raise Unanswered(f'{path} names {len(found)} entries of the answer, not one')
    return found[0], steps


def _row(text, steps, path):
    """A key of a row of the shipped tables as `gantline hardware` prints it: a quantity, or words."""
    kind, name, key = steps
    header, rows = f'[{kind} {name}]', re.split(r'^(?=\[)', text, flags=re.M)
    for row in rows:
        match = re.search(rf'^{key.replace("-", " ")}  +(.*)$', row, re.M)
        if not row.startswith(header) or not match:
            continue
        try:
            return evaluate(match.group(1), {})
        except (KeyError, ValueError):
            return match.group(1)
    raise Unanswered(f'{path} is not in the tables')
