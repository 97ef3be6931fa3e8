"""Who is measured again, what a new member is given, what is ordered and by when."""

import datetime as dt
from dataclasses import replace

import pytest
from tests.riding_gear import FIT, piece, rider, situation, whole_set
from tests.upkeep_gear import book

from sootline.core.basis import (
    ComponentId,
    Confidence,
    DateSpan,
    MemberId,
    RuleId,
    UnreadableValueError,
)
from sootline.core.gear import Component, Custody, State
from sootline.core.intervals import Due, Matter, Standing
from sootline.core.riding import RidingFacts, Slot
from sootline.core.riding.purchases import Purchase, Wanted
from sootline.core.rulebook import Rule
from sootline.core.rulebook.rules import RuleKind
from sootline.core.upkeep.people import Refit, list_orders, list_refits, offer_first_day
from sootline.core.upkeep.people.facts import Change, Changed, LeadTime, Measured

TODAY = dt.date(2026, 3, 1)
MAREN, OLE = MemberId("118"), MemberId("221")


def refit(*measured: str, changed: str | None = None, policy: tuple[Rule, ...] = ()) -> Refit:
    """Say when Maren is measured again."""
    taken = [Measured(member=MAREN, on=DateSpan.parse(on)) for on in measured]
    reported = [
        Changed(member=member, change=Change.BODY, on=DateSpan.parse(changed))
        for member in (MAREN, OLE) if changed
    ]  # fmt: skip
    (found,) = list_refits((MAREN,), taken, reported, book(policy=policy), TODAY)
    return found


@pytest.mark.parametrize(
    ("measured", "changed", "first_day", "standing"),
    [
        (("2025-06-01",), None, "2026-06-01", Standing.LATER),
        (("2024-06-01", "2025-06-01"), None, "2026-06-01", Standing.LATER),
        (("2025-02-01",), None, "2026-02-01", Standing.OVERDUE),
        ((), None, "2026-03-01", Standing.TODAY),
        (("2025-06-01",), "2026-01-10", "2026-03-01", Standing.TODAY),
        (("2025-06-01",), "2025-01-10", "2026-06-01", Standing.LATER),
        (("2025-06",), "unknown", "2026-03-01", Standing.TODAY),
    ],
)
def test_when_somebody_is_measured_again(
    measured: tuple[str, ...], changed: str | None, first_day: str, standing: Standing
) -> None:
    """A year after the last time; at once when never measured, or changed since.

    Source: twelve months is common practice, no published source; a department sets its own.
    """
    found = refit(*measured, changed=changed)

    assert (found.first_day.earliest, found.standing) == (
        DateSpan.parse(first_day).earliest,
        standing,
    )


def test_a_departments_own_interval_comes_before_practice() -> None:
    """Two years by policy."""
    own = Rule(
        topic=RuleId("people.refit_months"),
        kind=RuleKind.INTERVAL,
        value=24,
        source="policy, invented",
        confidence=Confidence.POLICY,
    )

    assert refit("2025-02-01", policy=(own,)).standing is Standing.LATER


SIZES = (("chest", "44"), ("waist", "38"), ("inseam", "30"))


def test_without_any_interval_it_is_asked() -> None:
    """A text that says nothing: no day, and the question."""
    silent = replace(book(), practice=replace(book().practice, rules=()))
    taken = (Measured(member=MAREN, on=DateSpan.parse("2025-06")),)
    (found,) = list_refits((MAREN,), taken, (), silent, TODAY)

    assert (found.standing, found.reasons[0].message) == (
        Standing.NOT_KNOWN,
        "fitting.no_interval",
    )


RACK = State(custody=Custody.SPARE_RACK)


def test_a_new_member_is_offered_what_fits_the_best_first() -> None:
    """Coat and trousers as a set, by every dimension; "close enough" is not offered."""
    spares = [
        *whole_set("A", "46/40x30", None, RACK),
        *whole_set("B", "44/38x30", None, RACK),
        *whole_set("C", "50/44x30", None, RACK),
    ]
    new = rider(
        "300",
        needs=(Slot.SET, Slot.HOOD),
        measures=(("chest", "44"), ("waist", "38"), ("inseam", "30")),
    )
    floor = situation(spares, [new], RidingFacts(fit=FIT))
    found = {one.slot: one for one in offer_first_day(new, floor)}

    assert (found[Slot.SET].unit, found[Slot.SET].others) == ("B", ("A",))
    assert found[Slot.HOOD].unit is None


COAT = Component(
    id=ComponentId("0412"),
    kind=piece("x", "coat-shell").kind,
    owner=MAREN,
    size=(("chest", "44"),),
)


def retirement(day: str, matter: Matter = Matter.RETIREMENT) -> Due:
    """Return that the coat's life ends on a day."""
    span = DateSpan.parse(day)
    return Due(
        component=COAT.id, matter=matter, first_day=span, standing=Standing.LATER, reasons=()
    )


@pytest.mark.parametrize(
    ("takes", "needed", "message", "order_by"),
    [
        ((12, 20), "2026-12-01", "fitting.order_by", dt.date(2026, 7, 14)),
        ((12, 40), "2026-06-01", "fitting.order_late", dt.date(2025, 8, 25)),
        (None, "2026-06-01", "fitting.no_lead_time", None),
    ],
)
def test_an_order_is_due_its_longest_time_before(
    takes: tuple[int, int] | None, needed: str, message: str, order_by: dt.date | None
) -> None:
    """The same size again, weeks before the first day out."""
    times = [LeadTime(what="coat-shell", shortest=takes[0], longest=takes[1])] if takes else []
    (order,) = list_orders(
        (), [retirement(needed), retirement(needed, Matter.LINER_INSPECTION)], {COAT.id: COAT},
        times, today=TODAY, ahead=dt.date(2027, 3, 1),
    )  # fmt: skip

    assert (order.order_by, order.reasons[0].message) == (order_by, message)
    assert (order.size, order.members, order.count) == (COAT.size, (MAREN,), 1)


def test_nothing_is_ordered_for_what_lies_further_ahead() -> None:
    """Nor for a first day out that nobody knows."""
    later = [retirement("2029-01-01"), retirement("unknown")]

    assert list_orders((), later, {COAT.id: COAT}, (), today=TODAY, ahead=TODAY) == ()


def test_what_riding_lacks_is_needed_today_and_counted_by_size() -> None:
    """Two members who sit out in one size are one order of two; a spare for the rack has nobody."""
    wanted = (Wanted(slot=Slot.GLOVES, size=(("hand", "L"),)),)
    purchases = (Purchase(pieces=wanted, covers=(MAREN, OLE)),)
    rack = Component(id=ComponentId("9"), kind=COAT.kind)
    due = Due(component=rack.id, matter=Matter.RETIREMENT, first_day=DateSpan.day(TODAY),
              standing=Standing.OUT, reasons=())  # fmt: skip
    orders = list_orders(purchases, [due], {rack.id: rack}, (), today=TODAY, ahead=TODAY)
    gloves = next(one for one in orders if one.what == "gloves")

    assert (gloves.count, gloves.members, gloves.needed) == (2, (MAREN, OLE), TODAY)
    assert [one.members for one in orders if one is not gloves] == [()]


def test_a_time_to_come_is_a_span() -> None:
    """The longest is not before the shortest."""
    with pytest.raises(UnreadableValueError):
        LeadTime(what="set", shortest=4, longest=2)
