"""Disinfection: the word, the product by its label, and whom to call first."""

from typing import Any

import pytest
from tests.care_facts import (
    book,
    decide,
    decide_one,
    fire,
    person,
    piece,
    remark,
    said,
)  # fmt: skip

from sootline.core.basis import Bearing, ContaminantId, GuideId
from sootline.core.care import CarePolicy, Decision, Disinfection, Fate, Product, ProductUse
from sootline.core.exposure import Answer
from sootline.core.gear import Act, CareText, Component, Guide
from sootline.core.rulebook import Decider, Edition, Rulebook

BLOOD = ContaminantId("blood")
SHELL = piece("coat-shell")


def product(name: str = "P", **facts: Any) -> Product:  # noqa: ANN401
    """Make a disinfectant for fabric against blood, ten minutes."""
    given = {"use": ProductUse.DISINFECTANT, "materials": ("fabric",), "against": (BLOOD,),
             "contact_min": 10, **facts}  # fmt: skip
    return Product(name=name, **given)


def bloody(component: Component, *products: Product, **facts: Answer) -> Decision:
    """Decide on a component with blood on it."""
    call = fire(person(), remarks=(remark(component, "blood", **facts),))
    return decide_one(component, call, policy=CarePolicy(products=products))


@pytest.mark.parametrize(
    ("kind", "traits", "materials", "usable"),
    [
        ("coat-shell", (), ("fabric",), True),
        ("boots-leather", (), ("fabric",), False),
        ("boots-leather", (), ("leather",), True),
        ("boots-rubber", (), ("leather",), False),
        ("gloves", (), ("fabric",), False),
        ("gloves", (), ("fabric", "leather"), True),
        ("gloves", ("rubber",), ("fabric", "leather"), False),
        ("helmet-shell", (), ("fabric",), False),
        ("helmet-shell", (), ("hard-surface",), True),
    ],
)
def test_a_product_must_name_every_material(
    kind: str, traits: tuple[str, ...], materials: tuple[str, ...], usable: bool
) -> None:
    """By its own label; otherwise infection control is asked."""
    decision = bloody(piece(kind, traits=traits), product(materials=materials))

    assert (decision.product == "P") is usable
    asked = [hold.question for hold in decision.open_holds]
    assert ("care.hold.no_product" in asked) is not usable


@pytest.mark.parametrize(
    ("use", "kind", "usable"),
    [
        (ProductUse.SANITISER, "coat-shell", True),
        (ProductUse.DISINFECTANT, "coat-shell", True),
        (ProductUse.DETERGENT, "coat-shell", False),
        (ProductUse.SANITISER, "helmet-shell", False),
    ],
)
def test_a_hard_surface_needs_a_disinfectant(use: ProductUse, kind: str, usable: bool) -> None:
    """A sanitiser does for soft goods under the 2020 edition; a detergent never does."""
    decision = bloody(piece(kind), product(use=use, materials=("fabric", "hard-surface")))

    assert (decision.product is not None) is usable


def test_a_product_against_something_else_is_no_product() -> None:
    """Its label claims to act on sewage only."""
    assert bloody(SHELL, product(against=(ContaminantId("sewage"),))).product is None


@pytest.mark.parametrize(
    ("facts", "message"),
    [
        ({"contact_min": None}, "care.unknown.contact_time"),
        ({"against": ()}, "care.unknown.product_claim"),
    ],
)
def test_what_the_products_label_does_not_say_is_asked(facts: dict[str, Any], message: str) -> None:
    """Nothing is guessed: the label is to be read."""
    decision = bloody(SHELL, product(**facts))

    assert decision.product == "P"
    assert message in said(decision.unknowns)


def test_a_product_with_a_contact_time_goes_before_one_without() -> None:
    """And one that claims to act on it before one that claims nothing."""
    silent, untimed, good = product("S", against=()), product("U", contact_min=None), product("G")
    decision = bloody(SHELL, silent, untimed, good)

    assert (decision.product, decision.contact_min) == ("G", 10)


@pytest.mark.parametrize(
    ("label", "guide", "usable"),
    [(("P",), (), True), (("Q",), (), False), ((), ("Q",), False), (("P",), ("Q",), False)],
)
def test_a_maker_who_names_products_allows_only_those(
    label: tuple[str, ...], guide: tuple[str, ...], usable: bool
) -> None:
    """Label and guide each."""
    makers = Guide(id=GuideId("g"), title="guide", care=CareText(disinfectants=guide))
    shell = piece("coat-shell", care=CareText(disinfectants=label), guide=makers.id)
    call = fire(person(), remarks=(remark(shell, "blood"),))
    policy = CarePolicy(products=(product(),))
    decision = decide_one(shell, call, policy=policy, guides=[makers])

    assert (decision.product is not None) is usable


def test_where_disinfecting_is_forbidden_nobody_tries() -> None:
    """The label is cited, and infection control decides."""
    never = piece("coat-shell", care=CareText(forbids=(Act.DISINFECT,)))
    decision = bloody(never, product())
    opened = decision.open_holds[0]

    assert (opened.question, opened.decider) == (
        "care.hold.disinfect_banned", Decider.INFECTION_CONTROL,
    )  # fmt: skip
    banned = next(one for one in decision.reasons if one.bearing is Bearing.FORBIDS)
    assert banned.ground.edition == "label"


@pytest.mark.parametrize(
    ("reached", "message"),
    [
        (Answer.YES, ["care.first.infection_control"]),
        (Answer.UNKNOWN, ["care.first.ask_skin"]),
        (Answer.NO, []),
    ],
)
def test_infection_control_is_called_first_when_it_reached_skin(
    reached: Answer, message: list[str]
) -> None:
    """Nobody said: the wearer is asked first."""
    assert said(bloody(SHELL, product(), reached_skin=reached).first) == message


def test_skin_that_was_reached_counts_for_all_soiled_gear_of_that_person() -> None:
    """The cut wrist is the person's, not the glove's; another person's coat is another matter."""
    gloves, other = piece("gloves"), piece("coat-shell", "B")
    seen = (
        remark(SHELL, "blood", reached_skin=Answer.YES),
        remark(gloves, "blood", reached_skin=Answer.NO),
        remark(other, "blood", reached_skin=Answer.NO),
    )
    found = decide([SHELL, gloves, other], [fire(person(), person("B"), remarks=seen)])

    assert [said(one.first) for one in found] == [
        ["care.first.infection_control"], ["care.first.infection_control"], [],
    ]  # fmt: skip


def test_where_no_text_has_a_word_it_is_disinfected() -> None:
    """The stricter of the two, on the ground of the contaminant itself."""
    shipped = book()
    empty = Edition(id=shipped.practice.id, title="", body="", status=shipped.practice.status,
                    in_force=shipped.practice.in_force, rules=())  # fmt: skip
    call = fire(person(), remarks=(remark(SHELL, "blood"),))
    silent = Rulebook(adopted=empty, policy=empty, practice=empty)
    decision = decide_one(SHELL, call, rulebook=silent)

    assert decision.disinfection is Disinfection.DISINFECT


def test_sewage_is_held_until_the_disinfection_is_on_record() -> None:
    """Its rule holds nothing by itself; what must be disinfected first does."""
    call = fire(person(), remarks=(remark(SHELL, "sewage"),))
    decision = decide_one(SHELL, call, policy=CarePolicy())

    assert (decision.fate, decision.sealed) == (Fate.HOLD, True)
    assert [hold.cause for hold in decision.holds] == ["sewage.disinfect/c1"]
