"""The matching against facts of graph theory that are not ours."""

import itertools
import random

import pytest

from sootline.core.riding.matching import Demand, Need, Seeker, Stock, hand_out, match


def bipartite(edges: list[set[int]], pieces: int) -> Demand:
    """Return people who each need one of the pieces they are joined to."""
    return Demand(
        levels=1,
        stocks=(Stock(level=0, count=1),) * pieces,
        seekers=tuple(Seeker(needs=(need(edge),)) for edge in edges),
    )


def need(options: set[int], costs: dict[int, int] | None = None) -> Need:
    """Return a need met by these pieces."""
    stocks = tuple(sorted(options))
    return Need(stocks=stocks, misfits=tuple((costs or {}).get(one, 0) for one in stocks))


def riding(demand: Demand) -> int:
    """Count who rides, where that is proven the most."""
    outcome = match(demand)
    assert outcome.best_now
    return outcome.levels.count(0)


@pytest.mark.parametrize("seed", range(200))
def test_as_many_ride_as_the_deficiency_version_of_halls_theorem_says(seed: int) -> None:
    """As many ride as there are people less the largest shortage of any group.

    P. Hall, J. London Math. Soc. 10 (1935) 26; O. Ore, Duke Math. J. 22 (1955) 625. The shortage
    is found by trying every group.
    """
    draw = random.Random(seed)  # noqa: S311 - repeatable cases, nothing secret
    people, pieces = draw.randint(1, 8), draw.randint(1, 8)
    edges = [{p for p in range(pieces) if draw.random() < 0.3} for _ in range(people)]

    groups = (g for n in range(people + 1) for g in itertools.combinations(edges, n))
    shortage = max(len(group) - len(set().union(*group)) for group in groups)

    assert riding(bipartite(edges, pieces)) == people - shortage


def test_the_textbook_graph_of_five_and_four_has_a_matching_of_three() -> None:
    """T. Cormen et al., Introduction to Algorithms, 3rd ed., figure 26.8; edges from memory."""
    edges = [{0}, {0, 2}, {1, 2, 3}, {2}, {2}]

    assert riding(bipartite(edges, 4)) == 3


@pytest.mark.parametrize("copies", [1, 2, 5])
def test_the_truncated_fano_plane_seats_one_of_four(copies: int) -> None:
    """Four people, three places, two pieces each: any two people want a piece in common.

    The extremal case of Ryser's conjecture for three parts: matching number 1, while halves of
    everybody would come to 2. R. Aharoni, Combinatorica 21 (2001) 1.
    """
    lines = [(0, 0, 0), (0, 1, 1), (1, 0, 1), (1, 1, 0)]
    seekers = tuple(
        Seeker(needs=tuple(need({6 * copy + 2 * place + one}) for place, one in enumerate(line)))
        for copy in range(copies)
        for line in lines
    )
    stocks = (Stock(level=0, count=1),) * (6 * copies)

    assert riding(Demand(levels=1, stocks=stocks, seekers=seekers)) == copies


def test_kleins_latin_square_seats_four_and_the_cyclic_one_three() -> None:
    """Rows, columns and symbols are three places; a transversal is four people who all ride.

    The cyclic square of even order has none, Klein's group has one: L. Euler, 1782; H. B. Mann,
    Ann. Math. Statist. 13 (1942) 418; volume and page from memory.
    """

    def seats(square: list[list[int]]) -> int:
        cells = [(r, 4 + c, 8 + square[r][c]) for r in range(4) for c in range(4)]
        seekers = tuple(Seeker(needs=tuple(need({one}) for one in cell)) for cell in cells)
        return riding(Demand(levels=1, stocks=(Stock(level=0, count=1),) * 12, seekers=seekers))

    assert seats([[(r + c) % 4 for c in range(4)] for r in range(4)]) == 3
    assert seats([[r ^ c for c in range(4)] for r in range(4)]) == 4


def test_the_assignment_of_three_to_three_costs_fifteen() -> None:
    """Costs 8 4 7, 5 2 3, 9 4 8 come to 15 at the least.

    The worked example of many texts on H. W. Kuhn's method (Naval Res. Logist. Q. 2, 1955, 83);
    value from memory, and six orders can be tried by hand.
    """
    costs = [(8, 4, 7), (5, 2, 3), (9, 4, 8)]
    seekers = tuple(Seeker(needs=(need({0, 1, 2}, dict(enumerate(row))),)) for row in costs)
    demand = Demand(levels=1, stocks=(Stock(level=0, count=1),) * 3, seekers=seekers)

    given_out = hand_out(demand, (0, 0, 0))

    assert (
        sum(row[one] for row, (one,) in zip(costs, given_out, strict=True) if one is not None) == 15
    )
