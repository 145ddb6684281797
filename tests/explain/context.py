"""What the symbols of a lesson stand for, wherever they are used."""
from equations import LENGTH, Chain, Interval, Wrong

ONE_LIFT = Interval(1.0, 1.0, LENGTH)


class Context:
    """The chains of a lesson and the values that they give to symbols."""

    def __init__(self, lesson):
        self.entries = []  # (element, chain)
        self.faults = []
        for element in lesson.equations:
            try:
                self.entries.append((element, Chain(element.equation())))
            except Wrong as wrong:
                self.faults.append(f'{element}: {wrong}')
        self.given = {}  # symbol -> [(position, value)]
        for position, (element, chain) in enumerate(self.entries):
            self.take(position, element, chain)

    def take(self, position, element, chain):
        figure = chain.given()
        if not figure or not chain.names():
            return
        try:
            value = figure.value(lambda name: ONE_LIFT)
        except Wrong as wrong:
            self.faults.append(f'{element}: {wrong}')
            return
        for name in chain.names():
            self.given.setdefault(name, []).append((position, value))

    def nearest(self, name, position):
        """The value of a symbol at an equation: of its case or of none; in its own step, else the last one before,
        else the next of its section."""
        here = self.entries[position][0]
        element = lambda k: self.entries[k][0]
        found = [(k, v) for k, v in self.given.get(name, []) if here.case in (None, element(k).case)
                 or element(k).case is None]
        if not found and name == 'h':
            return ONE_LIFT
        if not found:
            raise Wrong(f'{name} is given no value' + f' in {here.case}' * (name in self.given))
        own = [(k, v) for k, v in found if (element(k).section, element(k).step) == (here.section, here.step)]
        before = [(k, v) for k, v in own or found if k <= position]
        if before:
            return before[-1][1]
        after = own or [(k, v) for k, v in found if element(k).section == here.section]
        if not after:
            raise Wrong(f'{name} is used before it has a value')
        return after[0][1]

    def check(self):
        """Every equation that does not hold, told."""
        yield from self.faults
        for position, (element, chain) in enumerate(self.entries):
            try:
                chain.check(lambda name, at=position: self.nearest(name, at))
            except (Wrong, OverflowError, ZeroDivisionError) as wrong:
                yield f'{element}: {wrong}'
        yield from self.two_values()

    def two_values(self):
        """A symbol has one value in a step and a case."""
        for name, found in self.given.items():
            by_step = {}
            for position, value in found:
                element = self.entries[position][0]
                first = by_step.setdefault((element.section, element.step, element.case), value)
                if first.unit == value.unit and (first.low > value.high or value.low > first.high):
                    yield f'{element}: {name} has two values in one step: {first}; {value}'
