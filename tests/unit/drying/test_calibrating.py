"""Whether logged loads narrow the factor, are shrunk, and cover what they promise."""

import math
import random

import pytest
from tests.unit.drying.drying_cases import CABINET, TABLE, logged, room

from sootline.core.basis import Finding, PlaceId
from sootline.core.drying import Cloth
from sootline.core.drying.calibrating import Calibration, Ratio, calibrate
from sootline.core.drying.logging_loads import compare_loads

HERE, OTHER = PlaceId("cabinet"), PlaceId("rack")


def ratio(value: float, place: PlaceId = HERE, cloth: Cloth = Cloth.SHELL) -> Ratio:
    """Make the ratio of one load."""
    return Ratio(place=place, cloth=cloth, ratio=value)


def here(*ratios: Ratio) -> Calibration:
    """Calibrate for shells at the cabinet."""
    return calibrate(ratios, HERE, Cloth.SHELL, TABLE)


def test_no_loads_leave_the_tables_factor() -> None:
    """A factor of two and a half either way, and a warning."""
    known = here()

    assert (known.factor.low, known.factor.high) == pytest.approx((0.4, 2.5))
    assert known.trust.message == "drying.trust.none"


@pytest.mark.parametrize(("count", "message"), [(1, "few"), (6, "own")])
def test_loads_narrow_the_factor(count: int, message: str) -> None:
    """Six consistent loads bring it to well within a factor of two."""
    known = here(*[ratio(1.3)] * count)

    assert known.factor.high / known.factor.low < 2.5 / 0.4
    assert known.trust.message == f"drying.trust.{message}"
    assert known.here == count


def test_six_consistent_loads_narrow_to_about_a_quarter() -> None:
    """A synthetic trial computed apart came to about 20 % (its scatter is not known)."""
    known = here(*[ratio(1.3)] * 6)

    assert known.factor.high / known.factor.likely < 1.35
    assert known.factor.likely == pytest.approx(1.3, rel=0.06)


def test_one_load_is_drawn_towards_no_difference() -> None:
    """A single odd load is not believed whole."""
    assert 1.0 < here(ratio(2.0)).factor.likely < 2.0


def test_loads_elsewhere_help_less() -> None:
    """Same place and other gear helps more than another place; own loads help most."""
    own = here(ratio(1.8)).factor.likely
    same_place = here(ratio(1.8, cloth=Cloth.LINER)).factor.likely
    other_place = here(ratio(1.8, OTHER)).factor.likely

    assert 1.0 < other_place < same_place < own
    assert here(ratio(1.8, OTHER)).elsewhere == 1


def test_scattered_loads_widen_the_band() -> None:
    """What differs from load to load stays in the promise."""
    steady = here(*[ratio(1.0)] * 8).factor
    wild = here(*[ratio(value) for value in (0.5, 2.0) * 4]).factor

    assert wild.high / wild.low > steady.high / steady.low


def test_the_band_covers_what_it_promises() -> None:
    """An invented department with known truth: 85 to 95 % of 1,000 held-back loads inside.

    Four places and kinds with their own true factor and scatter; eight loads of each are shown.
    """
    chance = random.Random(20261125)  # noqa: S311
    inside = held = 0
    narrowest = math.inf
    for _ in range(25):
        truth = {
            (place, cloth): chance.gauss(0.2, 0.3)
            for place in (HERE, OTHER)
            for cloth in (Cloth.SHELL, Cloth.LINER)
        }
        scatter = chance.uniform(0.12, 0.3)

        def load(
            place: PlaceId,
            cloth: Cloth,
            truth: dict[tuple[PlaceId, Cloth], float] = truth,
            scatter: float = scatter,
        ) -> Ratio:
            return ratio(math.exp(chance.gauss(truth[place, cloth], scatter)), place, cloth)

        shown = [load(*key) for key in truth for _ in range(8)]
        for key in truth:
            factor = calibrate(shown, *key, TABLE).factor
            narrowest = min(narrowest, factor.high / factor.low)
            later = [load(*key).ratio for _ in range(10)]
            inside += sum(factor.low <= one <= factor.high for one in later)
            held += len(later)

    assert held == 1000
    assert 850 <= inside <= 950
    assert narrowest < 0.5 * 2.5 / 0.4


def test_logged_loads_become_ratios() -> None:
    """Weighed before and after, over the model's likely time at that air."""
    ratios, left_out = compare_loads([logged("4 h")], {HERE: CABINET}, TABLE)

    assert not left_out
    assert 0.3 < ratios[0].ratio < 3.0


@pytest.mark.parametrize(
    ("lasted", "end", "humidity", "message"),
    [
        ("4 h", "9.9 kg", "50 %", "past_dry"),
        ("4 h", "10.1 kg", "88 %", "impossible"),
        ("90 h", "10.3 kg", "50 %", "far_off"),
    ],
)
def test_loads_that_say_nothing_are_left_out(
    lasted: str, end: str, humidity: str, message: str
) -> None:
    """Each with its reason."""
    load = logged(lasted, end=end, air=room(humidity=humidity))
    ratios, left_out = compare_loads([load], {HERE: CABINET}, TABLE)

    assert not ratios
    assert isinstance(left_out[0], Finding)
    assert left_out[0].message == f"drying.log.{message}"
