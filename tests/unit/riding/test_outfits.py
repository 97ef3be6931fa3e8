"""From components to sets, pairs and masks."""

import datetime as dt
from dataclasses import replace

from tests.riding_gear import (
    FIT,
    NOW,
    SOILED,
    coat,
    mask,
    piece,
    rider,
    situation,
    trousers,
    whole_set,
)

from sootline.core.basis import ComponentId, KindId, MemberId, SetId
from sootline.core.gear import Component, Element, State
from sootline.core.riding import (
    Mask,
    MaskState,
    RidingFacts,
    Situation,
    Slot,
    TryOn,
    Unit,
    slots_of,
    who_rides,
)

SET_ONLY = (Slot.SET,)
NO_FACTS = RidingFacts()
MIXED = RidingFacts(fit=FIT, mixed_sets=True)


def units(components: list[Component], facts: RidingFacts = NO_FACTS) -> tuple[Unit, ...]:
    """Return everything the components fill."""
    return situation(components, [rider("M1", needs=SET_ONLY)], facts).units


def messages(unit: Unit) -> list[str]:
    """Return why it cannot be worn."""
    return [one.message for one in unit.reasons]


def held_by(components: list[Component], member: str) -> list[Component]:
    """Return spares handed out to a member."""
    state = State(holder=MemberId(member))
    return [replace(one, state=state) for one in components]


def coverall(name: str, owner: str | None = None) -> list[Component]:
    """Return a coverall with its drag device."""
    kinds = ("coverall-shell", "coverall-liner", "drag-device")
    return [piece(f"{name}-{kind}", kind, owner, group=name, chest="44") for kind in kinds]


def rides(floor: Situation) -> bool:
    """Whether the one member rides."""
    return len(who_rides(floor).now.can) == 1


def test_a_coat_without_its_drag_device_is_not_whole() -> None:
    """Shell and liner alone are no coat: the missing kind is named."""
    parts = [one for one in whole_set("S1", "44/38x30") if one.kind != "drag-device"]

    (unit,) = units(parts)

    assert messages(unit) == ["riding.piece.missing"]
    assert unit.reasons[0].value("kind") == "drag-device"
    assert unit.back is None


def test_two_liners_in_one_set_must_be_settled_by_a_person() -> None:
    """Which liner belongs cannot be told from the record."""
    (unit,) = units(
        [*whole_set("S1", "44/38x30"), piece("X", "coat-liner", group="S1", chest="44")]
    )

    assert messages(unit) == ["riding.piece.doubled"]


def test_trousers_alone_are_half_a_set() -> None:
    """A spare pair of trousers without a coat is given to nobody."""
    (unit,) = units(trousers("S1", "38x30"))

    assert messages(unit) == ["riding.set.half"]
    assert unit.reasons[0].value("element") == "coat"


def test_parts_that_disagree_in_size_leave_it_unknown() -> None:
    """A 44 shell over a 42 liner has no chest size anybody can rely on."""
    parts = [
        replace(one, size=(("chest", "42"),)) if one.kind == "coat-liner" else one
        for one in whole_set("S1", "44/38x30")
    ]

    (unit,) = units(parts)

    assert dict(unit.size)["chest"] == ""


def test_a_part_the_policy_wants_must_be_there() -> None:
    """Where suspenders are wanted, trousers without them are not whole."""
    facts = RidingFacts(also_needed=(KindId("suspenders"),))

    (unit,) = units(whole_set("M1", "44/38x30", "M1"), facts)

    assert messages(unit) == ["riding.piece.missing"]


def test_two_pairs_of_gloves_of_one_owner_are_two_units() -> None:
    """One soiled pair does not keep the other off."""
    pairs = [piece("G1", "gloves", "M1", SOILED), piece("G2", "gloves", "M1")]

    assert [unit.back is not None for unit in units(pairs)] == [False, True]


def test_a_second_own_set_covers_while_the_first_is_soiled() -> None:
    """Whoever owns two sets rides in the other."""
    gear = [*whole_set("A", "44/38x30", "M1", SOILED), *whole_set("B", "44/38x30", "M1")]

    assert rides(situation(gear, [rider("M1", needs=SET_ONLY)], RidingFacts()))


def test_own_coat_and_own_trousers_of_different_sets_make_an_outfit() -> None:
    """What is one's own may be worn together; nothing is split from a spare set."""
    gear = [*coat("A", "44", "M1"), *trousers("B", "38x30", "M1")]

    assert rides(situation(gear, [rider("M1", needs=SET_ONLY)], RidingFacts()))


def test_an_own_coat_without_trousers_is_half_a_set() -> None:
    """The coat alone puts nobody in a seat."""
    (unit,) = units(coat("A", "44", "M1"))

    assert messages(unit) == ["riding.set.half"]


def test_a_set_handed_out_is_held_not_own() -> None:
    """Whoever was given a spare rides in it."""
    floor = situation(
        held_by(whole_set("S1", "44/38x30"), "M1"), [rider("M1", needs=SET_ONLY)], RidingFacts()
    )

    assert rides(floor)
    assert [(unit.holder, unit.own) for unit in floor.units] == [("M1", False)]


def test_own_gear_lent_to_another_is_with_the_other() -> None:
    """M2's set on M1 covers M1, and M2 has nothing."""
    gear = held_by(whole_set("M2", "44/38x30", "M2"), "M1")
    floor = situation(
        gear, [rider("M1", needs=SET_ONLY), rider("M2", needs=SET_ONLY)], RidingFacts()
    )

    assert [one.member for one in who_rides(floor).now.can] == ["M1"]


def test_a_coverall_is_coat_and_trousers_at_once() -> None:
    """Own or spare, a coverall fills the set's place whole."""
    assert [unit.slot for unit in units(coverall("C1", "M1"))] == [Slot.SET]
    assert [unit.elements for unit in units(coverall("C2"))] == [(Element.COVERALL,)]


def test_sets_are_not_split_unless_the_policy_says_so() -> None:
    """Coat of S1 and trousers of S2 fit: M1 rides only where sets may be mixed."""
    gear = [*whole_set("S1", "44/44x36"), *whole_set("S2", "52/38x30")]
    measures = (("chest", "44"), ("waist", "38"), ("inseam", "30"))
    whole = rider("M1", needs=slots_of(MIXED.needs[:2], mixed_sets=False), measures=measures)
    mixed = rider("M1", needs=slots_of(MIXED.needs[:2], mixed_sets=True), measures=measures)

    assert not rides(situation(gear, [whole], RidingFacts(fit=FIT)))
    assert rides(situation(gear, [mixed], MIXED))


def test_where_sets_are_mixed_an_own_coverall_fills_both_places() -> None:
    """A spare coverall is not offered there: it would have to be given twice."""
    mixed = rider("M1", needs=(Slot.COAT, Slot.TROUSERS))

    assert rides(situation(coverall("C1", "M1"), [mixed], MIXED))
    assert situation(coverall("C1"), [mixed], MIXED).units == ()


def test_a_coverall_needed_is_a_set() -> None:
    """Coat, trousers and coverall are one place of the outfit."""
    needs = (Element.COVERALL, Element.COAT, Element.TROUSERS, Element.HOOD)

    assert slots_of(needs, mixed_sets=False) == (Slot.SET, Slot.HOOD)


def test_a_mask_counts_by_its_cross_reference() -> None:
    """Usable now; with the technician from the time given; handed out it is the holder's."""
    back = NOW + dt.timedelta(minutes=90, seconds=1)
    spare = Mask(id=ComponentId("K9"), holder=MemberId("M1"), size="S", state=MaskState.USABLE)
    facts = RidingFacts(
        masks=(replace(mask("M1", MaskState.WITH_TECHNICIAN), back=back), spare, mask("M2"))
    )

    first, second, third = units([], facts)

    assert first.back is not None
    assert first.back.late == 91
    assert messages(first) == ["riding.mask.time"]
    assert (second.holder, second.own) == ("M1", False)
    assert (third.holder, third.own) == ("M2", True)


def test_a_mask_nobody_knows_about_covers_nobody() -> None:
    """An unknown mask without a size is named as such."""
    (unit,) = units([], RidingFacts(masks=(Mask(id=ComponentId("K1"), owner=MemberId("M1")),)))

    assert unit.back is None
    assert unit.size == ()
    assert unit.reasons[0].value("size") == "?"


def test_an_unsigned_try_on_keeps_its_wearer_outside() -> None:
    """M1 rides in the untried coat but counts for no interior seat."""
    gear = whole_set("M1", "44/38x30", "M1")
    try_on = TryOn(component=gear[0].id, member=MemberId("M1"))
    facts = RidingFacts(try_ons=(try_on,))
    signed = RidingFacts(try_ons=(replace(try_on, signed_by="Lt. 9"),))

    (untried,) = who_rides(situation(gear, [rider("M1", needs=SET_ONLY)], facts)).now.can
    (tried,) = who_rides(situation(gear, [rider("M1", needs=SET_ONLY)], signed)).now.can

    assert (untried.interior, tried.interior) == (False, True)


def test_loose_parts_of_a_helmet_go_with_the_helmet() -> None:
    """A helmet is whole only with the parts recorded with it."""
    parts = [
        piece("H1", "helmet-shell", group="H1", head="one"),
        replace(piece("E1", "ear-neck-cover", state=SOILED), set=SetId("H1")),
    ]

    (unit,) = units(parts)

    assert unit.components == ("H1", "E1")
    assert messages(unit) == ["riding.piece.stage"]
