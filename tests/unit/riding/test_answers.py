"""Radio, hand-outs, exchanges, the next 24 hours and purchases, case by case."""

import datetime as dt
from dataclasses import replace

import pytest
from tests.riding_gear import FIT, NOW, SOILED, mask, piece, rider, situation, whole_set

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    DateSpan,
    Finding,
    MemberId,
    MessageId,
    MinuteSpan,
    UnreadableValueError,
)
from sootline.core.gear import Component, Element, Hold, State
from sootline.core.riding import (
    Back,
    CrewMinimum,
    Exchange,
    HandOut,
    Loan,
    RidingFacts,
    Situation,
    Slot,
    check_exchange,
    check_hand_out,
    clock,
    list_purchases,
    months_left,
    say_coverage,
    timeline,
    who_rides,
)
from sootline.core.riding.matching import Demand, Need, Seeker, Stock, hand_out
from sootline.core.rulebook import Decider

GLOVES_ONLY = (Slot.GLOVES,)
FACTS = RidingFacts(fit=FIT)


def hand(size: str) -> tuple[tuple[str, str], ...]:
    """Return the measures of a hand."""
    return (("hand", size),)


def gloves(*sizes: str) -> list[Component]:
    """Return spare pairs."""
    return [piece(f"G{n}", "gloves", hand=size) for n, size in enumerate(sizes)]


def floor(
    components: list[Component], *hands: str, facts: RidingFacts = FACTS, **found: object
) -> Situation:
    """Return members M0, M1, ... who need gloves alone."""
    riders = [
        rider(f"M{n}", needs=GLOVES_ONLY, measures=hand(size)) for n, size in enumerate(hands)
    ]
    return situation(components, riders, facts, **found)


def spoken(of: Situation, minute: int = 0) -> list[str]:
    """Return the messages said for the first moment."""
    return [one.message for one in say_coverage(who_rides(of, minute).now, NOW)]


def soiled(owner: str) -> Component:
    """Return a member's own gloves, in the bag."""
    return piece(f"{owner}-gloves", "gloves", owner, SOILED)


def test_a_crew_below_its_minimum_is_said_first() -> None:
    """Engine 2 needs two and has one."""
    crews = (CrewMinimum(crew="Engine 2", interior=2),)
    riders = [
        rider(f"M{n}", needs=GLOVES_ONLY, measures=hand("L"), crew="Engine 2") for n in range(2)
    ]
    of = situation(gloves("L"), riders, RidingFacts(fit=FIT, crews=crews))

    assert spoken(of)[:2] == ["riding.radio.crew_now", "riding.radio.below_minimum"]


def test_those_who_stay_outside_are_not_counted_inside_over_the_radio() -> None:
    """Two ride and one of them is for interior work: the minimum of one is met, and said so."""
    riders = [
        rider(f"M{n}", needs=GLOVES_ONLY, measures=hand("L"), interior=n == 0) for n in range(2)
    ]
    facts = RidingFacts(fit=FIT, crews=(CrewMinimum(interior=1),))

    said = say_coverage(who_rides(situation(gloves("L", "L"), riders, facts)).now, NOW)

    assert [one.message for one in said] == ["riding.radio.department_now", "riding.radio.interior"]
    assert said[1].value("number") == "1"


def test_crews_are_said_one_after_the_other() -> None:
    """Those left out follow their own crew."""
    riders = [rider(f"M{n}", needs=GLOVES_ONLY, crew=f"Engine {n}") for n in range(2)]

    assert [one for one in spoken(situation([], riders, FACTS)) if "crew" in one] == [
        "riding.radio.crew_now",
        "riding.radio.crew_now",
    ]


def test_the_last_pair_given_to_another_is_said_as_needed_for_others() -> None:
    """The pair fits both; the second hears why there is none."""
    assert "riding.radio.taken" in spoken(floor(gloves("L"), "L", "L"))


def test_a_measure_nobody_took_is_said() -> None:
    """Not measured is said as such, never as a misfit."""
    assert "riding.radio.not-measured" in spoken(floor(gloves("L"), " "))


def test_nothing_at_all_is_said_as_not_recorded() -> None:
    """No own gloves and no spare on record."""
    assert "riding.radio.not_recorded" in spoken(floor([], "L"))


@pytest.mark.parametrize(
    ("when", "message"),
    [
        (MinuteSpan(earliest=600, likely=620, late=690), "riding.radio.back_between"),
        (MinuteSpan.exactly(600), "riding.radio.back_at"),
    ],
)
def test_the_time_back_is_said_as_the_plan_has_it(when: MinuteSpan, message: str) -> None:
    """An interval as an interval, a moment as a moment."""
    back = Back(component=ComponentId("M0-gloves"), when=when)

    assert spoken(floor([soiled("M0")], "L", backs=(back,)))[-1] == message


def test_many_empty_places_are_said_in_one_breath() -> None:
    """With three places empty the reasons stay on paper."""
    kinds = ("hood", "gloves", "boots-leather")
    gear = [piece(kind, kind, "M0", SOILED) for kind in kinds]
    who = rider("M0", needs=(Slot.HOOD, Slot.GLOVES, Slot.BOOTS))

    said = say_coverage(who_rides(situation(gear, [who], FACTS)).now, NOW)

    assert [one.message for one in said[1:]] == ["riding.radio.none", "riding.radio.back_unknown"]
    assert said[1].value("slots") == "hood, gloves, boots"


def test_a_later_moment_is_said_with_its_time() -> None:
    """Asked about 45 minutes from now, the answer begins with the time."""
    assert spoken(floor(gloves("L"), "L"), 45)[0] == "riding.radio.department_from"


def test_the_clock_crosses_midnight_and_a_clock_change() -> None:
    """Minutes are elapsed minutes; a day or more away the date is said too."""
    assert clock(NOW, 45) == "04:15"
    assert clock(NOW, 24 * 60) == "2026-03-02 03:30"


def test_a_hand_out_that_costs_a_seat_now_is_warned_of() -> None:
    """XL fits M0 and M1 here, L only M0: giving XL to M0 leaves M1 without."""
    wide = replace(FACTS, fit=(replace(FIT[3], most=FIT[0].most),))
    of = floor(
        [piece("A", "gloves", hand="9"), piece("B", "gloves", hand="11")], "9", "10", facts=wide
    )

    (found,) = check_hand_out(of, HandOut(member=MemberId("M0"), unit="B"))

    assert found.message == "riding.hand_out.costs"
    assert (found.value("best"), found.value("left"), found.value("instead")) == ("2", "1", "M1")


def test_a_spare_that_cannot_be_worn_is_not_handed_out() -> None:
    """A spare in the bag is refused with its own reason."""
    of = floor([piece("G9", "gloves", state=SOILED, hand="L")], "L")

    (found,) = check_hand_out(of, HandOut(member=MemberId("M0"), unit="G9"))

    assert found.message == "riding.piece.stage"


@pytest.mark.parametrize(
    ("member", "unit", "message"),
    [
        ("M7", "G0", "riding.hand_out.no_member"),
        ("M0", "G7", "riding.hand_out.no_spare"),
        ("M0", "M0-gloves", "riding.hand_out.not_spare"),
    ],
)
def test_a_hand_out_of_or_to_nobody_is_refused(member: str, unit: str, message: str) -> None:
    """An unknown member, an unknown spare, and somebody's own gear."""
    of = floor([*gloves("L"), soiled("M0")], "L")

    with pytest.raises(BadInputError) as refused:
        check_hand_out(of, HandOut(member=MemberId(member), unit=unit))

    assert [fault.message for fault in refused.value.faults] == [message]


def test_a_spare_freed_by_own_gear_covers_the_next() -> None:
    """M0's own gloves are back at 600: the spare pair then goes to M1."""
    back = Back(component=ComponentId("M0-gloves"), when=MinuteSpan.exactly(600))
    of = floor([soiled("M0"), *gloves("L")], "L", "L", backs=(back,))

    steps = timeline(of)

    assert [(step.minute, step.gained) for step in steps] == [(0, ("M0",)), (600, ("M1",))]


def test_a_moment_that_changes_nobodys_seat_is_no_step() -> None:
    """Own gear that comes back to somebody riding already changes nothing."""
    back = Back(component=ComponentId("M0-gloves"), when=MinuteSpan.exactly(600))

    assert len(timeline(floor([soiled("M0"), *gloves("L")], "L", backs=(back,)))) == 1


def test_nothing_beyond_24_hours_is_promised() -> None:
    """A plan that ends tomorrow night is not in the next 24 hours."""
    back = Back(component=ComponentId("M0-gloves"), when=MinuteSpan.exactly(24 * 60 + 1))

    assert len(timeline(floor([soiled("M0")], "L", backs=(back,)))) == 1


def test_a_purchase_covers_whoever_it_fits() -> None:
    """Two people without gloves L: one purchase, two it could cover, and nothing else does."""
    of = floor([], "L", "L", "S")

    first, second = list_purchases(of, who_rides(of))

    assert (first.covers, first.only) == (("M0", "M1"), ("M0", "M1"))
    assert second.covers == ("M2",)


def test_nobody_is_bought_for_without_measures() -> None:
    """A member who was not measured is in no purchase."""
    of = floor([], " ")

    assert list_purchases(of, who_rides(of)) == ()


def test_a_purchase_of_one_size_needs_no_measure() -> None:
    """A hood that fits everybody is bought without a size."""
    facts = RidingFacts(one_size=(Element.HOOD,))
    of = situation([], [rider("M0", needs=(Slot.HOOD,))], facts)

    (found,) = list_purchases(of, who_rides(of))

    assert [(one.slot, one.size) for one in found.pieces] == [(Slot.HOOD, ())]


def test_earlier_of_own_gear_and_loan_is_the_time_said() -> None:
    """Own gear at 30 beats a loan at 45, and the other way round."""
    lent = replace(piece("L1", "gloves", hand="L"), guest="Ashby Mill")
    loan = Loan(components=(lent.id,), arrives=NOW + dt.timedelta(minutes=45))
    facts = RidingFacts(fit=FIT, loans=(loan,))
    own = Back(component=ComponentId("M0-gloves"), when=MinuteSpan.exactly(30))
    slow = replace(own, when=MinuteSpan.exactly(90))

    (early,) = who_rides(floor([soiled("M0"), lent], "L", facts=facts, backs=(own,))).now.cannot
    (late,) = who_rides(floor([soiled("M0"), lent], "L", facts=facts, backs=(slow,))).now.cannot

    assert (early.earliest, early.in_spare) == (MinuteSpan.exactly(30), False)
    assert (late.earliest, late.in_spare) == (MinuteSpan.exactly(45), True)


def test_loans_and_masks_need_moments_with_their_offset() -> None:
    """A time without an offset, or a latest before the promise, is refused."""
    bare = dt.datetime(2026, 3, 1, 4)  # noqa: DTZ001 - the case itself
    with pytest.raises(UnreadableValueError, match="no_offset"):
        Loan(components=(), arrives=bare)
    with pytest.raises(UnreadableValueError, match="no_offset"):
        replace(mask("M0"), back=bare)
    with pytest.raises(UnreadableValueError, match=r"riding\.loan\.reversed"):
        Loan(components=(), arrives=NOW, latest=NOW - dt.timedelta(minutes=1))


@pytest.mark.parametrize(
    ("on", "first_day", "left"),
    [
        ("2026-09-01", "2027-08-01", 11),
        ("2026-09-02", "2027-08-01", 10),
        ("2026-08-31", "2027-02-28", 6),
        ("2026-09-01", "2026-09-01", 0),
        ("2026-09-01", "2020-01-01", 0),
        ("2026-09-01", "..2027-08-01", None),
    ],
)
def test_months_left_are_whole_civil_months_to_the_earliest_day(
    on: str, first_day: str, left: int | None
) -> None:
    """Clamped to a month's end, never negative, unknown without a lower bound."""
    assert months_left(dt.date.fromisoformat(on), DateSpan.parse(first_day)) == left


def exchange(**changed: object) -> tuple[Finding, ...]:
    """Return what is found on an exchange with something changed."""
    usual = Exchange(
        member=MemberId("P5"),
        on=dt.date(2026, 9, 1),
        returns=piece("X1", "coat-shell", "P5"),
        takes=piece("X2", "coat-shell"),
        first_day_out=DateSpan.parse("2030-01-01"),
    )
    return check_exchange(replace(usual, **changed)).findings  # type: ignore[arg-type]


def test_a_piece_that_is_with_somebody_else_cannot_be_returned() -> None:
    """P6 has it, so P5 brings nothing back."""
    away = piece("X1", "coat-shell", "P5", State(holder=MemberId("P6")))

    assert "riding.exchange.not_with_member" in {one.message for one in exchange(returns=away)}


def test_an_unknown_life_is_asked_about() -> None:
    """Without any bound on its date, nobody knows how long it may be used."""
    found = exchange(first_day_out=DateSpan())

    assert "riding.exchange.life_unknown" in {one.message for one in found}


@pytest.mark.parametrize(("limit", "warned"), [(None, False), (12, False), (48, True)])
def test_months_left_warn_only_below_the_departments_limit(
    limit: int | None, *, warned: bool
) -> None:
    """Forty months left: no warning without a limit or above it."""
    found = {one.message for one in exchange(warn_months_left=limit)}

    assert ("riding.exchange.months_left" in found) is warned


def test_riders_who_cannot_all_be_served_are_refused() -> None:
    """Two riders and one piece: handing out says so instead of dropping one."""
    seeker = Seeker(needs=(Need(stocks=(0,), misfits=(0,)),))
    demand = Demand(levels=1, stocks=(Stock(level=0, count=1),), seekers=(seeker, seeker))

    with pytest.raises(ValueError, match="no piece is left"):
        hand_out(demand, (0, 0))


def test_a_set_that_is_scarce_is_kept_for_who_needs_it() -> None:
    """Equal fit: the pair that fewer others could use goes first."""
    wide = replace(FACTS, fit=(replace(FIT[3], least=-FIT[0].most, most=FIT[0].most),))
    of = floor(
        [piece("A", "gloves", hand="11"), piece("B", "gloves", hand="9")],
        "10",
        facts=wide,
    )
    others = replace(
        of, riders=(*of.riders, rider("M9", needs=GLOVES_ONLY, measures=hand("13"), away=False))
    )

    riding = who_rides(others).now.can

    assert {one.member: one.outfit[0].unit.id for one in riding} == {"M0": "B", "M9": "A"}


def test_whole_outfits_are_answered_for_nobody_at_all() -> None:
    """A department without members has no riders and nothing to prove."""
    riding = who_rides(situation(whole_set("S1", "44/38x30"), [], FACTS))

    assert (riding.now.can, riding.now.cannot, riding.best_now) == ((), (), True)


def test_the_radio_keeps_to_itself_why_gear_is_held() -> None:
    """The channel is open: that gear waits is said, what its wearer met and who decides is not."""
    hold = Hold(
        cause="blood.through",
        question=MessageId("care.ask.blood"),
        decider=Decider.INFECTION_CONTROL,
        deputy=Decider.SAFETY_OFFICER,
        escalate_after_h=2,
    )
    held = piece("M0-gloves", "gloves", "M0", State(holds=(hold,)))

    said = say_coverage(who_rides(floor([held], "L")).now, NOW)

    (found,) = [one for one in said if one.message == "riding.radio.on_hold"]
    assert dict(found.values) == {"member": "M0", "kind": "gloves", "component": "M0-gloves"}
    assert "riding.piece.hold" not in {one.message for one in said}


def test_everything_said_about_a_member_carries_the_member() -> None:
    """A sheet can put each sentence beside its member, the state of own gear included."""
    said = say_coverage(who_rides(floor([soiled("M0")], "L")).now, NOW)

    assert [one.value("member") for one in said[1:]] == ["M0"] * (len(said) - 1)
    assert "riding.piece.stage" in {one.message for one in said}


def test_nothing_is_bought_where_no_fit_limit_is_set() -> None:
    """Nobody knows which mask would fit, so no purchase promises a seat."""
    of = situation([], [rider("M0", needs=(Slot.MASK,))], RidingFacts())

    assert list_purchases(of, who_rides(of)) == ()
