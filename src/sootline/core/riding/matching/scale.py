"""What counts first, what next? The aims as the digits of one whole number.

In this order: crews at strength now; people riding now, weighted by priority, then counted; the
same at each later moment; as few spares as possible.
"""

from math import gcd

from sootline.core.riding.matching.demand import Demand, Seeker


class Scale:
    """Turns aims in order of importance into one number, and says what each step is worth.

    `steps` holds what one step of each aim is worth, from the first aim to the last; people are
    counted apart from their weight only where priorities differ.
    """

    def __init__(self, demand: Demand) -> None:
        unit = gcd(*(seeker.priority for seeker in demand.seekers)) or 1
        self._weights = {s.priority: s.priority // unit for s in demand.seekers}
        self._heads = len(demand.seekers) + 1 if len(self._weights) > 1 else 0
        self._spares = sum(len(seeker.needs) for seeker in demand.seekers) + 1
        radix = sum(self._gain(seeker) for seeker in demand.seekers) + 1
        moments = [self._spares]
        for _ in range(demand.levels):
            moments.append(moments[-1] * radix)
        crew = moments.pop()
        self._moments = moments[::-1]
        weighed = [step * n for step in self._moments for n in (self._heads, 1) if n]
        #: a crew at strength is worth more than everything below it together
        self.steps = (crew, *weighed, 1)

    def _gain(self, seeker: Seeker) -> int:
        weight = self._weights[seeker.priority]
        return weight * self._heads + 1 if self._heads else weight

    def worth(self, seeker: Seeker, level: int, spares: int) -> int:
        """Say what it is worth that a person rides from a level on, in so many spares."""
        return self._gain(seeker) * sum(self._moments[level:]) - spares

    @property
    def aims_now(self) -> int:
        """How many of the first aims are about this moment."""
        return 3 if self._heads else 2
