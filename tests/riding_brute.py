"""Every distribution of small departments, tried one by one; it shares nothing with the search."""

import itertools
import random
from collections.abc import Iterator

from sootline.core.riding.matching import Demand, Need, Seeker, Stock

Value = tuple[int, ...]


def worth(demand: Demand, levels: tuple[int | None, ...], spares: int) -> Value:
    """Say what a distribution comes to: crews, then per moment weight and heads, then spares."""
    crews = [0] * len(demand.minimums)
    for seeker, level in zip(demand.seekers, levels, strict=True):
        if level == 0 and seeker.crew is not None:
            crews[seeker.crew] += 1
    met = sum(n >= least for n, least in zip(crews, demand.minimums, strict=True))
    value = [met]
    for moment in range(demand.levels):
        riding = [
            seeker
            for seeker, level in zip(demand.seekers, levels, strict=True)
            if level is not None and level <= moment
        ]
        value += [sum(seeker.priority for seeker in riding), len(riding)]
    return (*value, -spares)


def spares_used(demand: Demand, levels: tuple[int | None, ...]) -> int:
    """Count the spares a distribution takes."""
    return sum(
        need.own is None or need.own > level
        for seeker, level in zip(demand.seekers, levels, strict=True)
        if level is not None
        for need in seeker.needs
    )


def best_worth(demand: Demand) -> Value:
    """Try every way to serve everybody and keep the best."""
    return max(
        worth(demand, levels, spares)
        for levels, spares in _ways(demand, 0, [stock.count for stock in demand.stocks])
    )


def _ways(
    demand: Demand, person: int, left: list[int]
) -> Iterator[tuple[tuple[int | None, ...], int]]:
    if person == len(demand.seekers):
        yield (), 0
        return
    for rest, spares in _ways(demand, person + 1, left):
        yield (None, *rest), spares
    for level, taken in _choices(demand, demand.seekers[person]):
        after = list(left)
        for stock in taken:
            after[stock] -= 1
        if min(after, default=0) >= 0:
            for rest, spares in _ways(demand, person + 1, after):
                yield (level, *rest), spares + len(taken)


def _choices(demand: Demand, seeker: Seeker) -> Iterator[tuple[int, tuple[int, ...]]]:
    for level in range(demand.levels):
        places = [
            [None]
            if need.own is not None and need.own <= level
            else [stock for stock in need.stocks if demand.stocks[stock].level <= level]
            for need in seeker.needs
        ]
        for choice in itertools.product(*places):
            yield level, tuple(stock for stock in choice if stock is not None)


def small_department(seed: int) -> Demand:
    """Draw a department of up to five people and three places, with every kind of trouble."""
    draw = random.Random(seed)  # noqa: S311 - repeatable cases, nothing secret
    levels, places = draw.choice([1, 1, 2, 3]), draw.choice([1, 2, 3])
    stocks: list[Stock] = []
    by_place: list[list[int]] = []
    for _ in range(places):
        by_place.append([])
        for _ in range(draw.randint(1, 3)):
            by_place[-1].append(len(stocks))
            stocks.append(Stock(level=draw.randrange(levels), count=draw.randint(0, 2)))
    crews = draw.choice([0, 0, 1, 2])
    priorities = draw.choice([(1,), (1,), (1, 2, 3), (2,)])
    seekers = tuple(
        Seeker(
            needs=tuple(_need(draw, options, levels) for options in by_place),
            priority=draw.choice(priorities),
            crew=draw.randrange(crews) if crews and draw.random() < 0.8 else None,
        )
        for _ in range(draw.randint(1, 5))
    )
    minimums = tuple(draw.randint(1, 3) for _ in range(crews))
    return Demand(levels=levels, stocks=tuple(stocks), seekers=seekers, minimums=minimums)


def _need(draw: random.Random, options: list[int], levels: int) -> Need:
    fitting = tuple(stock for stock in options if draw.random() < 0.6)
    return Need(
        own=draw.choice([None, None, None, 0, levels - 1]),
        stocks=fitting,
        misfits=tuple(draw.randrange(3) for _ in fitting),
    )
