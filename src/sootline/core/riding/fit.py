"""Does a spare fit a person, and if not, in which dimension and by how much?

A size that is not known never counts as fitting; it is named.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from enum import StrEnum
from functools import lru_cache

from sootline.core.gear import Element
from sootline.core.riding.facts import FitRule
from sootline.core.riding.situation import Rider, Situation, Unit


class Verdict(StrEnum):
    """How a piece stands to a person in one dimension."""

    FITS = "fits"
    TOO_SMALL = "too-small"
    TOO_LARGE = "too-large"
    OTHER_SIZE = "other-size"
    NOT_MEASURED = "not-measured"
    SIZE_UNKNOWN = "size-unknown"
    NO_RULE = "no-rule"

    @property
    def unknown(self) -> bool:
        """Whether a fact or a limit is missing."""
        return self in (Verdict.NOT_MEASURED, Verdict.SIZE_UNKNOWN, Verdict.NO_RULE)


@dataclass(frozen=True, kw_only=True)
class Dimension:
    """One dimension of a piece on a person.

    Args:
        off: how far the piece is from the measure; negative is smaller; None without numbers.
    """

    element: Element
    name: str
    verdict: Verdict
    measure: str | None = None
    size: str | None = None
    off: Decimal | None = None
    unit: str = ""


def check_fit(situation: Situation, rider: Rider, unit: Unit) -> tuple[Dimension, ...]:
    """Compare a piece with a person, dimension by dimension; it fits when every one does."""
    found: list[Dimension] = []
    measures, sizes = dict(rider.measures), dict(unit.size)
    for element in unit.elements:
        if element in situation.one_size:
            continue
        rules = [rule for rule in situation.fit if rule.element is element]
        if not rules:
            found.append(Dimension(element=element, name=element, verdict=Verdict.NO_RULE))
        found += [
            _judge(rule, measures.get(rule.dimension), sizes.get(rule.dimension)) for rule in rules
        ]
    return tuple(found)


def failures(dimensions: Iterable[Dimension]) -> tuple[Dimension, ...]:
    """Keep the dimensions that do not fit, or are not known to."""
    return tuple(one for one in dimensions if one.verdict is not Verdict.FITS)


def misfit(dimensions: Iterable[Dimension]) -> int:
    """Add up how far a piece is from a person, in thousandths of the units of size."""
    return sum(int(abs(one.off) * 1000) for one in dimensions if one.off is not None)


def _judge(rule: FitRule, measure: str | None, size: str | None) -> Dimension:
    verdict, off = _compare(rule, measure, size)
    return Dimension(
        element=rule.element,
        name=rule.dimension,
        verdict=verdict,
        measure=measure,
        size=size,
        off=off,
        unit=rule.unit,
    )


def _compare(
    rule: FitRule, measure: str | None, size: str | None
) -> tuple[Verdict, Decimal | None]:
    if measure is None or not measure.strip():
        return Verdict.NOT_MEASURED, None
    if size is None or not size.strip():
        return Verdict.SIZE_UNKNOWN, None
    if _also(rule, measure, size):
        return Verdict.FITS, None
    body, piece = _number(measure), _number(size)
    if body is None or piece is None:
        return _words(measure, size, body, piece), None
    off = piece - body
    if off < rule.least:
        return Verdict.TOO_SMALL, off
    return (Verdict.TOO_LARGE if off > rule.most else Verdict.FITS), off


def _words(measure: str, size: str, body: Decimal | None, piece: Decimal | None) -> Verdict:
    """Compare where one is a word: a word against a number says nothing."""
    if _word(measure) == _word(size):
        return Verdict.FITS
    return Verdict.OTHER_SIZE if body is piece else Verdict.SIZE_UNKNOWN


def _also(rule: FitRule, measure: str, size: str) -> bool:
    return any(
        _word(worn.measure) == _word(measure) and _word(size) in map(_word, worn.sizes)
        for worn in rule.also
    )


def _word(text: str) -> str:
    return text.strip().casefold()


@lru_cache(maxsize=4096)
def _number(text: str) -> Decimal | None:
    try:
        number = Decimal(text.strip())
    except InvalidOperation:
        return None
    return number if number.is_finite() else None
