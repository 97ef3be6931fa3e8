"""One full ensemble after a fire: method and preparation of every component.

Labels: hood and the helmet's ear and neck cover machine warm, gloves no machine. Policy of this
test: small soft parts go with the liners, the helmet's padding is washed by hand.
Preparation: common practice, no published source.
"""

from functools import cache

import pytest
from tests.care_facts import book, decide, fire, person, piece, rule

from sootline.core.care import Decision, Fate
from sootline.core.gear import Act, CareText, Component, WashMethod
from sootline.core.rulebook import Level, RuleKind

BY_HAND = rule("wash.method", RuleKind.CHOICE, "hand", traits=("padding",))
WARM = CareText(wash=WashMethod.MACHINE, wash_words="warm")
LABELS = {
    "hood": WARM,
    "ear-neck-cover": WARM,
    "gloves": CareText(forbids=(Act.MACHINE_WASH,)),
}
KINDS = (
    "coat-shell", "coat-liner", "drag-device", "trouser-shell", "trouser-liner", "suspenders",
    "hood", "ear-neck-cover", "gloves", "boots-leather", "helmet-shell", "helmet-padding",
)  # fmt: skip


def ensemble() -> tuple[Component, ...]:
    """Everything one member wore."""
    return tuple(piece(kind, "E1", care=LABELS.get(kind)) for kind in KINDS)


@cache
def decided() -> dict[str, Decision]:
    """Decide on it after a fire, by kind."""
    decisions = decide(ensemble(), [fire(person("E1"))], rulebook=book(policy=(BY_HAND,)))
    return dict(zip(KINDS, decisions, strict=True))


@pytest.mark.parametrize("kind", KINDS)
def test_every_component_needs_an_advanced_cleaning(kind: str) -> None:
    """Inside and in smoke: all of it, helmet and boots included.

    Source: NFPA 1851, 2020 edition, advanced cleaning after products of combustion (trade column).
    """
    assert (decided()[kind].fate, decided()[kind].level) == (Fate.WASH, Level.ADVANCED)


@pytest.mark.parametrize(
    ("method", "kinds"),
    [
        (WashMethod.MACHINE, {"coat-shell", "trouser-shell", "coat-liner", "trouser-liner", "hood",
                              "ear-neck-cover", "drag-device", "suspenders"}),
        (WashMethod.HAND, {"gloves", "helmet-padding", "boots-leather"}),
        (WashMethod.BRUSH, {"helmet-shell"}),
    ],
)  # fmt: skip
def test_what_goes_in_the_drum_what_by_hand_and_what_under_the_brush(
    method: WashMethod, kinds: set[str]
) -> None:
    """Shells, liners, small soft parts and straps; gloves, padding, boots; the helmet shell."""
    assert {kind for kind, one in decided().items() if one.wash is method} == kinds


@pytest.mark.parametrize(
    ("kind", "steps"),
    [
        ("coat-shell", ["pockets", "liner_out", "drag_device_out", "closures"]),
        ("trouser-shell", ["pockets", "liner_out", "suspenders_off", "closures"]),
        ("coat-liner", ["barrier_inward"]),
        ("trouser-liner", ["barrier_inward"]),
    ],
)
def test_what_is_done_before_in_order(kind: str, steps: list[str]) -> None:
    """Pockets emptied, liners out and turned inward, drag device out, suspenders off, all closed.

    Source: common practice, no published source.
    """
    acts = [step.act.removeprefix("gear.prep.") for step in decided()[kind].preparation]

    assert [act for act in acts if act in steps] == steps


def test_every_step_says_what_goes_wrong_if_it_is_skipped() -> None:
    """No step stands without its reason not to skip it."""
    steps = [step for decision in decided().values() for step in decision.preparation]

    assert all(step.skipped and step.reason.ground.source for step in steps)


def test_a_label_that_wants_the_barrier_outward_is_obeyed() -> None:
    """The label goes before common practice, and is cited for it."""
    liner = piece("coat-liner", "E1", care=CareText(barrier_outward=True))
    steps = decide([liner], [fire(person("E1"))])[0].preparation
    outward = next(step for step in steps if step.act == "gear.prep.barrier_outward")

    assert outward.reason.ground.edition == "label"
    assert "gear.prep.barrier_inward" not in [step.act for step in steps]


def test_a_label_that_wants_it_in_one_piece_keeps_the_liner_in() -> None:
    """Washed assembled: the liner stays, and the label is cited for it."""
    shell = piece("coat-shell", "E1", care=CareText(assembled=True))
    steps = decide([shell], [fire(person("E1"))])[0].preparation
    stays = next(step for step in steps if step.act == "gear.prep.liner_stays")

    assert stays.reason.ground.edition == "label"
