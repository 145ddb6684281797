"""Holds a printed report against the oracle's, figure by figure."""
import numpy as np

RELATIVE = 1e-6
EXIT = {'within': 0, 'over': 1, 'unrated': 3}


def differ(mine, theirs, scale):
    """True where two figures disagree; the smallest that counts is a share of `scale`."""
    if mine is None or theirs is None:
        return (mine is None) != (theirs is None)
    mine, theirs = np.atleast_1d(np.asarray(mine, float)), np.atleast_1d(np.asarray(theirs, float))
    if mine.shape != theirs.shape:
        return True
    greatest = max(np.abs(mine).max(), np.abs(theirs).max())
    return not np.abs(mine - theirs).max() <= RELATIVE * max(greatest, 1e-2 * scale)


def compare_case(mine, theirs, force, size, more):
    case = mine['case']
    turns_freely = mine['sound'] < 1e-7  # each search leaves such a part where it likes: only heights are told
    for part, other in zip(mine['lines'], theirs['lines'], strict=True):
        if part[:3] != (other['line'], other['from'], other['to']) or differ(part[3], other['tension'], force):
            yield f'{case}: part {part[0]} {part[1]}-{part[2]}: {part[3]!r}, printed {other["tension"]!r}'
    for table, label in (('blocks', 'block'), ('joints', 'joint'), ('anchors', 'anchor'), ('guides', 'thing'),
                         ('hands', 'hand'), ('places', 'thing')):
        printed = {row[label]: row for row in theirs[table]}
        if set(printed) != set(mine[table]):
            yield f'{case}: {table}: {sorted(mine[table])}, printed {sorted(printed)}'
            continue
        for name, row in mine[table].items():
            for key, value in row.items():
                other = printed[name][key]
                if table == 'places' and turns_freely:
                    if key == 'moved':
                        continue
                    value, other = value[-1:], other[-1:]
                scale = size if table == 'places' else 1.0 if key == 'travel_ratio' else force
                if more and table == 'blocks' and key == 'force' and other > value:
                    continue
                if differ(value, other, scale):
                    yield f'{case}: {table} {name} {key}: {value!r}, printed {other!r}'
    for key in DROP_KEYS if 'drop' in mine else ():
        if differ(mine['drop'][key], theirs['drop'][key], 0.0):
            yield f'{case}: {key}: {mine["drop"][key]!r}, printed {theirs["drop"][key]!r}'
    for key in ('velocity_ratio', 'estimated_advantage', 'efficiency'):
        if differ(mine.get(key), theirs[key], 1.0):
            yield f'{case}: {key}: {mine.get(key)!r}, printed {theirs[key]!r}'
    if mine['loose'] != set(theirs['loose']) or mine['factor'] != theirs['factor']:
        yield (f'{case}: loose {sorted(mine["loose"])}, factor {mine["factor"]}, printed {theirs["loose"]}, '
               f'{theirs["factor"]}')
    if (mine['undecided'] ^ set(theirs['undecided'])) - mine['limp']:
        yield f'{case}: undecided: {sorted(mine["undecided"])}, printed {sorted(set(theirs["undecided"]))}'


DROP_KEYS = ('peak', 'checked', 'weight', 'stiffness')
REFUSABLE = ('jam', 'start', 'stop', 'lost')


def refused(printed):
    """Cases of which the program says that it finds no figures: it may be more cautious than the oracle there."""
    return {case['case'] for case in printed['cases']
            if case['case'].split()[0] in REFUSABLE and not case['possible'] and ' falls: ' not in case['why']}


def steps_of(row):
    return [(step['what'], step['factor']) for step in row['chain']]


def compare_component(name, own, row, force, more):
    if more and None not in (own['demand'], row['demand']) and row['demand'] >= own['demand'] * (1 - RELATIVE):
        return
    if own['status'] != row['status']:
        yield f'component {name} status: {own["status"]}, printed {row["status"]}'
    if differ(own['demand'], row['demand'], force):
        yield f'component {name} demand: {own["demand"]!r}, printed {row["demand"]!r}'
    if own['status'] == 'idle' or own['demand'] is None:
        return
    if row['case'] not in own['cases']:
        yield f'component {name} case: {sorted(own["cases"])}, printed {row["case"]}'
    used = own['utilisation'] if own['utilisation'] != np.inf else None
    for key, value in (('capacity', own['capacity']), ('utilisation', used)):
        if differ(value, row[key], 0.0):
            yield f'component {name} {key}: {value!r}, printed {row[key]!r}'
    steps = [(step.what, step.factor) for step in own['chain'] or []]
    if [what for what, _ in steps] != [what for what, _ in steps_of(row)] or any(
            differ(a, b, 0.0) for (_, a), (_, b) in zip(steps, steps_of(row))):
        yield f'component {name} chain: {steps}, printed {steps_of(row)}'


def compare_gear(mine, theirs, force):
    key = lambda row: row['parts']
    for own, row in zip(sorted(mine['chains'], key=key), sorted(theirs['chains'], key=key)):
        if own['parts'] != row['parts'] or differ(own['utilisation'], row['utilisation'], 0.0):
            yield f'chain {own}, printed {row}'
        elif own['weakest'] != row['weakest']:
            alike = [mine['components'][name]['utilisation'] for name in (own['weakest'], row['weakest']) if name]
            if len(alike) < 2 or differ(alike[0], alike[1], 0.0):
                yield f'chain {own}, printed {row}'
    if len(mine['chains']) != len(theirs['chains']):
        yield f'{len(mine["chains"])} chains of gear, printed {len(theirs["chains"])}'
    heads = {row['block']: row for row in theirs['head_fittings']}
    if set(heads) != {row['block'] for row in mine['head_fittings']}:
        yield f'head fittings {mine["head_fittings"]}, printed {theirs["head_fittings"]}'
        return
    for own in mine['head_fittings']:
        row = heads[own['block']]
        # Where friction may act either way the program holds the fitting against the whole line's worst.
        exact = not differ(own['needed'], row['needed'], force)
        between = own['needed'] < row['needed'] <= own['most'] * (1 + RELATIVE)
        status = own['status'] if exact or row['capacity'] is None else (
            'over' if row['needed'] > row['capacity'] * (1 + 1e-9) else 'within')
        if (not (exact or mine['varied'] and between) or differ(own['capacity'], row['capacity'], 0.0)
                or (own['fitting'], status) != (row['fitting'], row['status'])):
            yield f'head fitting {own}, printed {row}'
    asked = theirs['use'] and {part['component']: part['asked'] for part in theirs['use']['parts']}
    if mine['use'] != asked:
        yield f'use {sorted(set((mine["use"] or {}).items()) ^ set((asked or {}).items()), key=str)}'
    rows = {row['part']: row['row'] for row in theirs['hardware']}
    if mine['hardware'] != rows:
        yield f'hardware {mine["hardware"]}, printed {rows}'


def short_of(mine, theirs):
    """Demands that are less than those of another way in which the rig may be."""
    rows = {row['component']: row for row in theirs['components']}
    for name, own in mine['components'].items():
        if own['demand'] is not None and not rows[name]['demand'] >= own['demand'] * (1 - RELATIVE):
            yield f'component {name} demand: at least {own["demand"]!r}, printed {rows[name]["demand"]!r}'


def compare(mine, theirs, status):
    """Every disagreement, one text each."""
    force, size = mine['force'], mine['size']
    # Demands may then be greater than the oracle's, which knows one place and perhaps not every variant.
    more = mine['unsure'] or any(w['code'] == 'several-places' for w in theirs['warnings'])
    if mine['scope'] != theirs['scope']:
        yield f'scope {mine["scope"]}, printed {theirs["scope"]}'
        return
    for printed in theirs['cases']:
        own = mine['cases'][printed['case']]
        if (own is not None) != printed['possible']:
            yield (f'{printed["case"]}: possible {own is not None} {mine["why"].get(printed["case"])}, '
                   f'printed {printed["possible"]} {printed["why"]}')
        elif own:
            yield from compare_case(own, printed, force, size, more)
    rows = {row['component']: row for row in theirs['components']}
    if set(rows) != set(mine['components']):
        yield f'components {sorted(set(rows) ^ set(mine["components"]))} stand on one side only'
        return
    for name, own in mine['components'].items():
        yield from compare_component(name, own, rows[name], force, more)
    if not more:
        yield from compare_gear(mine, theirs, force)
    if not more and mine['verdict'] != theirs['verdict']:
        yield f'verdict {mine["verdict"]}, printed {theirs["verdict"]}'
    if status != EXIT[theirs['verdict']]:
        yield f'exit status {status} with verdict {theirs["verdict"]}'
