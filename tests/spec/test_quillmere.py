"""Twelve volunteers without a washer, 03:30: who can ride, and whom would a hand-out cost a seat?

Quillmere is invented. Its fit limits are the department's own, stated so that the answer can be
worked out by hand: chest and waist equal or up to 2 in larger, inseam within 1 in, gloves exact.
"""

import datetime as dt
from dataclasses import replace

import pytest
from tests.riding_gear import (
    FIT,
    NOW,
    SOILED,
    coat,
    mask,
    piece,
    rider,
    situation,
    small_gear,
    whole_set,
)

from sootline.core.basis import ComponentId, MemberId
from sootline.core.gear import Element
from sootline.core.riding import (
    CannotRide,
    CrewMinimum,
    HandOut,
    Loan,
    Purchase,
    RidingFacts,
    Situation,
    check_hand_out,
    list_purchases,
    say_coverage,
    timeline,
    who_rides,
)
from sootline.words import say

EXPOSED = {
    "M01": ("46/40x30", "XL"),
    "M02": ("44/38x32", "L"),
    "M04": ("42/36x30", "L"),
    "M05": ("48/42x30", "XXL"),
    "M07": ("40/34x30", "L"),
    "M09": ("34/28x26", "XS"),
    "M11": ("44/38x30", "XXL"),
}
UNEXPOSED = ("M03", "M08", "M10", "M06", "M12")
LOAN = Loan(
    components=tuple(ComponentId(one.id) for one in whole_set("L1", "44/38x30")),
    lender="Ashby Mill",
    arrives=NOW + dt.timedelta(minutes=45),
)


def quillmere(*, loan: bool) -> Situation:
    """Return the floor at 03:30, with or without the neighbour's set on its way."""
    components = [*whole_set("S1", "46/40x30"), *whole_set("S2", "42/36x30"), *coat("S3", "38")]
    gloves = {"G1": "XL", "G2": "L", "G3": "L"}
    components += [piece(name, "gloves", hand=size) for name, size in gloves.items()]
    components += [piece(f"H{n}", "hood") for n in range(7)]
    riders = []
    for name, (size, hand) in EXPOSED.items():
        components += whole_set(name, size, name, SOILED)
        components += small_gear(name, ("hood", "gloves"))
        chest, waist, inseam = size.replace("x", "/").split("/")
        measures = {"chest": chest, "waist": waist, "inseam": inseam, "hand": hand}
        riders.append(rider(name, measures=tuple(measures.items())))
    for name in UNEXPOSED:
        components += [*whole_set(name, "42/36x30", name), *small_gear(name)]
        riders.append(rider(name, away=name == "M06", interior=name != "M12"))
    if loan:
        components += whole_set("L1", "44/38x30")
    facts = RidingFacts(
        fit=FIT,
        one_size=(Element.HOOD,),
        crews=(CrewMinimum(interior=4),),
        masks=tuple(mask(one.id) for one in riders),
        loans=(LOAN,) if loan else (),
    )
    return situation(components, riders, facts)


def sets_given(floor: Situation) -> dict[str, str]:
    """Return which set went to whom in the end."""
    return {
        worn.unit.id: one.member
        for one in who_rides(floor).moments[-1].can
        for worn in one.outfit
        if worn.handed and worn.slot == "set"
    }


def left_out(name: str) -> CannotRide:
    """Return a member of those left out in the end."""
    last = who_rides(quillmere(loan=True)).moments[-1]
    return next(one for one in last.cannot if one.member == name)


def test_now_two_spares_are_usable_and_five_interior_members_covered() -> None:
    """Two spares are usable: M03, M08, M10 and two more, proven the most possible."""
    riding = who_rides(quillmere(loan=False))

    interior = [one.member for one in riding.now.can if one.interior]
    assert len(interior) == 5
    assert {"M03", "M08", "M10"} < set(interior)
    assert riding.best_now
    assert riding.most_now == len(riding.now.can)


def test_the_crew_minimum_is_met_now_without_the_probationary_member() -> None:
    """M12 rides outside only and counts for no interior seat: five of four asked for."""
    (crew,) = who_rides(quillmere(loan=False)).now.crews

    assert (crew.interior, crew.minimum, crew.met) == (5, 4, True)


def test_m12_rides_but_not_inside_and_m06_is_away() -> None:
    """The exterior-only member rides as such; the member out of town is named as away."""
    riding = who_rides(quillmere(loan=False))

    (m12,) = [one for one in riding.now.can if one.member == "M12"]
    assert not m12.interior
    assert riding.away == ("M06",)


def test_with_the_loan_only_one_distribution_covers_six() -> None:
    """S1 to M01, S2 to M07 and L1 to M04 is the only way to use all three sets."""
    riding = who_rides(quillmere(loan=True))

    assert sets_given(quillmere(loan=True)) == {"S1": "M01", "S2": "M07", "L1": "M04"}
    assert [sum(one.interior for one in moment.can) for moment in riding.moments] == [5, 6]
    assert [moment.minute for moment in riding.moments] == [0, 45]
    assert riding.best_later


@pytest.mark.parametrize(
    ("member", "failed"),
    [
        ("M02", {"set": ("inseam",)}),
        ("M05", {"set": ("chest", "waist"), "gloves": ("hand",)}),
        ("M11", {"gloves": ("hand",)}),
        ("M09", {"set": ("chest", "waist", "inseam"), "gloves": ("hand",)}),
    ],
)
def test_those_left_out_are_named_with_the_dimension_that_failed(
    member: str, failed: dict[str, tuple[str, ...]]
) -> None:
    """M02 by the inseam, M05 by size and gloves, M11 by gloves alone, M09 by everything."""
    assert {gap.slot.value: gap.failed for gap in left_out(member).gaps} == failed


def test_only_these_four_are_left_out() -> None:
    """Nobody else is without a seat once the loan is here."""
    last = who_rides(quillmere(loan=True)).moments[-1]

    assert {one.member for one in last.cannot} == {"M02", "M05", "M09", "M11"}


def test_the_smallest_full_spare_is_eight_inches_too_big_for_m09() -> None:
    """S2 comes closest for M09, 8 in over in the chest; S3, nearer, has no trousers."""
    gap = next(gap for gap in left_out("M09").gaps if gap.slot == "set")

    closest, half = gap.nearest
    assert closest.unit.id == "S2"
    assert {one.name: one.off for one in closest.dimensions}["chest"] == 8
    assert half.unit.id == "S3"
    assert [found.message for found in half.reasons] == ["riding.set.half"]


def test_the_coat_alone_is_given_to_nobody() -> None:
    """S3 has no trousers and sets are not split."""
    assert "S3" not in sets_given(quillmere(loan=True))


def test_giving_s2_to_m04_now_is_warned_of_before_it_wastes_the_loan() -> None:
    """The loan's only other fit, M11, has no gloves: six would become five."""
    hand_out = HandOut(member=MemberId("M04"), unit="S2")

    (found,) = check_hand_out(quillmere(loan=True), hand_out)

    assert found.message == "riding.hand_out.wastes"
    given = [found.value(key) for key in ("wasted", "best", "left", "minute", "instead")]
    assert given == ["L1", "7", "6", "45", "M07"]


def test_giving_s2_to_m07_draws_no_warning() -> None:
    """The hand-out of the best distribution costs nobody a seat."""
    hand_out = HandOut(member=MemberId("M07"), unit="S2")

    assert check_hand_out(quillmere(loan=True), hand_out) == ()


def test_s1_is_never_offered_to_m09() -> None:
    """A hand-out that does not fit is refused, dimension by dimension."""
    hand_out = HandOut(member=MemberId("M09"), unit="S1")

    found = check_hand_out(quillmere(loan=True), hand_out)

    assert {one.message for one in found} == {"riding.fit.too-large"}
    assert [one.value("dimension") for one in found] == ["chest", "waist", "inseam"]


def test_one_small_set_with_xs_gloves_covers_m09_whom_nothing_else_covers() -> None:
    """The shopping hint: chest 34, 28 by 26, gloves XS, and M09 alone."""
    floor = quillmere(loan=True)

    found = list_purchases(floor, who_rides(floor))

    (hint,) = [one for one in found if "M09" in one.covers]
    assert isinstance(hint, Purchase)
    assert [(piece.slot.value, dict(piece.size)) for piece in hint.pieces] == [
        ("set", {"chest": "34", "waist": "28", "inseam": "26"}),
        ("gloves", {"hand": "XS"}),
    ]
    assert hint.only == ("M09",)


def test_the_next_day_shows_a_step_when_the_loan_arrives() -> None:
    """Own gear has no known time back, so the only later step is M04 at 04:15."""
    steps = timeline(quillmere(loan=True))

    assert [(step.minute, step.gained) for step in steps[1:]] == [(45, ("M04",))]


def test_a_late_loan_counts_from_its_late_end() -> None:
    """A set promised in 45 to 90 minutes covers nobody before 90."""
    floor = quillmere(loan=True)
    units = tuple(
        replace(unit, back=replace(unit.back, late=90)) if unit.id == "L1" and unit.back else unit
        for unit in floor.units
    )

    steps = timeline(replace(floor, units=units))

    assert [step.minute for step in steps] == [0, 90]


def test_the_answer_reads_over_the_radio() -> None:
    """Who rides first, then each member left out with the size that is not here."""
    floor = quillmere(loan=True)

    said = say_coverage(who_rides(floor).now, NOW)

    spoken = [say(one.message, one.values) for one in said]
    of_m09 = [say(one.message, one.values) for one in said if ("member", "M09") in one.values]
    assert spoken[:2] == ["Six can ride now.", "Five of them for interior work."]
    assert "No gloves of size XS here." in of_m09
    assert "Rides in a spare or loan from 04:15." in spoken
    assert of_m09[-1] == "No time known."
