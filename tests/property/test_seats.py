"""The short answers about seats agree with asking the whole question of who rides."""

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.riding_gear import FIT, rider, situation, whole_set

from sootline.core.gear import Component, Custody, State
from sootline.core.riding import RidingFacts, Situation, Slot, Unit, who_rides
from sootline.core.upkeep.planning import Bundle
from sootline.core.upkeep.planning.bundles import seats_kept, without
from sootline.core.upkeep.planning.seats import Seats, is_worn

RACK = State(custody=Custody.SPARE_RACK)
CHESTS = st.sampled_from(("42", "44", "46"))


@st.composite
def floors(draw: st.DrawFn) -> Situation:
    """Return members with or without a set of their own, and spares, in three sizes."""
    gear: list[Component] = []
    people = []
    for n, chest in enumerate(draw(st.lists(CHESTS, min_size=1, max_size=5))):
        sizes = (("chest", chest), ("waist", "38"), ("inseam", "30"))
        people.append(rider(f"M{n}", needs=(Slot.SET,), measures=sizes))
        if draw(st.booleans()):
            gear += whole_set(f"own{n}", f"{chest}/38x30", f"M{n}", State())
    for n, chest in enumerate(draw(st.lists(CHESTS, max_size=4))):
        gear += whole_set(f"spare{n}", f"{chest}/38x30", None, RACK)
    return situation(gear, people, RidingFacts(fit=FIT))


def _bundle(unit: Unit) -> Bundle:
    return Bundle(unit=unit.id, slot=unit.slot, holder=unit.holder, dues=(), cause=None)


@settings(max_examples=150, deadline=None)
@given(floors())
def test_short_answers_are_the_whole_one(there: Situation) -> None:
    """What nobody wears costs nobody a seat; without a chain of spares somebody loses one.

    Source: Berge 1957, a matching is largest exactly when no alternating path is left.
    """
    before, seats = who_rides(there), Seats(there)
    for unit in there.units:
        bundle = _bundle(unit)
        whole = seats_kept(before, without(there, (bundle,))) is not None
        if not is_worn(before, bundle):
            assert whole
        else:
            assert seats.may_keep(before, bundle, ()) is whole


def test_what_is_taken_already_serves_nobody() -> None:
    """The only spare cannot stand in twice."""
    gear = [*whole_set("own", "44/38x30", "M0", State()),
            *whole_set("spare", "44/38x30", None, RACK)]  # fmt: skip
    sizes = (("chest", "44"), ("waist", "38"), ("inseam", "30"))
    there = situation(gear, [rider("M0", needs=(Slot.SET,), measures=sizes)], RidingFacts(fit=FIT))
    own = next(unit for unit in there.units if unit.holder)
    before, seats = who_rides(there), Seats(there)
    spare = next(unit for unit in there.units if not unit.holder)

    assert seats.may_keep(before, _bundle(own), ())
    assert not seats.may_keep(before, _bundle(own), {spare.id})
