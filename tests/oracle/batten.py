"""Battens: what comes down on each pick, and the picks as loads. Beams are worked by the finite elements of
tests/unit/beam_oracle.py, bars on springs by least energy: not by the program's three-moment equations."""
import os
import sys

import numpy as np

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), '..', 'unit'))

from beam_oracle import Beam  # noqa: E402

NEXT_TO_NOTHING = 2e-9  # a slack line's: less would leave its pick unheld here
A_LENGTH = {'kg/m': 1.0, 'lb/ft': 0.45359237 / 0.3048}


def weight_of(keys, length, gravity, tables, read):
    """The bare batten's."""
    if 'pipe' in keys:
        value, unit = tables.find('pipe', keys['pipe']).keys['weight'].split()
        return float(value) * A_LENGTH[unit] * length * gravity
    return read.force(keys['mass'] if 'mass' in keys else keys['weight'], gravity)


def loads_of(keys, gravity, read):
    """What hangs along it: weight, from, to."""
    for text in keys['loads'].split(',') if 'loads' in keys else []:
        if ' from ' in text:
            what, where = text.split(' from ')
            start, end = (read.number(place, read.LENGTHS) for place in where.split(' to '))
        else:
            what, where = text.split(' at ')
            start = end = read.number(where, read.LENGTHS)
        yield read.force(what, gravity), start, end


def picks_of(name, keys, gravity, tables, springs, read):
    """A batten's picks as sections of loads."""
    length = read.number(keys['length'], read.LENGTHS)
    places = dict((word.split(' at ')[0].strip(), read.number(word.split(' at ')[1], read.LENGTHS))
                  for word in keys['picks'].split(','))
    order = sorted(places, key=places.get)
    loads = [(weight_of(keys, length, gravity, tables, read), 0.0, length), *loads_of(keys, gravity, read)]
    beam = Beam(length, [places[pick] for pick in order], [load for load in loads if load[0] > 0])
    if len(order) == 1:
        shares = [beam.weight()]
    else:
        shares = beam.on_springs() if springs else beam.on_lines(np.zeros(len(order)))
    at = [read.number(place, read.LENGTHS) for place in keys['at'].split(',')]
    for pick, share in zip(order, shares):
        place = [at[0] + places[pick], *at[1:]] if len(at) > 1 else at
        weight = max(share, NEXT_TO_NOTHING * beam.weight())
        yield 'load', pick, {'at': ', '.join(f'{float(x)!r} m' for x in place), 'weight': f'{float(weight)!r} N',
                             'batten': name.lower()}


def spread_out(found, gravity, tables, springs, read):
    """The sections of a file, its battens as their picks."""
    rest = [section for section in found if section[0] != 'batten']
    for kind, name, keys in found:
        if kind == 'batten':
            rest += picks_of(name, keys, gravity, tables, springs, read)
    return rest


def is_open(found):
    """Whether more than two lines share a batten, so that there are two ways to do so."""
    return any(kind == 'batten' and keys['picks'].count(',') > 1 for kind, _, keys in found)
