"""Ostrey (invented): all of K03's gear is checked but the helmet's soft parts; the mask is away."""

import datetime as dt
from dataclasses import replace

from tests.riding_gear import FIT, mask, piece, rider, situation, small_gear, whole_set

from sootline.core.basis import MemberId
from sootline.core.gear import CareStage, Component, Custody, State
from sootline.core.riding import (
    CannotRide,
    HandOut,
    MaskState,
    RidingFacts,
    Situation,
    give,
    say_coverage,
    timeline,
    who_rides,
)
from sootline.words import say

NOW = dt.datetime(2026, 3, 2, 14, 10, tzinfo=dt.UTC)
BACK = dt.datetime(2026, 3, 2, 15, 5, tzinfo=dt.UTC)
DRYING = State(stage=CareStage.DRYING, custody=Custody.WASH_ROOM)


def ostrey(*, mask_back: dt.datetime | None = None) -> Situation:
    """Return the floor at 14:10: soft parts drying, the small mask with the technician."""
    gear: list[Component] = []
    for one in small_gear("K03"):
        drying = one.kind == "ear-neck-cover"
        gear.append(replace(one, state=DRYING) if drying else one)
    gear += [*whole_set("K03", "40/34x30", "K03"), piece("H9", "helmet-shell", head="one")]
    masks = (replace(mask("K03", MaskState.WITH_TECHNICIAN, "S"), back=mask_back),)
    who = rider("K03", measures=(("head", "one"),))
    return situation(gear, [who], RidingFacts(fit=FIT, masks=masks), now=NOW)


def left_out(floor: Situation) -> CannotRide:
    """Return K03, who cannot ride."""
    (one,) = who_rides(floor).now.cannot
    return one


def test_k03_cannot_ride_while_soft_parts_dry_and_the_mask_is_away() -> None:
    """A spare helmet would do, the mask has no spare: both places are empty as they stand."""
    floor = ostrey()
    without_spare = replace(floor, units=tuple(u for u in floor.units if u.id != "H9"))

    named = {
        gap.slot.value: [r.message for r in gap.own[0].reasons]
        for gap in left_out(without_spare).gaps
    }

    assert named == {"helmet": ["riding.piece.stage"], "mask": ["riding.mask.no_time"]}
    assert left_out(without_spare).earliest is None


def test_both_reasons_are_said_and_the_time_is_unknown() -> None:
    """The radio names the soft parts drying and the mask with the technician, no time given."""
    floor = ostrey()
    without_spare = replace(floor, units=tuple(u for u in floor.units if u.id != "H9"))

    spoken = [
        say(one.message, one.values) for one in say_coverage(who_rides(without_spare).now, NOW)
    ]

    assert any("drying" in one for one in spoken)
    assert any("with the technician, no time given" in one for one in spoken)
    assert spoken[-1] == "No time known."


def test_a_spare_helmet_alone_does_not_put_k03_in_a_seat() -> None:
    """With the spare helmet handed out the mask is still missing."""
    floor = give(ostrey(), HandOut(member=MemberId("K03"), unit="H9"))

    assert [gap.slot.value for gap in left_out(floor).gaps] == ["mask"]
    assert left_out(floor).earliest is None


def test_with_the_mask_back_k03_rides_in_the_spare_helmet() -> None:
    """The technician says 15:05: from then on K03 rides, in the helmet handed out."""
    floor = give(ostrey(mask_back=BACK), HandOut(member=MemberId("K03"), unit="H9"))

    steps = timeline(floor)

    assert [step.minute for step in steps] == [0, 55]
    (riding,) = steps[-1].can
    helmet = next(worn for worn in riding.outfit if worn.slot == "helmet")
    assert helmet.unit.id == "H9"


def test_own_helmet_comes_first_when_the_soft_parts_are_checked() -> None:
    """Own gear is worn before a spare that was handed out."""
    floor = give(ostrey(mask_back=BACK), HandOut(member=MemberId("K03"), unit="H9"))
    ready = tuple(
        replace(unit, back=other.back, reasons=()) if unit.slot == "helmet" and unit.own else unit
        for unit in floor.units
        for other in floor.units
        if other.id == "H9"
    )

    (riding,) = timeline(replace(floor, units=ready))[-1].can

    assert next(worn for worn in riding.outfit if worn.slot == "helmet").unit.own
