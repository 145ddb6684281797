"""Compare two text reports: words exact, figures within one of the last printed digit.

A number of one or two digits is a count, and exact. Blanks between words do not matter, since a digit more moves
a column. A figure so small that it is rounding and nothing else (the audit's residual) may be any other such.

usage: compare.py EXPECTED FOUND        status 1 if they differ
"""
import re
import sys

NUMBER = re.compile(r"(?<![\w.])-?\d[\d,]*(?:\.\d+)?(?:[eE][-+]?\d+)?")
ROUNDING = 1e-8
FIGURES = 3


def last_digit(text):
    """The worth of one in the last printed place: 12.3 gives 0.1, 4560 gives 10, since three figures are meant."""
    mantissa, _, exponent = text.lower().partition("e")
    decimals = len(mantissa.partition(".")[2])
    scale = 10.0 ** (int(exponent or 0) - decimals)
    whole = mantissa.lstrip("-").replace(",", "")
    if not decimals and not exponent and len(whole) > 3:
        scale *= 10.0 ** min(len(whole) - 3, len(whole) - len(whole.rstrip("0")))
    return scale


def near(expected, found):
    if expected == found:
        return True
    left, right = (float(text.replace(",", "")) for text in (expected, found))
    if max(abs(left), abs(right)) < ROUNDING and "e" in (expected + found).lower():
        return True
    if max(sum(map(str.isdigit, text)) for text in (expected, found)) < FIGURES:
        return False
    # A hair more than one digit, for the decimal fractions that binary cannot hold.
    return abs(left - right) <= 1.001 * max(last_digit(expected), last_digit(found))


def same_line(expected, found):
    words = [" ".join(NUMBER.sub(" # ", line).split()) for line in (expected, found)]
    numbers = [NUMBER.findall(line) for line in (expected, found)]
    return words[0] == words[1] and all(map(near, *numbers))


def main():
    texts = []
    for name in sys.argv[1:3]:
        with open(name, encoding="utf-8") as file:
            texts.append(file.read().splitlines())
    expected, found = texts
    return 0 if len(expected) == len(found) and all(map(same_line, expected, found)) else 1


if __name__ == "__main__":
    sys.exit(main())
