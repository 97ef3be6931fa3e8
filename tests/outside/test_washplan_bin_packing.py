"""One family and one washer is bin packing: the makespan is bins times cycle.

Source: E. Falkenauer, A hybrid grouping genetic algorithm for bin packing, Journal of Heuristics 2
(1996) 5-30, classes "triplet" (value from memory: bins of 100.0, filled exactly by three items, one
of 38.0 to 49.0, one of 25.0 up to half of what is left). The instances are built here by that
construction, so their optimum, a third of the number of items, is known without any data.
Tolerance: none for the bound; triplets are made to be hard for filling in order, so a plan may
take a fifth more drums, and what it takes is written beside each size.
"""

import pytest
from tests.instances.chance import seeded
from tests.instances.small import piece, small
from tests.instances.stops import after

from sootline.core.basis import ComponentId, MachineId
from sootline.core.verify import verify
from sootline.core.washplan import Goal, Instance, Programme, Washer, bound_of, solve

CAP, MINUTES, DRYING = 1000, 50, 30
CYCLE = MINUTES + 10


def triplets(bins: int, seed: int) -> Instance:
    """Build an instance whose drums can all be filled to the last unit."""
    chance = seeded(seed)
    weights: list[int] = []
    for _ in range(bins):
        first = chance.randrange(380, 491)
        second = chance.randrange(250, (CAP - first) // 2)
        weights += [first, second, CAP - first - second]
    chance.shuffle(weights)
    return small(
        pieces=tuple(
            piece(f"p{n}", weight=weight, prep=0, inspect=0, units=0, dry_rack=DRYING, dry_cab=None)
            for n, weight in enumerate(weights)
        ),
        washers=(
            Washer(id=MachineId("w"), programmes={"S": Programme(cap=CAP, min=MINUTES, temp=40)}),
        ),
    )


@pytest.mark.parametrize("bins", [4, 10, 20, 40])
@pytest.mark.parametrize("seed", range(5))
def test_the_bound_is_the_known_optimum(bins: int, seed: int) -> None:
    """Drums filled to the last unit times the cycle, and the last one's drying."""
    instance = triplets(bins, seed)

    assert bound_of(instance, goal=Goal.ALL_DONE, by=0) == bins * CYCLE + DRYING


# bins, drums allowed; found by hand with these seeds: 4-5, 11-12, 22-23
@pytest.mark.parametrize(("bins", "allowed"), [(4, 5), (10, 12), (20, 24)])
@pytest.mark.parametrize("seed", range(3))
def test_a_plan_takes_few_drums_more(bins: int, allowed: int, seed: int) -> None:
    """The plan holds, and needs at most a fifth more drums than the known optimum."""
    instance = triplets(bins, seed)
    plan = solve(instance, goal=Goal.ALL_DONE, stop=after(400))

    assert verify(instance, plan) == ()
    assert bins <= len(plan.loads) <= allowed
    assert plan.makespan == len(plan.loads) * CYCLE + DRYING


def test_full_drums_of_equal_pieces_are_proven_best() -> None:
    """Seven pieces, three to a drum: three drums, by counting alone."""
    pieces = tuple(piece(f"p{n}", weight=30, prep=0, inspect=0, units=0) for n in range(7))
    instance = small(pieces=pieces)
    plan = solve(instance, goal=Goal.ALL_DONE, stop=after(10))

    assert len(plan.loads) == 3
    assert plan.gap == 0
    assert {ComponentId(one) for load in plan.loads for one in load.pieces} == {
        one.id for one in pieces
    }
