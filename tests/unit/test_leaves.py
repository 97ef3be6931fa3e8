"""Whole crews share a leaf of the grid, the short ones first, as many as a page bears."""

from sootline.core.basis import MemberId
from sootline.core.job.jobs import Member
from sootline.core.riding import CrewStatus
from sootline.web.reading.leaves import leaves_of


def _crew(name: str, people: int) -> list[Member]:
    return [Member(id=MemberId(f"{name}-{n}"), crew=name) for n in range(people)]


def test_a_station_of_sixty_is_one_leaf() -> None:
    """Nobody has to turn a page at a station."""
    members = [*_crew("Engine 1", 30), *_crew("Ladder 1", 30)]

    assert leaves_of(members, ()) == (("Engine 1", "Ladder 1"),)


def test_crews_that_are_short_come_on_the_first_leaf() -> None:
    """Who is missing is seen without turning a page; no crew is torn apart."""
    members = [*_crew("A", 40), *_crew("B", 40), *_crew("C", 20)]
    short = CrewStatus(crew="C", interior=1, minimum=2)
    met = CrewStatus(crew="A", interior=2, minimum=2)

    assert leaves_of(members, (short, met)) == (("C", "A"), ("B",))


def test_a_large_crew_has_a_leaf_of_its_own() -> None:
    """More people than a leaf bears stay together."""
    assert leaves_of([*_crew("A", 61), *_crew("B", 1)], ()) == (("A",), ("B",))


def test_nobody_is_on_no_leaf() -> None:
    """An empty department has none."""
    assert leaves_of((), ()) == ()
