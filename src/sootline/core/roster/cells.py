"""What size, mass or count does a cell give?"""

import re
from decimal import Decimal

from sootline.core.basis import Quantity, UnreadableValueError
from sootline.core.gear.kinds import Element
from sootline.core.roster.text import folded
from sootline.core.roster.unreadable import UnreadableCellError

Sizes = tuple[tuple[str, str], ...]

MOST_WASHES = 10_000
# Heavier than any single piece a person wears; a figure beyond it is a slip.
MOST_KG = 40

_BETWEEN = r"\s*(?:[-/x×X*]|\s)\s*"
_CUT = r"(?:\s*[-/]?\s*(?P<cut>short|regular|long|tall|xs|s|r|l|t|xl))?"
_NUMBER = r"\d{2,3}(?:\.5)?"
_GARMENT = re.compile(
    rf"(?P<a>{_NUMBER})(?:{_BETWEEN}(?P<b>{_NUMBER}))?(?:{_BETWEEN}(?P<c>{_NUMBER}))?{_CUT}",
    re.ASCII | re.IGNORECASE,
)
_LETTERS = re.compile(r"[2-6]?X{0,4}[SL]|M|[SMLX]{1,4}[-/][SMLX]{1,4}", re.ASCII | re.IGNORECASE)
_BOOT = re.compile(
    r"(?P<a>\d{1,2}(?:\.5)?)\s*[-/]?\s*(?P<width>[A-E]{1,4}|[0-9]?E|N|M|R|W|XW|WW)?",
    re.ASCII | re.IGNORECASE,
)
_GLOVE = re.compile(r"\d{1,3}(?:\.5)?[A-Z]{0,2}|[2-6]?[A-Z]{1,6}", re.ASCII | re.IGNORECASE)
_WORD = re.compile(r"\d{0,2}[A-Z]{1,7}(?:[-/][A-Z]{1,4})?", re.ASCII | re.IGNORECASE)
_MEASURE = re.compile(r"\d{1,3}(?:\.\d{1,2})?", re.ASCII)
_NAMES = {
    Element.COAT: ("chest", "length", "sleeve"),
    Element.COVERALL: ("chest", "length", "sleeve"),
    Element.TROUSERS: ("waist", "inseam", "rise"),
}
_HEADER_UNITS = {"lb": "lb", "lbs": "lb", "kg": "kg", "oz": "oz", "g": "g"}


def read_size(text: str, element: Element) -> Sizes:
    """Read a size as the label gives it: chest, waist and inseam, hand, foot, or letters.

    Raises:
        UnreadableCellError: the text is no size of such a piece.
    """
    if element in _NAMES:
        return _garment(text, _NAMES[element])
    if element is Element.BOOTS:
        match = _BOOT.fullmatch(text)
        if not match or not Decimal(match["a"]):
            raise UnreadableCellError("roster.size.boot")
        width = (("width", match["width"].upper()),) if match["width"] else ()
        return (("foot", match["a"]), *width)
    if element is Element.GLOVES:
        if not _GLOVE.fullmatch(text):
            raise UnreadableCellError("roster.size.glove")
        return (("hand", text.upper()),)
    return (("size", text),)


def read_measure(text: str) -> str:
    """Read one dimension: a number above 0, or letters.

    Raises:
        UnreadableCellError: neither.
    """
    if _MEASURE.fullmatch(text) and Decimal(text):
        return text
    if _WORD.fullmatch(text):
        return text.upper()
    raise UnreadableCellError("roster.size.measure")


def read_count(text: str) -> int:
    """Read how many cleanings a piece has had.

    Raises:
        UnreadableCellError: no whole number, or one outside what can be.
    """
    if re.fullmatch(r"\d{1,6}", text, re.ASCII) and int(text) <= MOST_WASHES:
        return int(text)
    raise UnreadableCellError("roster.count.unreadable", limit=str(MOST_WASHES))


def read_mass(text: str, header: str) -> Quantity:
    """Read a dry mass; the column's name may give the unit.

    Raises:
        UnreadableCellError: no amount, no unit, or one that cannot be.
    """
    unit = next(
        (_HEADER_UNITS[word] for word in folded(header).split() if word in _HEADER_UNITS), ""
    )
    bare = _MEASURE.fullmatch(text)
    if bare and not unit:
        raise UnreadableCellError("roster.mass.no_unit")
    try:
        mass = Quantity.parse(f"{text} {unit}" if bare else text)
    except UnreadableValueError:
        raise UnreadableCellError("roster.mass.unreadable") from None
    if mass.dimension != "mass" or not 0 < mass.base <= MOST_KG:
        raise UnreadableCellError("roster.mass.impossible", limit=f"{MOST_KG} kg")
    return mass


def _garment(text: str, names: tuple[str, str, str]) -> Sizes:
    if _LETTERS.fullmatch(text):
        return (("letter", text.upper()),)
    match = _GARMENT.fullmatch(text)
    if not match or not Decimal(match["a"]):
        raise UnreadableCellError("roster.size.garment", names=", ".join(names))
    given = zip(names, (match["a"], match["b"], match["c"]), strict=True)
    cut = (("cut", match["cut"].upper()),) if match["cut"] else ()
    return (*((name, number) for name, number in given if number), *cut)
