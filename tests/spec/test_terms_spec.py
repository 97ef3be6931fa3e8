"""The officer's sentences on what a piece may undergo: a small table in, answer and reason out."""

import pytest
from tests.unit.gear.gear_cases import at_most, book, guide, piece, rule, terms

from sootline.core.basis import Standing, quantity
from sootline.core.gear import Act, CareText, Component, WashMethod

EDITION = (
    rule("wash.bath_temp", at_most("105 °F / 40 °C")),
    rule("wash.forbidden", ("chlorine-bleach",)),
    rule("wash.forbidden", ("machine-wash",), "aluminised"),
)

SILENT = CareText()
MACHINE = CareText(wash=WashMethod.MACHINE)
NOT_BY_MACHINE = CareText(wash=WashMethod.HAND, forbids=(Act.MACHINE_WASH,))

# The piece | how it is washed | who says so
METHODS = [
    ("a silent label leaves a shell to common practice",
     piece("coat-shell", SILENT), WashMethod.MACHINE, "practice/gear"),
    ("gloves whose label forbids the machine go by hand",
     piece("gloves", NOT_BY_MACHINE), WashMethod.HAND, "label"),
    ("a hood whose label names the machine goes into it",
     piece("hood", MACHINE), WashMethod.MACHINE, "label"),
    ("the policy washes the helmet's padding by hand",
     piece("helmet-padding", SILENT), WashMethod.HAND, "policy"),
    ("the policy does not overrule a label that names the machine",
     piece("helmet-padding", MACHINE), WashMethod.MACHINE, "label"),
    ("an aluminised shell never goes into a machine, whatever its label names",
     piece("coat-shell", MACHINE, "aluminised"), WashMethod.HAND, "edition"),
    ("a helmet's shell is brushed",
     piece("helmet-shell", SILENT), WashMethod.BRUSH, "practice/gear"),
    ("a mask is left to its technicians",
     piece("mask", SILENT), WashMethod.NONE, "practice/gear"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("component", "washed", "says"), [row[1:] for row in METHODS], ids=[row[0] for row in METHODS]
)
def test_how_is_it_washed(component: Component, washed: WashMethod, says: str) -> None:
    """The method, and whose word it is."""
    policy = rule("wash.method", "hand", "helmet-padding")

    method = terms(component, book(*EDITION, policy=(policy,))).method

    assert (method.wash, method.ground.edition) == (washed, says)


# What the label says | what the guide says | a bath of | stands | whose limit counts
BATHS = [
    ("a silent label is held to the edition", None, None, "105 °F", "within", "edition"),
    ("a label of 40 °C refuses 105 °F", "40 °C", None, "105 °F", "beyond", "label"),
    ("a label of 60 °C does not lift the edition", "60 °C", None, "50 °C", "beyond", "edition"),
    ("the maker's 30 °C counts before all", "60 °C", "30 °C", "35 °C", "beyond", "guide"),
]


@pytest.mark.parametrize(
    ("label", "maker", "bath", "standing", "says"),
    [row[1:] for row in BATHS],
    ids=[row[0] for row in BATHS],
)
def test_how_hot_may_the_bath_be(
    label: str | None, maker: str | None, bath: str, standing: str, says: str
) -> None:
    """Where the bath stands, and whose limit counts."""
    care = CareText(wash_temp=at_most(label) if label else None)
    own = guide(CareText(wash_temp=at_most(maker))) if maker else None

    limit = terms(piece(care=care), book(*EDITION), own).limit("wash.bath_temp")

    assert limit.binding is not None
    assert (limit.stand(quantity(bath)), limit.binding[1].edition) == (Standing(standing), says)


@pytest.mark.parametrize("kind", ["coat-shell", "gloves", "helmet-shell"])
def test_what_the_edition_forbids_is_forbidden_for_every_piece(kind: str) -> None:
    """Chlorine bleach is for no piece, and the edition says so."""
    ban = terms(piece(kind), book(*EDITION)).banned(Act.CHLORINE_BLEACH)

    assert ban is not None
    assert ban.ground.edition == "edition"
