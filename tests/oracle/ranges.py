"""Rigs whose friction is a range: each combination of the ranges' ends is a rig of its own, worked by the oracle."""
import collections
import itertools
import os

import compare
import judge
import rigfile

MOST = 6  # ranges, of which every combination is worked


def worked(text, folder, ends):
    return judge.report(rigfile.read(rigfile.at_ends(text, lambda k: ends[k]), folder))


def passed_twice(rig):
    """Whether rope runs over a body more than once: then the program has each pass at an end of its own."""
    runs = collections.Counter(stop.name for line in rig.of('rope') for stop, _ in line.stops[1:-1])
    return any(count > 1 for count in runs.values())


def compare_demands(reports, printed, exact):
    """Every demand is the worst of all the rigs."""
    rows = {row['component']: row['demand'] for row in printed['components']}
    for name, demand in rows.items():
        found = [report['components'][name]['demand'] for report in reports]
        most = max((d for d in found if d is not None), default=None)
        if most is None or demand is None:
            if most != demand:
                yield f'component {name} demand: {most!r}, printed {demand!r}'
        elif demand < most * (1 - compare.RELATIVE) or exact and demand > most * (1 + compare.RELATIVE):
            yield f'component {name} demand: {most!r} of {len(reports)} rigs, printed {demand!r}'


def compare_bands(reports, printed, exact):
    """The pulls of the hands lie between the least and the most of all the rigs."""
    for case in printed['cases']:
        for hand in case['band']['hands'] if case['band'] else ():
            own = [r['cases'][case['case']] for r in reports if r['cases'][case['case']]]
            pulls = [c['hands'][hand['hand']]['force'] for c in own]
            if not pulls or hand['least'] is None:
                continue
            slack = compare.RELATIVE * max(abs(pull) for pull in pulls)
            if exact and (abs(hand['least'] - min(pulls)) > slack or abs(hand['most'] - max(pulls)) > slack):
                yield f'{case["case"]}: {hand}, of the rigs {min(pulls)!r} to {max(pulls)!r}'


def check(text, path, printed):
    """Every disagreement of a printed report with the rigs that the file may be."""
    folder, count = os.path.dirname(path), len(rigfile.RANGE.findall(text))
    if count > MOST:
        return
    reports = [worked(text, folder, ends) for ends in itertools.product((False, True), repeat=count)]
    exact = not passed_twice(rigfile.read(text, folder))
    yield from compare_demands(reports, printed, exact)
    yield from compare_bands(reports, printed, exact)
    for case in printed['cases']:
        own = reports[-1 if case['band'] and case['band']['least_friction_printed'] else 0]
        mine = own['cases'][case['case']]
        if case['possible'] and mine:  # blocks and fairleads have the worst of all rigs
            yield from compare.compare_case(mine, case, own['force'], own['size'], True)
