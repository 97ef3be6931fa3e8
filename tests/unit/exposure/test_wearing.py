"""Who wore what, and what came through to the layers beneath."""

from typing import Any

import pytest
from tests.care_facts import fire, grade, person, piece, remark

from sootline.core.basis import ComponentId, MemberId, SetId
from sootline.core.exposure import Answer, Exposure, find_wearings
from sootline.core.gear import Component
from sootline.core.rulebook import Knowledge

SHELL = piece("coat-shell")
LINER = piece("coat-liner")
TROUSER_LINER = piece("trouser-liner")
GARMENT = (SHELL, LINER, TROUSER_LINER, piece("hood"))


def on(component: Component, exposures: tuple[Exposure, ...], name: str = "blood") -> list[str]:
    """List what is known of a contaminant on a component."""
    return [
        one.knowledge.value
        for one in exposures
        if one.component == component.id and one.contaminant == name
    ]


def test_who_names_nothing_wore_everything_of_their_own() -> None:
    """Silence is no proof that something stayed on the hook."""
    gear = (*GARMENT, piece("hood", "B"))
    found = find_wearings(gear, [fire(person("A"))])

    assert {one.component.id for one in found} == {one.id for one in GARMENT}


def test_who_names_what_was_worn_wore_that() -> None:
    """A borrowed hood counts, the own one on the hook does not."""
    borrowed = piece("hood", "B")
    found = find_wearings((*GARMENT, borrowed), [fire(person("A", worn=(borrowed.id,)))])

    assert [one.component.id for one in found] == [borrowed.id]


def test_a_component_nobody_lists_is_passed_over() -> None:
    """An id that names no component here is the document's fault, found elsewhere."""
    assert find_wearings((), [fire(person("A", worn=(ComponentId("gone"),)))]) == ()


def test_a_remark_alone_puts_a_component_at_the_call() -> None:
    """Blood on a spare nobody is said to have worn is still blood."""
    spare = piece("hood", None)
    found = grade([spare], fire(remarks=(remark(spare, "blood"),)))

    assert on(spare, found) == ["known"]


@pytest.mark.parametrize(
    ("reached", "knowledge", "beneath"),
    [
        (Answer.YES, Knowledge.KNOWN, ["known"]),
        (Answer.YES, Knowledge.SUSPECTED, ["suspected"]),
        (Answer.UNKNOWN, Knowledge.KNOWN, ["suspected"]),
        (Answer.NO, Knowledge.KNOWN, []),
        (Answer.YES, Knowledge.UNKNOWN, []),
    ],
)
def test_what_reached_the_skin_went_through_the_liner(
    reached: Answer, knowledge: Knowledge, beneath: list[str]
) -> None:
    """Every layer beneath the shell of that garment; where nobody can say, it is suspected."""
    seen = remark(SHELL, "blood", knowledge=knowledge, reached_skin=reached)
    found = grade(GARMENT, fire(person(), remarks=(seen,)))

    assert on(LINER, found) == beneath
    assert on(TROUSER_LINER, found) == []


def test_dry_matter_does_not_soak_through() -> None:
    """Powder on a shell says nothing of the liner."""
    seen = remark(SHELL, "drug-powder", reached_skin=Answer.YES)
    found = grade(GARMENT, fire(person(), remarks=(seen,)))

    assert on(LINER, found, "drug-powder") == []


def test_blood_on_a_liner_does_not_climb_to_the_shell() -> None:
    """Layers beneath are those below a shell."""
    seen = remark(LINER, "blood", reached_skin=Answer.YES)

    assert on(SHELL, grade(GARMENT, fire(person(), remarks=(seen,)))) == []


def test_knee_pads_lie_beneath_the_trouser_shell() -> None:
    """They are a layer of that garment too."""
    shell, pads = piece("trouser-shell"), piece("knee-pads")
    seen = remark(shell, "blood", reached_skin=Answer.YES)

    assert on(pads, grade([shell, pads], fire(person(), remarks=(seen,)))) == ["known"]


def test_the_liner_named_as_worn_is_the_one_beneath() -> None:
    """Somebody else's liner in this shell is soaked; the own one on the hook is not."""
    other = piece("coat-liner", "B")
    went = person("A", worn=(SHELL.id, other.id))
    seen = remark(SHELL, "blood", reached_skin=Answer.YES)
    found = grade((SHELL, LINER, other), fire(went, remarks=(seen,)))

    assert (on(other, found), on(LINER, found)) == (["known"], [])


@pytest.mark.parametrize(
    ("facts", "soaked"),
    [
        ({"set": SetId("set-A")}, True),
        ({"set": SetId("second-set")}, False),
        ({"set": None}, True),
        ({"set": None, "owner": MemberId("B")}, False),
    ],
)
def test_without_a_list_the_liner_of_the_set_or_of_the_owner_is_beneath(
    facts: dict[str, Any], soaked: bool
) -> None:
    """A liner without a set is its owner's; one of another set was not in this shell."""
    owner = facts.pop("owner", "A")
    liner = piece("coat-liner", owner, id=ComponentId("liner"), **facts)
    seen = remark(SHELL, "blood", reached_skin=Answer.YES)
    found = grade((SHELL, liner), fire(remarks=(seen,)))

    assert bool(on(liner, found)) is soaked


def test_a_named_look_at_the_liner_answers_what_was_only_suspected() -> None:
    """Nobody said how far it went; somebody looked at the liner and saw none."""
    seen = remark(SHELL, "blood")
    looked = remark(LINER, "blood", knowledge=Knowledge.ABSENT)
    found = grade(GARMENT, fire(person(), remarks=(seen, looked)))

    assert on(LINER, found) == ["absent"]


def test_a_look_does_not_answer_what_reached_the_skin() -> None:
    """It went through, whatever the liner looks like."""
    seen = remark(SHELL, "blood", reached_skin=Answer.YES)
    looked = remark(LINER, "blood", knowledge=Knowledge.ABSENT)
    found = grade(GARMENT, fire(person(), remarks=(seen, looked)))

    assert on(LINER, found) == ["absent", "known"]
