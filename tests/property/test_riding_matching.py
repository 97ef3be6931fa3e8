"""The matching against brute force, and what must hold of any matching."""

import itertools
import random
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from tests.riding_brute import best_worth, small_department, spares_used, worth

from sootline.core.riding.matching import Demand, Outcome, Stock, hand_out, match

DEPARTMENTS = 2000
SEEDS = st.integers(min_value=10_000, max_value=10_000_000)


def value(demand: Demand, outcome: Outcome) -> tuple[int, ...]:
    """Return what an outcome comes to, counted without the solver's scale."""
    return worth(demand, outcome.levels, spares_used(demand, outcome.levels))


def riding_now(demand: Demand) -> int:
    """Count who rides now."""
    return match(demand).levels.count(0)


def test_the_matching_equals_brute_force_on_2000_departments() -> None:
    """Every aim, in its order, to the last spare; and it says that it is proven."""
    for seed in range(DEPARTMENTS):
        demand = small_department(seed)
        outcome = match(demand)

        assert value(demand, outcome) == best_worth(demand), seed
        assert outcome.best_now, seed
        assert outcome.best_later, seed


def test_nobody_more_could_ride_than_stated_on_2000_departments() -> None:
    """The stated most is what brute force finds when only heads count."""
    for seed in range(DEPARTMENTS):
        demand = small_department(seed)
        heads = replace(
            demand,
            minimums=(),
            seekers=tuple(replace(one, priority=1, crew=None) for one in demand.seekers),
        )

        assert match(demand).most_now == best_worth(heads)[1], seed


@given(SEEDS)
def test_what_is_handed_out_fits_is_there_and_is_given_once(seed: int) -> None:
    """Each rider has every place filled by own gear or one fitting piece that has come."""
    demand = small_department(seed)
    outcome = match(demand)
    given_out = hand_out(demand, outcome.levels)

    for stock, kept in enumerate(demand.stocks):
        assert sum(row.count(stock) for row in given_out) <= kept.count
    for seeker, level, row in zip(demand.seekers, outcome.levels, given_out, strict=True):
        for need, piece in zip(seeker.needs, row, strict=True):
            served = level is not None and (need.own is None or need.own > level)
            assert (piece is not None) == served
            if piece is not None and level is not None:
                assert piece in need.stocks
                assert demand.stocks[piece].level <= level


@given(SEEDS)
def test_the_pieces_handed_out_fit_as_tightly_as_any_would(seed: int) -> None:
    """No other way to serve the same riders comes to a smaller misfit in all."""
    demand = small_department(seed)
    levels = match(demand).levels
    given_out = hand_out(demand, levels)

    tightest = sum(
        dict(zip(need.stocks, need.misfits, strict=True))[stock]
        for seeker, row in zip(demand.seekers, given_out, strict=True)
        for need, stock in zip(seeker.needs, row, strict=True)
        if stock is not None
    )

    assert tightest == least_misfit(demand, levels)


def least_misfit(demand: Demand, levels: tuple[int | None, ...]) -> int:
    """Try every way to serve these riders, place by place."""
    total = 0
    for place in range(len(demand.seekers[0].needs)):
        served = [
            (need, level)
            for seeker, level in zip(demand.seekers, levels, strict=True)
            for need in seeker.needs[place : place + 1]
            if level is not None and (need.own is None or need.own > level)
        ]
        options = [
            [
                (stock, off)
                for stock, off in zip(need.stocks, need.misfits, strict=True)
                if demand.stocks[stock].level <= level
            ]
            for need, level in served
        ]
        total += min(
            sum(off for _, off in way)
            for way in itertools.product(*options)
            if all(
                [stock for stock, _ in way].count(stock) <= demand.stocks[stock].count
                for stock, _ in way
            )
        )
    return total


@given(SEEDS, st.data())
def test_one_spare_more_never_covers_fewer(seed: int, data: st.DataObject) -> None:
    """Adding a piece to any stock leaves every aim but the count of spares as good or better."""
    demand = small_department(seed)
    more = data.draw(st.integers(min_value=0, max_value=len(demand.stocks) - 1))
    stocks = tuple(
        Stock(level=stock.level, count=stock.count + (n == more))
        for n, stock in enumerate(demand.stocks)
    )
    richer = replace(demand, stocks=stocks)

    assert value(richer, match(richer))[:-1] >= value(demand, match(demand))[:-1]


@given(SEEDS, st.randoms(use_true_random=False))
def test_the_order_of_people_changes_nothing_but_who(seed: int, draw: random.Random) -> None:
    """However the roster is ordered, as many ride, at every moment, in as many spares."""
    demand = small_department(seed)
    people = list(demand.seekers)
    draw.shuffle(people)
    shuffled = replace(demand, seekers=tuple(people))

    assert value(shuffled, match(shuffled)) == value(demand, match(demand))


@given(SEEDS)
def test_with_no_effort_the_bound_still_holds(seed: int) -> None:
    """Where the search may not look at all, nothing is claimed that it did not prove."""
    demand = small_department(seed)
    hasty = match(demand, effort=0)
    best = match(demand)

    assert hasty.levels.count(0) <= hasty.most_now
    assert best.levels.count(0) <= hasty.most_now
    if hasty.best_now:
        assert value(demand, hasty)[:3] == value(demand, best)[:3]
    hand_out(demand, hasty.levels)
