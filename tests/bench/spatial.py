"""The rig of spatial.ini by a general root finder: the same forces, and how long it takes.

usage: spatial.py COMMAND RIG MICROSECONDS, the last as the engine takes for the same three cases

The equations stand here on their own: balance of apex and tail, legs kept at their drawn lengths, the load at its height.
Each case starts from the drawing, as the engine's does.
"""
import json
import math
import subprocess
import sys
import time

import numpy
from scipy.optimize import root

G = 9.80665
ANCHORS = numpy.array([[0, 4, 8], [4, 0, 7.5], [-3, -2, 8.5]], float)
APEX, TAIL, CREW = numpy.array([0.3, 0.4, 6]), numpy.array([0.3, 0.5, 2]), numpy.array([2.0, 1, 1])
HEAD_WEIGHT, TAIL_WEIGHT = 2 * G, 121.5 * G
EFFICIENCY = 0.92
LEGS = numpy.linalg.norm(ANCHORS - APEX, axis=1)


def ratio(one, other):
    """Greater over lesser tension at a sheave where unit vectors lead away from it."""
    k = (1 - EFFICIENCY) / (2 * math.sqrt(EFFICIENCY))
    return math.exp(2 * math.asinh(k * numpy.linalg.norm(one + other) / 2))


def unit(vector):
    return vector / numpy.linalg.norm(vector)


def residual(unknown, sense):
    """Unknowns: apex, tail across, the pull, the legs' tensions; forces over the weight, lengths in metres."""
    apex, tail = unknown[:3], numpy.array([unknown[3], unknown[4], TAIL[2]])
    pull, legs = unknown[5] * TAIL_WEIGHT, unknown[6:] * TAIL_WEIGHT
    fall = unit(tail - apex)
    lead = unit(CREW - apex)
    middle = pull / ratio(fall, lead) ** sense
    first = middle / ratio(-fall, -fall) ** sense
    arms = ANCHORS - apex
    lengths = numpy.linalg.norm(arms, axis=1)
    on_apex = (legs / lengths) @ arms + (first + middle) * fall + pull * lead - [0, 0, HEAD_WEIGHT]
    on_tail = -(first + middle) * fall - [0, 0, TAIL_WEIGHT]
    return numpy.concatenate([on_apex / TAIL_WEIGHT, on_tail / TAIL_WEIGHT, lengths - LEGS])


def solve(sense):
    start = numpy.concatenate([APEX, TAIL[:2], [0.5] * 4])
    return root(residual, start, args=(sense,), method="hybr", tol=1e-12)


def main():
    """Hold against the command's own figures, then time."""
    run = subprocess.run([sys.argv[1], "report", "--as", "json", sys.argv[2]], capture_output=True, check=False)
    cases = json.loads(run.stdout)["cases"]
    senses = {"hold": 0, "raise": 1, "lower": -1}
    for case in cases:
        found = solve(senses[case["case"]])
        wanted = case["hands"][0]["force"]
        if not found.success or abs(found.x[5] * TAIL_WEIGHT / wanted - 1) > 1e-8:
            print(f"spatial: {case['case']} differs: {found.x[5] * TAIL_WEIGHT} N, not {wanted} N")
            return 1
    times = []
    for _ in range(51):
        begin = time.perf_counter()
        for sense in senses.values():
            solve(sense)
        times.append(time.perf_counter() - begin)
    print("the same spatial rig by SciPy's root finder, same forces within 1e-8:")
    microseconds = 1e6 * min(times)
    print(f"  {microseconds:.0f} us, {microseconds / float(sys.argv[3]):.0f} times the engine's")
    return 0


if __name__ == "__main__":
    sys.exit(main())
