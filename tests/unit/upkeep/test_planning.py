"""Which due pieces go today, who wears what meanwhile, and what is overdue by which cause."""

import datetime as dt
from dataclasses import replace

import pytest
from tests.riding_gear import FIT, coat, rider, situation, trousers, whole_set

from sootline.core.basis import ComponentId, DateSpan, MessageId, UnreadableValueError
from sootline.core.gear import CareStage, Component, Custody, Hold, State
from sootline.core.intervals import Due, Matter, Standing
from sootline.core.riding import CrewMinimum, RidingFacts, Situation, Slot
from sootline.core.rulebook import Decider
from sootline.core.upkeep.planning import (
    Cause,
    DayPlan,
    OverdueSheet,
    Swap,
    WorkToday,
    check_swaps,
    plan_day,
    sheet_overdue,
)

TODAY = dt.date(2026, 3, 1)
RACK = State(custody=Custody.SPARE_RACK)
SIZES = (("chest", "44"), ("waist", "38"), ("inseam", "30"))
INSPECTION = Matter.ADVANCED_INSPECTION
HOLD = Hold(
    cause="powder",
    question=MessageId("care.ask.powder"),
    decider=Decider.SAFETY_OFFICER,
    deputy=Decider.CHIEF,
    escalate_after_h=24,
)


def floor(spares: int = 1, riders: int = 2, own: State | None = None) -> Situation:
    """Return members of one size with a set each, and spare sets."""
    gear: list[Component] = []
    for n in range(riders):
        gear += whole_set(f"own{n}", "44/38x30", f"M{n}", own or State())
    for n in range(spares):
        gear += whole_set(f"spare{n}", "44/38x30", None, RACK)
    people = [rider(f"M{n}", needs=(Slot.SET,), measures=SIZES) for n in range(riders)]
    return situation(gear, people, RidingFacts(fit=FIT))


def gear_of(state: State | None = None) -> dict[ComponentId, Component]:
    """Return the members' sets and a spare by number."""
    every = [
        *whole_set("own0", "44/38x30", "M0", state or State()),
        *whole_set("own1", "44/38x30", "M1", State()),
        *whole_set("spare0", "44/38x30", None, RACK),
    ]
    return {one.id: one for one in every}


def due(piece: str, day: str = "2026-02-20", matter: Matter = INSPECTION) -> Due:
    """Return one matter of one piece."""
    span = DateSpan.parse(day)
    first = span.earliest or span.latest
    assert first is not None
    over = (TODAY - first).days
    standing = Standing.OVERDUE if over > 0 else Standing.LATER
    days = over if over > 0 else None
    return Due(
        component=ComponentId(piece), matter=matter, first_day=span, standing=standing,
        days_over=days, reasons=(),
    )  # fmt: skip


BOTH = (due("own0-coat-shell"), due("own0-coat-liner"), due("own1-coat-liner", "2026-02-25"))


def plan(
    dues: tuple[Due, ...] = BOTH,
    there: Situation | None = None,
    work: tuple[WorkToday, ...] = (),
    state: State | None = None,
) -> DayPlan:
    """Plan the day, two weeks ahead."""
    by = TODAY + dt.timedelta(days=14)
    return plan_day(dues, gear_of(state), there or floor(), work, by=by)


def test_one_spare_lets_one_set_go() -> None:
    """The most pressing goes, its wearer rides in the spare; the other would leave a seat empty."""
    found = plan()

    assert [one.components for one in found.taken] == [("own0-coat-shell", "own0-coat-liner")]
    assert found.swaps == (Swap(member=found.taken[0].holder, slot=Slot.SET, spare="spare0"),)  # type: ignore[arg-type]
    assert [(one.bundle.unit, one.cause) for one in found.left] == [("own1", Cause.NO_SPARE)]
    assert len(found.after.now.can) == len(found.before.now.can) == 2


def test_with_two_spares_both_go() -> None:
    """Each member in another spare."""
    found = plan(there=floor(spares=2))

    assert {swap.spare for swap in found.swaps} == {"spare0", "spare1"}
    assert found.left == ()


def test_a_spare_that_is_due_itself_goes_without_a_swap() -> None:
    """Nobody wears it; nobody needs another."""
    found = plan((due("spare0-coat-shell"),))

    assert ([one.unit for one in found.taken], found.swaps) == (["spare0"], ())


def test_time_that_is_said_limits_what_is_taken() -> None:
    """Twenty minutes for pieces of fifteen: one liner, not two pieces of one coat."""
    work = (WorkToday(matter=INSPECTION, minutes=20, each=15),)
    found = plan(work=work)

    assert [one.unit for one in found.taken] == ["own1"]
    assert [one.cause for one in found.left] == [Cause.NO_TIME]
    assert found.minutes == ((INSPECTION, 15),)
    assert [one.message for one in found.reasons] == ["upkeep.suggested"]


def test_a_kind_of_work_without_time_is_asked_about() -> None:
    """It is not counted, and that is said."""
    messages = [one.message for one in plan().reasons]

    assert messages == ["upkeep.suggested", "upkeep.no_time_said"]


def test_work_far_ahead_waits() -> None:
    """Due in a month: not today's."""
    found = plan((due("own0-coat-shell", "2026-04-01"), due("own1-hood", matter=Matter.RETIREMENT)))

    assert (found.taken, found.left) == ((), ())


STATES = [
    (State(custody=Custody.CONTRACTOR), Cause.CONTRACTOR),
    (State(custody=Custody.REPAIR), Cause.CONTRACTOR),
    (State(holds=(HOLD,)), Cause.DECISION),
    (State(custody=Custody.EVIDENCE), Cause.DECISION),
    (State(custody=Custody.NOT_SEEN), Cause.NOT_SEEN),
    (State(custody=Custody.LOAN), Cause.NOT_SEEN),
    (State(custody=Custody.BAG), Cause.UNDER_WAY),
    (State(stage=CareStage.WASHED), Cause.UNDER_WAY),
]


@pytest.mark.parametrize(("state", "cause"), STATES)
def test_what_is_not_there_to_take(state: State, cause: Cause) -> None:
    """The first cause that holds, in the table's order."""
    (left,) = plan((due("own0-coat-shell"),), floor(own=state), state=state).left

    assert left.cause is cause
    assert left.reasons[0].message == f"upkeep.left.{cause}"


def test_a_shell_whose_liner_is_away_can_be_seen_to() -> None:
    """It is off the hook anyway; the liner waits for the contractor."""
    pieces = gear_of()
    liner = ComponentId("own0-coat-liner")
    pieces[liner] = replace(pieces[liner], state=State(custody=Custody.CONTRACTOR))
    own = list(pieces.values())[:10]
    spare = whole_set("spare0", "44/38x30", None, RACK)
    people = [rider(f"M{n}", needs=(Slot.SET,), measures=SIZES) for n in range(2)]
    there = situation([*own, *spare], people, RidingFacts(fit=FIT))
    found = plan_day(BOTH[:2], pieces, there, (), by=TODAY)

    assert [one.components for one in found.taken] == [("own0-coat-shell",)]
    assert [(one.bundle.components, one.cause) for one in found.left] == [
        ((liner,), Cause.CONTRACTOR)
    ]


def sheet(dues: tuple[Due, ...], there: Situation, state: State | None = None) -> OverdueSheet:
    """Write the sheet of the day."""
    return sheet_overdue(dues, gear_of(state), there, TODAY)


@pytest.mark.parametrize(("spares", "cause"), [(0, Cause.NO_SPARE), (1, Cause.NO_TIME)])
def test_overdue_without_a_spare_or_without_time(spares: int, cause: Cause) -> None:
    """Nothing fits its wearer meanwhile; or something does, and nobody found the time."""
    found = sheet((due("own0-coat-shell"),), floor(spares=spares))

    assert [(row.cause, row.days_over) for row in found.rows] == [(cause, 9)]


def test_the_sheet_counts_each_matter_once_with_its_definition() -> None:
    """Two matters of one piece at the contractor; what is not overdue is not counted."""
    away = State(custody=Custody.CONTRACTOR)
    dues = (
        due("own0-coat-shell"),
        due("own0-coat-shell", "2026-01-01", Matter.ADVANCED_CLEANING),
        due("own1-coat-shell", "2026-04-01"),
    )
    first = sheet(dues, floor(own=away), away).causes[0]

    assert (first.cause, first.matters, first.components, first.longest) == (
        Cause.CONTRACTOR, 2, 1, 59,
    )  # fmt: skip
    assert first.definition == "upkeep.definition.contractor"


def test_a_crew_keeps_its_interior_members() -> None:
    """Taking a set that would leave a crew one short for interior work is left."""
    gear = [*whole_set("own0", "44/38x30", "M0"), *coat("sp", "44", None, RACK),
            *trousers("sp2", "38x30", None, RACK)]  # fmt: skip
    people = [rider("M0", needs=(Slot.SET,), measures=SIZES, crew="E2")]
    crews = (CrewMinimum(crew="E2", interior=1),)
    there = situation(gear, people, RidingFacts(fit=FIT, crews=crews))
    found = plan_day((due("own0-coat-shell"),), {one.id: one for one in gear}, there, (),
                     by=TODAY)  # fmt: skip

    assert found.after.now.crews[0].interior == found.before.now.crews[0].interior


def test_a_swap_is_looked_over_by_other_code() -> None:
    """Given twice, taken itself, not there, not fitting: each is found."""
    there, good = floor(), plan()
    swap = good.swaps[0]
    bad = [
        ((swap, swap), ()),
        ((swap,), (replace(good.taken[0], unit="spare0"),)),
        ((replace(swap, spare="own1"),), ()),
    ]
    for swaps, taken in bad:
        with pytest.raises(AssertionError):
            check_swaps(swaps, taken, there)


def test_time_for_work_is_not_below_nought() -> None:
    """And a piece takes a minute at least."""
    for minutes, each in ((-1, 5), (10, 0)):
        with pytest.raises(UnreadableValueError):
            WorkToday(matter=INSPECTION, minutes=minutes, each=each)
