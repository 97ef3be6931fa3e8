"""How much is it, kept as entered, and does it stay within a limit?

Amounts are exact. A limit that a text states as a pair (105 °F / 40 °C) is compared in the unit of
the reading; one stated in a single unit is converted exactly, with 0.05 K of tolerance for
temperatures, so that a 40 °C label refuses a 105 °F bath while 104 °F passes.
"""

import re
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import ClassVar

from sootline.core.basis.errors import UnreadableValueError
from sootline.core.basis.text import Schema, TextForm, document_form

_AMOUNT = re.compile(r"([+-]?\d{1,9}(?:\.\d{1,6})?)\s*(\S.*)?", re.ASCII)
_TEMPERATURE_TOLERANCE_K = Fraction(1, 20)


@dataclass(frozen=True)
class Unit:
    """One unit: its sign, what it measures, and base = amount * factor + offset."""

    sign: str
    dimension: str
    factor: Fraction = Fraction(1)
    offset: Fraction = Fraction(0)


_POUND = Fraction("0.45359237")
_FOOT = Fraction("0.3048")
UNITS: dict[str, Unit] = {
    unit.sign: unit
    for unit in (
        Unit("°C", "temperature", Fraction(1), Fraction("273.15")),
        Unit("°F", "temperature", Fraction(5, 9), Fraction("459.67") * Fraction(5, 9)),
        Unit("kg", "mass"),
        Unit("g", "mass", Fraction(1, 1000)),
        Unit("lb", "mass", _POUND),
        Unit("oz", "mass", _POUND / 16),
        Unit("min", "time"),
        Unit("h", "time", Fraction(60)),
        Unit("s", "time", Fraction(1, 60)),
        Unit("G", "acceleration"),
        Unit("pH", "acidity"),
        Unit("rpm", "speed"),
        Unit("m", "length"),
        Unit("mm", "length", Fraction(1, 1000)),
        Unit("cm", "length", Fraction(1, 100)),
        Unit("in", "length", Fraction("0.0254")),
        Unit("psi", "pressure", Fraction("6.894757293168")),
        Unit("kPa", "pressure"),
        Unit("L", "volume"),
        Unit("mL", "volume", Fraction(1, 1000)),
        Unit("gal", "volume", Fraction("3.785411784")),
        Unit("m3", "volume", Fraction(1000)),
        Unit("ft3", "volume", _FOOT**3 * 1000),
        Unit("ft", "length", _FOOT),
        Unit("m3/h", "flow"),
        Unit("cfm", "flow", _FOOT**3 * 60),
        Unit("kWh", "energy"),
        Unit("mg/L", "hardness"),
        Unit("gpg", "hardness", Fraction("17.118")),
        Unit("mmol/L", "hardness", Fraction("100.09")),
        Unit("dH", "hardness", Fraction("100.09") / Fraction("5.61")),
        Unit("months", "calendar"),
        Unit("years", "calendar", Fraction(12)),
        Unit("%", "share"),
    )
}
_ALIASES = {
    "F": "°F", "C": "°C", "ºF": "°F", "ºC": "°C", "° F": "°F", "° C": "°C", "lbs": "lb",
    "pounds": "lb", "minutes": "min", "hours": "h", "l": "L", "ml": "mL", "month": "months",
    "year": "years", "inch": "in", "ph": "pH", "g-force": "G",
}  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Quantity(TextForm):
    """An amount with its unit, as somebody entered it.

    Args:
        amount: exact decimal, never rounded.
        unit: a sign listed in UNITS.
        text: as entered; equality does not depend on it.
    """

    amount: Decimal
    unit: str
    text: str = field(default="", compare=False)
    text_example: ClassVar[str] = "105 °F"

    def __post_init__(self) -> None:
        if self.unit not in UNITS:
            raise UnreadableValueError("basis.quantity.unit", text=self.text, unit=self.unit)
        absolute_zero = UNITS[self.unit].dimension == "temperature" and self.base < 0
        if absolute_zero or (self.dimension == "mass" and self.amount < 0):
            raise UnreadableValueError("basis.quantity.impossible", text=self.text or str(self))

    @classmethod
    def parse(cls, text: str) -> "Quantity":
        """Read "105 °F", "7.2 lb", "100 G", "pH 6.5".

        Raises:
            UnreadableValueError: no number, no known unit, or an impossible amount.
        """
        plain = text.strip()
        if plain[:2].lower() == "ph":
            plain = f"{plain[2:].strip()} pH"
        match = _AMOUNT.fullmatch(plain)
        if not match or not match[2]:
            raise UnreadableValueError("basis.quantity.unreadable", text=text)
        sign = match[2].strip()
        return cls(amount=Decimal(match[1]), unit=_ALIASES.get(sign, sign), text=text)

    @property
    def dimension(self) -> str:
        """What the quantity measures ("temperature", "mass", ...)."""
        return UNITS[self.unit].dimension

    @property
    def base(self) -> Fraction:
        """The exact amount in the base unit of its dimension (K, kg, min, G, pH, m, kPa, L)."""
        unit = UNITS[self.unit]
        return Fraction(self.amount) * unit.factor + unit.offset

    def to(self, sign: str) -> Fraction:
        """Return the exact amount in another unit of the same dimension.

        Raises:
            UnreadableValueError: the units measure different things.
        """
        unit = UNITS[sign]
        if unit.dimension != self.dimension:
            raise UnreadableValueError("basis.quantity.dimension", text=str(self), unit=sign)
        return (self.base - unit.offset) / unit.factor

    def __str__(self) -> str:
        return self.text.strip() or f"{self.amount.normalize():f} {self.unit}"


def quantity(text: str) -> Quantity:
    """Read a quantity; the short name for tables and tests."""
    return Quantity.parse(text)


class Side(StrEnum):
    """On which side of the value the permitted readings lie."""

    AT_MOST = "at most"
    AT_LEAST = "at least"


class Standing(StrEnum):
    """Where a reading stands against a limit."""

    WITHIN = "within"
    BEYOND = "beyond"
    UNKNOWN = "unknown"


@dataclass(frozen=True, kw_only=True)
class Limit(TextForm):
    """A bound that a text states, once or as a pair of units that it treats as the same.

    Args:
        values: one quantity, or the same limit in several units as the text pairs them.
    """

    side: Side
    values: tuple[Quantity, ...]
    text_example: ClassVar[str] = "at most 105 °F / 40 °C"

    def __post_init__(self) -> None:
        if len({value.dimension for value in self.values}) != 1:
            raise UnreadableValueError("basis.limit.mixed", text=str(self))

    @classmethod
    def parse(cls, text: str) -> "Limit":
        """Read "at most 105 °F / 40 °C" or "at least pH 6.0".

        Raises:
            UnreadableValueError: no side is named, or the values cannot be read.
        """
        for side in Side:
            if text.strip().startswith(side.value):
                return parse_limit(text.strip().removeprefix(side.value), side)
        raise UnreadableValueError("basis.limit.side", text=text)

    def stand(self, reading: Quantity | None) -> Standing:
        """Say whether a reading is within the limit; no reading is unknown, never within."""
        if reading is None:
            return Standing.UNKNOWN
        return Standing.BEYOND if self._excess(reading) > 0 else Standing.WITHIN

    def stricter(self, other: "Limit") -> bool:
        """Whether this limit permits less than the other, by the other's own comparison."""
        return any(other.stand(value) is Standing.WITHIN for value in self.values) and any(
            self.stand(value) is Standing.BEYOND for value in other.values
        )

    def _excess(self, reading: Quantity) -> Fraction:
        """How far beyond the limit the reading lies, in base units; at most 0 is within."""
        same_unit = [value for value in self.values if value.unit == reading.unit]
        value = same_unit[0] if same_unit else self.values[0]
        if value.dimension != reading.dimension:
            raise UnreadableValueError(
                "basis.quantity.dimension", text=str(reading), unit=value.unit
            )
        over = reading.base - value.base
        if self.side is Side.AT_LEAST:
            over = -over
        loose = not same_unit and value.dimension == "temperature"
        return over - _TEMPERATURE_TOLERANCE_K if loose else over

    @property
    def numbers(self) -> str:
        """The values as the text pairs them, without the side."""
        return " / ".join(str(value) for value in self.values)

    def __str__(self) -> str:
        return f"{self.side} {self.numbers}"


def parse_limit(text: str, side: Side) -> Limit:
    """Read "105 °F / 40 °C" or "100 G" as a limit.

    Raises:
        UnreadableValueError: a part is no quantity, or the parts measure different things.
    """
    return Limit(side=side, values=tuple(Quantity.parse(part) for part in text.split(" / ")))


class AtMostForm:
    """Marks a limit written as its values only, because its field says "at most"."""

    @staticmethod
    def read(value: object) -> Limit | None:
        """Read "40 °C" or "105 °F / 40 °C"; nothing stays nothing.

        Raises:
            UnreadableValueError: not a text, or its parts are no quantities.
        """
        if value is None:
            return None
        if not isinstance(value, str):
            raise UnreadableValueError("basis.text.expected", text=repr(value), example="40 °C")
        return parse_limit(value, Side.AT_MOST)

    def __get_pydantic_core_schema__(self, _source: object, _handler: object) -> Schema:
        return document_form(self.read, lambda limit: limit.numbers if limit else None)

    def __get_pydantic_json_schema__(self, _schema: object, _handler: object) -> Schema:
        return {"type": ["string", "null"], "examples": ["105 °F / 40 °C"]}
