"""Whether thousands of estimates at once are the ones the readable code gives, one by one.

The readable code is the oracle. Where the two part is printed; allowed is a minute (both round to
whole ones) and half a percent (the library stops at 0.001 K of the wet bulb).
"""

import math
import random
from dataclasses import replace

import numpy as np
import pytest
from tests.unit.drying.drying_cases import TABLE

from sootline.core.basis import Band, UnreadableValueError, quantity
from sootline.core.drying import Cloth, RoomAir
from sootline.core.drying.arrays.chances import erf_below
from sootline.core.drying.arrays.columns import Question
from sootline.core.drying.arrays.estimates import estimate_many
from sootline.core.drying.estimating import (
    DryingEstimate,
    Surroundings,
    Wetness,
    estimate_drying,
)
from sootline.core.drying.rates import Batch, Blown
from sootline.core.drying.rooms import balance_room

MANY = 700
SHARE, MINUTE = 0.005, 1
_FACTORS = (
    TABLE.band("dry.time_factor"),
    Band(low=0.8, likely=1.1, high=1.4),
    Band(low=0.98, likely=1.0, high=1.02),
    Band(low=1.0, likely=1.0, high=1.5),
    Band.exactly(1.0),
)


def question(chance: random.Random) -> Question:
    """Draw a batch, a place and a room; damp, cold and crowded ones among them."""
    known = chance.random() < 0.7
    air = RoomAir(
        temp=quantity(f"{chance.randint(1, 35)} °C"),
        humidity=quantity(f"{chance.randint(15, 99)} %"),
        altitude=quantity(f"{chance.choice((0, 1600, 3000))} m"),
        volume=quantity("200 m3") if known else None,
        changes=chance.uniform(0.0, 15.0) if known else None,
        dehumidifier_kg_h=chance.choice((0.0, 2.0)),
    )
    place = Blown(
        flow_m3h=chance.choice((None, chance.uniform(50.0, 4000.0))),
        heated_to_c=chance.choice((None, 30.0, 40.0)),
        vented=chance.random() < 0.5,
        closed=chance.random() < 0.5,
    )
    share = chance.uniform(0.02, 0.9)
    return Question(
        batch=Batch(cloth=chance.choice(tuple(Cloth)), dry_kg=chance.uniform(1.0, 40.0)),
        wetness=Wetness(
            moisture=Band(low=share * 0.8, likely=share, high=share * 1.3),
            measured=chance.random() < 0.5,
            end=chance.choice((None, Band.exactly(0.08), Band.exactly(0.4))),
        ),
        around=Surroundings(
            place=place,
            room=balance_room(air, TABLE),
            others_kg_h=chance.choice((0.0, 0.5, 5.0)),
        ),
        factor=chance.choice(_FACTORS),
    )


def readable(one: Question) -> DryingEstimate | UnreadableValueError:
    """Ask the readable code."""
    try:
        return estimate_drying(one.batch, one.wetness, one.around, one.factor, TABLE)
    except UnreadableValueError as error:
        return error


def apart(ours: DryingEstimate, theirs: DryingEstimate) -> float:
    """Return the largest difference of the three ends beyond a minute, as a share."""
    ends = (
        (ours.minutes.earliest, theirs.minutes.earliest),
        (ours.minutes.likely, theirs.minutes.likely),
        (ours.minutes.late, theirs.minutes.late),
    )
    return max(max(0, abs(one - other) - MINUTE) / other for one, other in ends)


@pytest.mark.parametrize("seed", [7, 2026])
def test_at_once_is_what_one_by_one_is(seed: int, capsys: pytest.CaptureFixture[str]) -> None:
    """The same interval, rate, bound and curve; the same refusal."""
    chance = random.Random(seed)  # noqa: S311
    asked = [question(chance) for _ in range(MANY)]
    worst = rates = 0.0
    refused = 0
    for one, found in zip(asked, estimate_many(asked, TABLE), strict=True):
        known = readable(one)
        if isinstance(known, UnreadableValueError):
            assert isinstance(found, UnreadableValueError)
            assert (found.message, found.values) == (known.message, known.values)
            refused += 1
            continue
        assert isinstance(found, DryingEstimate)
        worst = max(worst, apart(found, known))
        rates = max(rates, abs(found.rate_kg_h / known.rate_kg_h - 1))
        assert found.minutes.rests_on == known.minutes.rests_on
        assert found.water_kg == pytest.approx(known.water_kg)
        assert found.moistures.equilibrium == pytest.approx(known.moistures.equilibrium)
    with capsys.disabled():
        print(
            f"\n  {MANY - refused} intervals at most {worst:.4%} and a minute apart, rates "
            f"{rates:.3%}; {refused} refused alike"
        )

    assert refused > MANY / 20
    assert worst <= SHARE
    assert rates <= SHARE


@pytest.mark.parametrize("better", ["drier", "windier", "lighter", "spun drier"])
def test_better_is_never_slower_at_once_either(better: str) -> None:
    """Drier air, more airflow, less gear, less water: no end of an interval comes later.

    A minute is rounding, a hundredth of a percent single precision.
    """
    chance = random.Random(11)  # noqa: S311
    asked = [question(chance) for _ in range(MANY)]
    worse = estimate_many(asked, TABLE)
    improved = estimate_many([bettered(one, better) for one in asked], TABLE)
    compared = 0
    for one, other in zip(improved, worse, strict=True):
        if isinstance(other, UnreadableValueError):
            continue
        assert isinstance(one, DryingEstimate)
        for end in ("earliest", "likely", "late"):
            assert getattr(one.minutes, end) <= getattr(other.minutes, end) * 1.0001 + MINUTE
        compared += 1

    assert compared > MANY / 2


def bettered(one: Question, better: str) -> Question:
    """Make one thing about a question better."""
    around, batch, wetness = one.around, one.batch, one.wetness
    match better:
        case "drier":
            drier = replace(around.room.air, ratio=around.room.air.ratio * 0.9)
            around = replace(around, room=replace(around.room, air=drier))
        case "windier":
            flow = around.place.flow_m3h
            place = replace(around.place, flow_m3h=None if flow is None else flow * 1.5)
            around = replace(around, place=place)
        case "lighter":
            batch = replace(batch, dry_kg=batch.dry_kg * 0.8)
        case _:
            wetness = replace(wetness, moisture=wetness.moisture.scaled(0.8))
    return replace(one, around=around, batch=batch, wetness=wetness)


def test_nothing_asked_is_nothing_answered() -> None:
    """No rows, no columns."""
    assert estimate_many([], TABLE) == ()


def test_the_error_function_is_the_libraries() -> None:
    """At most 1.5e-7 off, as its source prints, and single precision's own half as much again.

    Source: Abramowitz and Stegun, 7.1.26, the error printed there; value from memory.
    """
    distance = np.linspace(-4, 4, 2001, dtype=np.float32)
    below, _ = erf_below(distance, np.ones_like(distance))
    exact = [0.5 + 0.5 * math.erf(float(one)) for one in distance]

    assert float(np.abs(below - np.array(exact)).max()) < 2.5e-7
