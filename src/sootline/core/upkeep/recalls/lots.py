"""Does a lot as somebody wrote it lie among the lots a notice names, and in which reading?

Case, width and the kind of dash or space between groups make no difference. Letters taken for
digits (O for 0, I or l for 1, S for 5, B for 8, Z for 2, G for 6), a separator left out, a sign
nobody could read ("?") and an end that is missing are readings: they are shown and looked at,
never mended.
"""

import re
import unicodedata
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import UnreadableValueError

_ALIKE = ("0OQD", "1IL|", "2Z", "5S", "6G", "8B")
_CHOICES = {sign: frozenset(signs) for signs in _ALIKE for sign in signs}
_ANY = frozenset("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ")
_APART = re.compile(r"[\s_./\-\u2010-\u2015\u2212]+")
_REST = re.compile(r"(\.{3,}|…|\*)+")
CUT_SHORT = "*"
ILLEGIBLE = "?"


class Fit(StrEnum):
    """How one fact of a component stands to what a notice says of it."""

    IN = "in"
    POSSIBLY = "possibly"
    OUT = "out"
    SILENT = "silent"


@dataclass(frozen=True, kw_only=True)
class LotFit:
    """How a lot stands to a span of lots.

    Args:
        reading: the lot as it would have to be read to lie inside; None where no reading is
            needed or helps.
    """

    fit: Fit
    reading: str | None = None


@dataclass(frozen=True, kw_only=True)
class LotSpan:
    """Lots from one to another, both included, or those beginning so.

    Args:
        first, last: of the same length; one lot, or one beginning, is its own last.
        beginning: whether only the beginning of a lot is compared.
    """

    first: str
    last: str = ""
    beginning: bool = False

    def __post_init__(self) -> None:
        low, high = self.bounds
        if not low or len(low) != len(high) or low > high:
            raise UnreadableValueError("recall.lots.span", first=self.first, last=self.last)

    @property
    def bounds(self) -> tuple[str, str]:
        """The first and the last lot, as they are compared."""
        return canonical(self.first), canonical(self.last or self.first)

    def fit(self, lot: str) -> LotFit:
        """Say whether a lot lies inside, as written or in a reading."""
        written = canonical(lot)
        cut = CUT_SHORT in written
        if cut:
            written = written.partition(CUT_SHORT)[0].rstrip("-")
        if (self.beginning or not cut) and self._holds(written):
            return LotFit(fit=Fit.IN)
        reading = self._reading(written, cut_short=cut)
        return LotFit(fit=Fit.OUT if reading is None else Fit.POSSIBLY, reading=reading)

    def _holds(self, written: str) -> bool:
        low, high = self.bounds
        part = written[: len(low)] if self.beginning else written
        return len(part) == len(low) and ILLEGIBLE not in part and low <= part <= high

    def _reading(self, written: str, *, cut_short: bool) -> str | None:
        """Find one way to read the lot that lies inside, its separators where they were."""
        low, high = (bound.replace("-", "") for bound in self.bounds)
        bare = written.replace("-", "")
        longer = len(bare) > len(low) and not self.beginning
        shorter = len(bare) < len(low)
        if not bare or longer or (shorter and not (cut_short or self.beginning)):
            return None
        inside = read_between(bare[: len(low)], low[: len(bare)], high[: len(bare)])
        if inside is None:
            return None
        signs = iter(inside + bare[len(low) :])
        missing = ILLEGIBLE if shorter or cut_short else ""
        return "".join(one if one == "-" else next(signs) for one in written) + missing


def canonical(text: str) -> str:
    """Return a mark as it is compared: upper case, plain width, one "-" between groups.

    A missing end ("2103...") is one "*".
    """
    whole = _REST.sub(CUT_SHORT, unicodedata.normalize("NFKC", text).strip().upper())
    return _APART.sub("-", whole).strip("-")


def could_read(written: str, meant: str) -> bool:
    """Whether somebody could have meant one mark by writing another; the same mark counts."""
    bare, other = canonical(written).replace("-", ""), canonical(meant).replace("-", "")
    return len(bare) == len(other) and all(
        sign in _choices(given) for given, sign in zip(bare, other, strict=True)
    )


def read_between(written: str, low: str, high: str) -> str | None:
    """Return the first reading of a text that lies between two others of its length.

    Sign by sign, remembering whether the reading still runs along a bound, so that a text of
    many unreadable signs costs no more than its length.
    """
    return _extend(written, low, high, on_low=True, on_high=True)


def _extend(written: str, low: str, high: str, *, on_low: bool, on_high: bool) -> str | None:
    if not written:
        return ""
    for sign in _ordered(written[0]):
        if (on_low and sign < low[0]) or (on_high and sign > high[0]):
            continue
        rest = _extend(
            written[1:],
            low[1:],
            high[1:],
            on_low=on_low and sign == low[0],
            on_high=on_high and sign == high[0],
        )
        if rest is not None:
            return sign + rest
    return None


def _ordered(sign: str) -> list[str]:
    """List what a sign may be, itself first."""
    return sorted(_choices(sign), key=lambda other: (other != sign, other))


def _choices(sign: str) -> frozenset[str]:
    return _ANY if sign == ILLEGIBLE else _CHOICES.get(sign, frozenset(sign))
