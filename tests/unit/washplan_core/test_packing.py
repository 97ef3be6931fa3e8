"""How long equal places are in use at the least."""

import pytest

from sootline.core.washplan.packing import attainable, largest_sum, rack_minutes


@pytest.mark.parametrize(
    ("drying", "places", "least"),
    [
        ((), 3, 0),
        ((10,), 3, 10),
        ((10, 10, 10, 10), 3, 20),
        # 14 of 150 and 14 of 210 on six places: 840 is their mean, 870 the least by hand.
        ((150,) * 14 + (210,) * 14, 6, 870),
        # three and three of 2 and 3 on two places: 7 and 8
        ((2, 2, 2, 3, 3, 3), 2, 8),
        ((0, 0, 5), 1, 5),
    ],
)
def test_places_are_in_use_for_at_least(drying: tuple[int, ...], places: int, least: int) -> None:
    """Counted by hand."""
    assert rack_minutes(drying, places) == least


def test_very_many_items_fall_back_to_their_mean() -> None:
    """Where exact counting would take too long, the mean is still a bound."""
    assert rack_minutes((3,) * 3000 + (5,) * 3000, 100) == 240


def test_sums_of_repeated_lengths() -> None:
    """Of 3 and 5 all of 0, 3, 5, 6, 8, 9, 10 up to 10 can be made."""
    assert {n for n in range(11) if attainable([3, 5], 10) >> n & 1} == {0, 3, 5, 6, 8, 9, 10}


def test_the_largest_sum_below_a_limit() -> None:
    """Of five sevens at most five fit: 35 of 42 when there are five, 42 when there are more."""
    assert largest_sum([7] * 5, 42) == 35
    assert largest_sum([7] * 9, 42) == 42
    assert largest_sum([72] * 13, 420) == 360
