"""Equations as `gantline explain` prints them, worked out again: a parser, intervals, units.

An equation is a chain of terms with ` = ` between them. A number without a point is exact; another stands for all that
rounds to it. `x` is times, `/` divided by, `^` to the power of; a minus sign may stand before a term. A number may have
its unit behind it. A symbol is a word, then perhaps a name in brackets. All members of a chain have to overlap.
"""
import math
import re

POUND = 0.45359237
FOOT = 0.3048
G0 = 9.80665
NONE = (0, 0, 0)  # powers of kg, m and s
MASS, LENGTH, FORCE, WORK = (1, 0, 0), (0, 1, 0), (1, 1, -2), (1, 2, -2)
UNITS = {
    'N': (1, FORCE), 'kN': (1e3, FORCE), 'lbf': (POUND * G0, FORCE), 'kip': (1e3 * POUND * G0, FORCE),
    'kg': (1, MASS), 'lb': (POUND, MASS), 'm': (1, LENGTH), 'ft': (FOOT, LENGTH),
    'J': (1, WORK), 'kJ': (1e3, WORK), 'ft lbf': (FOOT * POUND * G0, WORK), 'ft kip': (1e3 * FOOT * POUND * G0, WORK),
    'm/s2': (1, (0, 1, -2)), 'ft/s2': (FOOT, (0, 1, -2)), '%': (0.01, NONE), 'deg': (math.pi / 180, NONE),
}
TOKEN = re.compile(r"""
    (?P<number>\d+(?:\.\d+)?)(?:\ (?P<unit>ft\ lbf|ft\ kip|m/s2|ft/s2|kN|lbf|kip|kg|lb|ft|kJ|deg|[NmJ%h])(?![A-Za-z0-9(]))?
    | (?P<symbol>(?!x\b)[A-Za-z][A-Za-z0-9]*(?:\([A-Za-z0-9_-]+(?:,\ piece\ \d+)?\))?)
    | (?P<sign>[-+/^()]|x\b)
    """, re.X)
SLIP = 1e-12  # rounding of this arithmetic


class Wrong(Exception):
    """What is the matter with an equation."""


class Interval:
    """All that a figure may stand for, in SI, with its dimension."""

    def __init__(self, low, high, unit=NONE):
        self.low, self.high, self.unit = low, high, unit

    def is_nothing(self):
        return self.low == 0 == self.high

    def about(self, value):
        """Whether a value computed elsewhere is one of them."""
        slack = SLIP * max(abs(self.low), abs(self.high)) + 1e-9 * abs(value)
        return self.low - slack <= value <= self.high + slack

    def of(self, *corners, unit):
        if any(math.isnan(c) for c in corners):
            raise Wrong('something that is no number')
        return Interval(min(corners), max(corners), unit)

    def plus(self, other, sign):
        unit = other.unit if self.is_nothing() else self.unit
        if not other.is_nothing() and not self.is_nothing() and self.unit != other.unit:
            raise Wrong('adds what cannot be added: units differ')
        if sign < 0:
            other = Interval(-other.high, -other.low)
        return Interval(self.low + other.low, self.high + other.high, unit)

    def times(self, other):
        corners = [a * b for a in (self.low, self.high) for b in (other.low, other.high)]
        return self.of(*corners, unit=tuple(a + b for a, b in zip(self.unit, other.unit)))

    def over(self, other):
        if other.low <= 0 <= other.high:
            raise Wrong('divides by what may be nothing')
        corners = [a / b for a in (self.low, self.high) for b in (other.low, other.high)]
        return self.of(*corners, unit=tuple(a - b for a, b in zip(self.unit, other.unit)))

    def power(self, other):
        if other.unit != NONE and not other.is_nothing():
            raise Wrong('a power that has a unit')
        if other.low == other.high and other.low == int(other.low) and 0 < other.low < 10:
            ends = [self.low ** int(other.low), self.high ** int(other.low)]
            ends += [0.0] if self.low < 0 < self.high else []
            return self.of(*ends, unit=tuple(a * int(other.low) for a in self.unit))
        if self.low <= 0 or self.unit != NONE:
            raise Wrong('a broken power of what is not plainly above nothing, or has a unit')
        corners = [a ** b for a in (self.low, self.high) for b in (other.low, other.high)]
        return self.of(*corners, unit=NONE)

    def __repr__(self):
        return f'{self.low:.10g} ... {self.high:.10g} {self.unit if self.unit != NONE else ""}'.rstrip()


def number(digits):
    half = 0.5 * 10.0 ** -len(digits.split('.')[1]) if '.' in digits else 0.0
    return Interval(float(digits) - half, float(digits) + half)


class Member:
    """One member of a chain: parsed when made, worked out when the values of symbols are known."""

    def __init__(self, text, lift=LENGTH):
        self.text, self.tokens, self.at = text, [], 0
        self.symbols, self.numbers = [], 0
        self.lift = lift
        at = 0
        if text != text.strip() or '  ' in text or not text:
            raise Wrong(f'blanks that are not between terms, or nothing at all: `{text}`')
        while at < len(text):
            found = TOKEN.match(text, at)
            if not found:
                raise Wrong(f'cannot be read from `{text[at:at + 20]}` on')
            self.tokens.append(found)
            at = found.end()
            if at < len(text) and text[at] == ' ':
                at += 1
        self.tree = self.sum()
        if self.at < len(self.tokens):
            raise Wrong(f'an operator is missing before `{self.tokens[self.at].group()}`')

    def sign(self, *signs):
        if self.at < len(self.tokens) and self.tokens[self.at].group('sign') in signs:
            self.at += 1
            return self.tokens[self.at - 1].group('sign')
        return None

    def sum(self):
        tree = ('-', ('0', Interval(0.0, 0.0)), self.product()) if self.sign('-') else self.product()
        while sign := self.sign('+', '-'):
            tree = (sign, tree, self.product())
        return tree

    def product(self):
        tree = self.power()
        while sign := self.sign('x', '/'):
            tree = (sign, tree, self.power())
        return tree

    def power(self):
        tree = self.leaf()
        return ('^', tree, self.power()) if self.sign('^') else tree

    def leaf(self):
        if self.sign('('):
            tree = self.sum()
            if not self.sign(')'):
                raise Wrong('a bracket is not closed')
            return tree
        if self.at == len(self.tokens):
            raise Wrong('ends too early')
        token = self.tokens[self.at]
        self.at += 1
        if token.group('symbol'):
            self.symbols.append(token.group('symbol'))
            return ('symbol', token.group('symbol'))
        if not token.group('number'):
            raise Wrong(f'a term is missing before `{token.group()}`')
        self.numbers += 1
        value = number(token.group('number'))
        unit = token.group('unit')
        if unit == 'h':
            return ('x', ('0', value), ('symbol h', 'h'))
        scale, dimension = UNITS[unit] if unit else (1, NONE)
        return ('0', Interval(value.low * scale, value.high * scale, dimension))

    def is_symbol(self):
        return self.tree[1] if self.tree[0] == 'symbol' else None

    def is_figure(self):
        """Whether it is one figure, as a result is, perhaps with a minus sign."""
        tree = self.tree
        if tree[0] == '-' and tree[1] == self.tree[1] and tree[2][0] == '0' and len(self.tokens) == 2:
            return True
        return tree[0] == '0' or (tree[0] == 'x' and tree[2] == ('symbol h', 'h') and len(self.tokens) == 1)

    def value(self, lookup):
        return self.work(self.tree, lookup)

    def work(self, tree, lookup):
        if tree[0] == '0':
            return tree[1]
        if tree[0].startswith('symbol'):
            return lookup(tree[1])
        a, b = self.work(tree[1], lookup), self.work(tree[2], lookup)
        if tree[0] in '+-':
            return a.plus(b, 1 if tree[0] == '+' else -1)
        return a.times(b) if tree[0] == 'x' else a.over(b) if tree[0] == '/' else a.power(b)


class Chain:
    """A whole equation."""

    def __init__(self, text):
        self.text = text
        self.members = [Member(part) for part in text.split(' = ')]
        if len(self.members) < 2:
            raise Wrong('has no ` = `')

    def names(self):
        """The symbols to which it gives a value."""
        return [m.is_symbol() for m in self.members if m.is_symbol()]

    def given(self):
        """The value that it gives: its last figure."""
        for member in reversed(self.members):
            if not member.symbols:
                return member
        return None

    def check(self, lookup):
        """Its members all overlap; raises Wrong where not."""
        values = [member.value(lookup) for member in self.members]
        units = {v.unit for v in values if not v.is_nothing()}
        if len(units) > 1:
            raise Wrong(f'sides of different units: {values}')
        low, high = max(v.low for v in values), min(v.high for v in values)
        slack = SLIP * max(max(abs(v.low), abs(v.high)) for v in values)
        if low > high + slack:
            raise Wrong('; '.join(f'{m.text} is {v}' for m, v in zip(self.members, values)))
        return values
