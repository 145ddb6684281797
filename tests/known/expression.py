"""Figures of a known case: numbers with units, and paths into the report as JSON.

    raise.hands.crew.force / 6000 lbf        a ratio of a figure of the report and a known force
    hold.anchors.beam.from_vertical * 2      angles are radians inside, whatever unit stands outside
    hold.lines.fall.2.tension                the second part of a line, in path order
    hold.places.crate.at.height              one coordinate: across, along or height
    components.fall.utilisation, verdict     of the rig as a whole

Words stand apart by blanks, brackets group, `*` and `/` bind tighter than `+` and `-`.
"""
import math

# To SI. Pounds-force, kilogram-force, foot and inch are exact (NIST SP 811); `tf` is 1,000 kgf.
UNITS = {
    'N': 1.0, 'kN': 1e3, 'lbf': 4.4482216152605, 'kip': 4448.2216152605, 'kgf': 9.80665, 'tf': 9806.65,
    'm': 1.0, 'ft': 0.3048, 'in': 0.0254, 'deg': math.pi / 180, 'rad': 1.0, '%': 0.01,
}
AXES = {'across': 0, 'along': 1, 'height': -1}
CASES = ('hold', 'raise', 'lower')
NAME_KEYS = {'lines': 'line', 'blocks': 'block', 'joints': 'joint', 'anchors': 'anchor',
             'guides': 'thing', 'hands': 'hand', 'places': 'thing'}


class Unanswered(Exception):
    """The report does not hold the figure asked for; the text says why."""


def evaluate(text, report):
    """The value of an expression in SI, or the word or truth value that its path leads to."""
    words = text.replace('(', ' ( ').replace(')', ' ) ').split()
    value, rest = _sum(words, report)
    if rest:
        raise ValueError(f'"{rest[0]}" is not expected in "{text}"')
    return value


def _sum(words, report):
    value, words = _product(words, report)
    while words and words[0] in '+-':
        other, rest = _product(words[1:], report)
        value = value + other if words[0] == '+' else value - other
        words = rest
    return value, words


def _product(words, report):
    value, words = _factor(words, report)
    while words and words[0] in '*/':
        other, rest = _factor(words[1:], report)
        value = value * other if words[0] == '*' else value / other
        words = rest
    return value, words


def _factor(words, report):
    if not words:
        raise ValueError('the expression ends too early')
    word, rest = words[0], words[1:]
    if word == '(':
        value, rest = _sum(rest, report)
        if not rest or rest[0] != ')':
            raise ValueError('a bracket is not closed')
        return value, rest[1:]
    try:
        number = float(word)
    except ValueError:
        return _figure(word, report), rest
    if rest and rest[0] in UNITS:
        return number * UNITS[rest[0]], rest[1:]
    return number, rest


def _figure(path, report):
    """What stands in the report at a path."""
    steps = path.split('.')
    if steps[0] in CASES:
        value = _case(report, steps[0], steps[1:])
    elif steps[0] == 'components':
        value = _walk(_only(report.get('components', []), 'component', steps[1], path), steps[2:], path)
    else:
        value = _walk(report, steps, path)
    if value is None:
        raise Unanswered(f'{path} is null')
    return value


def _case(report, name, steps):
    case = _only(report.get('cases', []), 'case', name, name)
    path = '.'.join([name] + steps)
    if not case['possible'] and steps != ['possible']:
        raise Unanswered(f'{name} cannot be: {case["why"]}')
    if steps[0] not in NAME_KEYS:
        return _walk(case, steps, path)
    found = [item for item in case.get(steps[0], []) if item.get(NAME_KEYS[steps[0]]) == steps[1]]
    steps = steps[1:]
    if steps[1:] and steps[1].isdigit():
        found = found[int(steps[1]) - 1:int(steps[1])]
        steps = steps[1:]
    if len(found) != 1:
        raise Unanswered(f'{path} names {len(found)} entries of the report, not one')
    return _walk(found[0], steps[1:], path)


def _only(items, key, name, path):
    for item in items:
        if item[key] == name:
            return item
    raise Unanswered(f'{path} is not in the report')


def _walk(value, steps, path):
    for step in steps:
        if isinstance(value, list) and step in AXES:
            value = value[AXES[step]]
        elif isinstance(value, dict) and step in value:
            value = value[step]
        else:
            raise Unanswered(f'{path} is not in the report')
    return value
