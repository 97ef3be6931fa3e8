"""Fit, dimension by dimension; what is not known never fits."""

from decimal import Decimal

import pytest
from tests.riding_gear import NOW

from sootline.core.basis import MinuteSpan, UnreadableValueError
from sootline.core.gear import Element
from sootline.core.riding import (
    FitRule,
    Rider,
    Situation,
    SizesWorn,
    Slot,
    Unit,
    Verdict,
    check_fit,
)

CHEST = FitRule(element=Element.COAT, dimension="chest", most=Decimal(2))
INSEAM = FitRule(element=Element.COAT, dimension="inseam", least=Decimal(-1), most=Decimal(1))
HAND = FitRule(
    element=Element.COAT, dimension="hand", also=(SizesWorn(measure="L", sizes=("XL", "L-XL")),)
)


def judged(
    rule: FitRule | None, measure: str | None, size: str | None, one_size: tuple[Element, ...] = ()
) -> list[Verdict]:
    """Judge one coat on one person in one dimension."""
    name = rule.dimension if rule else "chest"
    rider = Rider(
        id="M1",  # type: ignore[arg-type]
        needs=(Slot.COAT,),
        measures=((name, measure),) if measure is not None else (),
    )
    unit = Unit(
        id="C1",
        slot=Slot.COAT,
        elements=(Element.COAT,),
        size=((name, size),) if size is not None else (),
        back=MinuteSpan.exactly(0),
    )
    situation = Situation(
        now=NOW, riders=(rider,), units=(unit,), fit=(rule,) if rule else (), one_size=one_size
    )
    return [one.verdict for one in check_fit(situation, rider, unit)]


@pytest.mark.parametrize(
    ("rule", "measure", "size", "verdict"),
    [
        (CHEST, "44", "44", Verdict.FITS),
        (CHEST, "44", "46", Verdict.FITS),
        (CHEST, "44", "46.5", Verdict.TOO_LARGE),
        (CHEST, "44", "43", Verdict.TOO_SMALL),
        (CHEST, "44", "44.0", Verdict.FITS),
        (INSEAM, "30", "29", Verdict.FITS),
        (INSEAM, "30", "28", Verdict.TOO_SMALL),
        (HAND, "L", " l ", Verdict.FITS),
        (HAND, "L", "XL", Verdict.FITS),
        (HAND, "L", "M", Verdict.OTHER_SIZE),
        (HAND, "L", "10", Verdict.SIZE_UNKNOWN),
        (HAND, "9", "L", Verdict.SIZE_UNKNOWN),
        (HAND, "L", "NaN", Verdict.OTHER_SIZE),
        (CHEST, None, "44", Verdict.NOT_MEASURED),
        (CHEST, " ", "44", Verdict.NOT_MEASURED),
        (CHEST, "44", None, Verdict.SIZE_UNKNOWN),
        (CHEST, "44", "", Verdict.SIZE_UNKNOWN),
        (None, "44", "44", Verdict.NO_RULE),
    ],
)
def test_a_piece_is_judged_against_the_departments_limit(
    rule: FitRule | None, measure: str | None, size: str | None, verdict: Verdict
) -> None:
    """Numbers by their difference, words by the very word or those the department allows."""
    assert judged(rule, measure, size) == [verdict]


def test_an_element_of_one_size_fits_everybody() -> None:
    """Where the department says so, no measure is asked for."""
    assert judged(None, None, None, (Element.COAT,)) == []


def test_what_is_missing_is_unknown_and_what_differs_is_not() -> None:
    """A fact or limit that is missing is named as unknown."""
    assert [one for one in Verdict if one.unknown] == [
        Verdict.NOT_MEASURED,
        Verdict.SIZE_UNKNOWN,
        Verdict.NO_RULE,
    ]


def test_a_limit_that_ends_below_its_beginning_is_refused() -> None:
    """From +2 to 0 is no range."""
    with pytest.raises(UnreadableValueError, match=r"riding\.fit\.reversed"):
        FitRule(element=Element.COAT, dimension="chest", least=Decimal(2))


def test_a_priority_below_one_is_refused() -> None:
    """Nobody counts for nothing."""
    with pytest.raises(UnreadableValueError, match=r"riding\.priority"):
        Rider(id="M1", needs=(), priority=0)  # type: ignore[arg-type]
