"""Checks and builds of a job, judged together."""

import datetime as dt
from dataclasses import replace

import pytest

from sootline.core.basis import (
    BadInputError,
    CallId,
    ComponentId,
    DateSpan,
    EditionId,
    KindId,
    MemberId,
    MessageId,
    SetId,
)
from sootline.core.exposure import Answer, Call, Presence
from sootline.core.gear import Component, Element, State, find_kind
from sootline.core.gear.state import CareStage
from sootline.core.job.jobs import Department, Job
from sootline.core.rebuild import AfterWashCheck, Built, Felt, Next
from sootline.tasks.rebuild_gear import rebuild_gear
from sootline.wiring.rules import RULES

NOW = dt.datetime(2026, 3, 1, 19, tzinfo=dt.UTC)
KINDS = ("coat-shell", "coat-liner", "drag-device")


def part(kind: str) -> Component:
    """Return a dried part of one coat."""
    return Component(
        id=ComponentId(kind),
        kind=KindId(kind),
        set=SetId("S1"),
        made=DateSpan.parse("2022-01"),
        state=State(stage=CareStage.TO_CHECK),
    )


def felt_dry(kind: str) -> AfterWashCheck:
    """Return a check by 118: dry at every touch point of the kind."""
    points: tuple[MessageId, ...] = find_kind(KindId(kind)).touch_points
    felt = tuple(Felt(point=point, dry=Answer.YES) for point in points)
    return AfterWashCheck(component=ComponentId(kind), by="118", at=NOW, felt=felt)


def job(*, checked: tuple[str, ...], routed_by: str | None = "118") -> Job:
    """Return a job with one rebuilt coat, some of its parts checked."""
    parts = tuple(ComponentId(kind) for kind in KINDS)
    return Job(
        version=1,
        now=NOW,
        department=Department(name="Sallowby", edition=EditionId("nfpa-1851/2014")),
        components=tuple(part(kind) for kind in (*KINDS, "hood")),
        checks=tuple(felt_dry(kind) for kind in checked),
        builds=(Built(element=Element.COAT, parts=parts, routed_by=routed_by),),
    )


def test_a_coat_with_every_part_checked_and_routed_goes_back() -> None:
    """All three parts dry by name, one set, the drag device checked: back on the hook."""
    result = rebuild_gear(RULES, job(checked=KINDS))

    assert [piece.next for piece in result.pieces] == [Next.BACK] * 3
    assert result.elements[0].ready
    assert result.elements[0].verdict.first_day_out == DateSpan.parse("2032-01")


def test_one_unchecked_part_keeps_the_coat_off_the_hook() -> None:
    """A coat is as ready as its liner."""
    result = rebuild_gear(RULES, job(checked=("coat-shell", "drag-device")))

    assert {piece.component: piece.next for piece in result.pieces}[
        ComponentId("coat-liner")
    ] is Next.CHECK
    assert not result.elements[0].ready


def test_nobody_checked_the_routing() -> None:
    """Dry and of one set is not enough."""
    assert not rebuild_gear(RULES, job(checked=KINDS, routed_by=None)).elements[0].ready


def test_only_what_was_checked_or_fitted_is_judged() -> None:
    """The hood nobody touched is not mentioned."""
    assert "hood" not in {one.component for one in rebuild_gear(RULES, job(checked=KINDS)).pieces}


def test_the_latest_check_counts_wherever_it_stands() -> None:
    """Felt dry at noon, damp in the evening: the evening counts, though it is listed first."""
    noon = felt_dry("hood")
    point = find_kind(KindId("hood")).touch_points[0]
    evening = replace(
        noon,
        at=NOW + dt.timedelta(hours=6),
        felt=(Felt(point=point, dry=Answer.NO), *noon.felt[1:]),
    )
    both = replace(job(checked=()), checks=(evening, noon), builds=())

    assert [piece.next for piece in rebuild_gear(RULES, both).pieces] == [Next.DRY_ON]


def test_a_part_cannot_be_in_two_places() -> None:
    """One liner fitted in two coats is a slip of the pen, refused with both places."""
    night = job(checked=KINDS)
    other = Built(element=Element.COAT, parts=(ComponentId("coat-liner"),))

    with pytest.raises(BadInputError) as refused:
        rebuild_gear(RULES, replace(night, builds=(*night.builds, other)))

    (fault,) = refused.value.faults
    assert (fault.place, dict(fault.values)["first"]) == ("builds[1].parts", "builds[0]")


def test_only_a_call_after_the_check_takes_it_back() -> None:
    """The fire the wash was for lies before the check; the one after it counts."""
    people = (Presence(member=MemberId("101"), worn=(ComponentId("hood"),)),)
    fires = tuple(
        Call(id=CallId(name), at=NOW + dt.timedelta(hours=hours), people=people)
        for name, hours in (("before", -12), ("after", 1))
    )
    night = replace(job(checked=("hood",)), calls=fires, builds=())

    (hood,) = rebuild_gear(RULES, night).pieces

    assert hood.next is Next.CHECK
    assert [reason.value("calls") for reason in hood.reasons] == ["after"]
