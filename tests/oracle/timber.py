"""What a piece of timber weighs, from what docs/timber.md promises. Only for files that are known to be right."""
import math
import re

LENGTHS = {'m': 1.0, 'cm': 1e-2, 'mm': 1e-3, 'ft': 0.3048, 'in': 0.0254}
DENSITIES = {'kg/m3': 1.0, 'lb/ft3': 0.45359237 / 0.3048 ** 3}
SPREAD = 1.2       # a single figure can be wrong by 20 %
SUBSTANCE = 1.54   # specific gravity of wood without any hollow
MEASURED = ('species', 'density', 'length', 'diameter', 'bark', 'density end')


def length(text):
    return sum(float(value) * LENGTHS[unit] for value, unit in re.findall(r'([\d.]+(?:e-?\d+)?)\s*([a-z]+)', text.lower()))


def density(text):
    value, unit = re.fullmatch(r'([\d.]+(?:e[-+]?\d+)?)\s*(\S+)', text.strip()).groups()
    return float(value) * DENSITIES[unit.lower()]


def volume(keys):
    """Smalian's, Huber's or Newton's: all of them are Simpson's rule with what is known of the middle."""
    bark = length(keys['bark']) if 'bark' in keys else 0.0
    areas = [math.pi * (length(part) / 2 + bark) ** 2 for part in keys['diameter'].split(',')]
    first, last = areas[0], areas[-1]
    middle = areas[1] if len(areas) == 3 else first if len(areas) == 1 else (first + last) / 2
    return length(keys['length']) * (first + 4 * middle + last) / 6


def of_row(row, end):
    """A row's density at an end of its spread."""
    gravity = float(row.keys['specific gravity']) if 'specific gravity' in row.keys else None
    if 'density' in row.keys:
        mean = density(row.keys['density'])
    else:
        mean = gravity * 1e3 * (1 + float(row.keys['moisture'].strip('% ')) / 100)
    if end == 'mean':
        return mean
    if 'heavy' in row.keys:
        return density(row.keys['heavy'])
    soaked = math.inf if gravity is None else 1e3 * (1 - gravity / SUBSTANCE) + 1e3 * gravity
    return min(SPREAD * mean, soaked)


def weigh(keys, tables):
    """Put the mass in the place of what was measured."""
    if 'species' not in keys and 'density' not in keys:
        return
    end = keys.get('density end', 'heavy')
    if 'species' in keys:
        dense = of_row(tables.find('green-wood', '-'.join(keys['species'].split())), end)
    else:
        ends = [density(part) for part in keys['density'].split('..')]
        dense = sum(ends) / len(ends) if end == 'mean' else ends[-1]
    mass = volume(keys) * dense
    for key in MEASURED:
        keys.pop(key, None)
    keys['mass'] = f'{mass!r} kg'
