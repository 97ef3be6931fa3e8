"""What an officer expects when two liners came back in the wrong shells (Port Vessick, invented).

Shells A and B, liners a and b were swapped after washing; A's drag device was not seen. B with a
was worn by 102 at a car fire before anyone noticed. The maker's guide is silent on exchange.
"""

import datetime as dt

import pytest

from sootline.core.basis import (
    CallId,
    ComponentId,
    DateSpan,
    EditionId,
    GuideId,
    KindId,
    MemberId,
    MessageId,
    SetId,
)
from sootline.core.care import CarePolicy, Fate, decide_care
from sootline.core.exposure import Answer, Call, Presence, Zone, find_wearings
from sootline.core.gear import Component, Element, Guide, State
from sootline.core.gear.state import CareStage
from sootline.core.intervals import Due, Matter, list_due
from sootline.core.rebuild import (
    AfterWashCheck,
    Build,
    Felt,
    Match,
    Next,
    judge_after_wash,
    judge_build,
)
from sootline.core.rulebook import Rulebook, assemble
from sootline.wiring.rules import RULES

TODAY = dt.date(2026, 3, 1)
NOW = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)
SILENT = Guide(id=GuideId("g"), title="guide of an invented maker")
GUIDES = {SILENT.id: SILENT}


def part(name: str, kind: str, made: str, owner: str, size: str = "44R") -> Component:
    """Return one part of a coat, dried and waiting to be checked."""
    return Component(
        id=ComponentId(name),
        kind=KindId(kind),
        owner=MemberId(owner),
        set=SetId(f"set {owner}"),
        size=(("chest", size),),
        made=DateSpan.parse(made),
        guide=SILENT.id,
        state=State(stage=CareStage.TO_CHECK),
    )


A, B, C = (
    part("A", "coat-shell", "2019-05", "101"),
    part("B", "coat-shell", "2021-03", "102"),
    part("C", "coat-shell", "2021-03", "103", "44L"),
)
LINER_A, LINER_B, LINER_C = (
    part("a", "coat-liner", "2019-05", "101"),
    part("b", "coat-liner", "2021-03", "102"),
    part("c", "coat-liner", "2021-03", "103", "44L"),
)
DRAG_B, DRAG_C = (
    part("drag B", "drag-device", "2021-03", "102"),
    part("drag C", "drag-device", "2021-03", "103"),
)


@pytest.fixture(scope="module")
def book() -> Rulebook:
    """Return the rules a department under the 2014 edition goes by."""
    adopted = RULES.edition(EditionId("nfpa-1851/2014"))
    return assemble(adopted=adopted, policy=(), practice=RULES.practice()).rulebook


def retirements(book: Rulebook, *parts: Component) -> list[Due]:
    """Return the retirement dues of some parts."""
    return [
        due
        for one in parts
        for due in list_due(one, SILENT, book, TODAY)
        if due.matter is Matter.RETIREMENT
    ]


@pytest.mark.parametrize(
    ("parts", "first_day"),
    [((A, LINER_B), "2029-05-01..2029-05-31"), ((B, LINER_A, DRAG_B), "2029-05-01..2029-05-31")],
)
def test_swapped_sets_are_held_and_go_out_with_their_earliest_part(
    book: Rulebook, parts: tuple[Component, ...], first_day: str
) -> None:
    """Mixed: compatibility not known, not "allowed" because the size agrees; out in 2029-05."""
    build = Build(element=Element.COAT, parts=parts, routed_by="114")

    verdict = judge_build(build, GUIDES, retirements(book, *parts))

    assert verdict.match is Match.UNKNOWN
    assert [hold.question for hold in verdict.holds] == ["rebuild.ask.match"]
    assert not verdict.complete
    assert verdict.first_day_out == DateSpan.parse(first_day)


def test_the_right_set_is_complete_when_the_drag_device_was_checked_by_name(book: Rulebook) -> None:
    """C with c is whole once somebody by name has checked how the drag device is led."""
    parts = (C, LINER_C, DRAG_C)

    checked = judge_build(
        Build(element=Element.COAT, parts=parts, routed_by="114"), GUIDES, retirements(book, *parts)
    )
    unchecked = judge_build(Build(element=Element.COAT, parts=parts), GUIDES)

    assert (checked.match, checked.complete) == (Match.OWN, True)
    assert checked.first_day_out == DateSpan.parse("2031-03")
    assert not unchecked.complete


def test_c_goes_back_only_after_a_named_touch_check() -> None:
    """Nobody's check leaves it to be checked; every point dry by 114 lets it go back."""
    points = ("cuffs", "collar", "armpits", "pocket_corners", "under_trim")
    felt = tuple(Felt(point=MessageId(f"gear.touch.{point}"), dry=Answer.YES) for point in points)
    check = AfterWashCheck(component=C.id, by="114", at=NOW, felt=felt)

    without = judge_after_wash(C, None, first_day_out=DateSpan(), today=TODAY)
    checked = judge_after_wash(C, check, first_day_out=DateSpan.parse("2031-03"), today=TODAY)

    assert (without.next, checked.next) == (Next.CHECK, Next.BACK)


def test_a_is_incomplete_until_its_drag_device_is_found() -> None:
    """A coat without its drag device is no coat."""
    verdict = judge_build(Build(element=Element.COAT, parts=(A, LINER_A)), GUIDES)

    assert verdict.lacking == ("drag-device",)
    assert not verdict.complete


def test_the_car_fire_goes_to_what_was_worn(book: Rulebook) -> None:
    """Shell B and liner a were at the fire; liner b and shell A were not; only 102 was exposed."""
    fire = Call(
        id=CallId("car"),
        at=NOW,
        code="131",
        people=(
            Presence(
                member=MemberId("102"),
                zones=(Zone.OUTSIDE,),
                smoke=Answer.YES,
                worn=(B.id, LINER_A.id),
            ),
        ),
    )
    coats = (A, B, LINER_A, LINER_B)

    decisions = decide_care(
        components=coats,
        guides=(SILENT,),
        calls=(fire,),
        rulebook=book,
        contaminants=RULES.contaminants(),
        policy=CarePolicy(),
        now=NOW,
    )

    washed = {one.component for one in decisions if one.fate is Fate.WASH}
    assert washed == {"B", "a"}
    wearings = find_wearings(coats, (fire,))
    assert {person.member for one in wearings for person in one.people} == {"102"}
