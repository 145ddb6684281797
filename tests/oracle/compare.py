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
    for key in ('velocity_ratio', 'estimated_advantage', 'efficiency'):
        if differ(mine.get(key), theirs[key], 1.0):
            yield f'{case}: {key}: {mine.get(key)!r}, printed {theirs[key]!r}'
    if mine['undecided'] != set(theirs['undecided']):
        yield f'{case}: undecided: {sorted(mine["undecided"])}, printed {sorted(set(theirs["undecided"]))}'


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
            yield f'{printed["case"]}: possible {own is not None}, printed {printed["possible"]} {printed["why"]}'
        elif own:
            yield from compare_case(own, printed, force, size, more)
    rows = {row['component']: row for row in theirs['components']}
    if set(rows) != set(mine['components']):
        yield f'components {sorted(set(rows) ^ set(mine["components"]))} stand on one side only'
        return
    for name, own in mine['components'].items():
        row = rows[name]
        if more and None not in (own['demand'], row['demand']) and row['demand'] >= own['demand'] * (1 - RELATIVE):
            continue
        if differ(own['demand'], row['demand'], force):
            yield f'component {name} demand: {own["demand"]!r}, printed {row["demand"]!r}'
        if own['status'] != row['status']:
            yield f'component {name} status: {own["status"]}, printed {row["status"]}'
    if not more and mine['verdict'] != theirs['verdict']:
        yield f'verdict {mine["verdict"]}, printed {theirs["verdict"]}'
    if status != EXIT[theirs['verdict']]:
        yield f'exit status {status} with verdict {theirs["verdict"]}'
