"""How much of a detergent does its own label ask for, and how hard is the water?

There is no curve of dose over hardness that holds for any product: the label's own rows are
entered and read back. The acidity of a bath cannot be computed from a dilution; it is read.
"""

from dataclasses import dataclass

from sootline.core.basis import Assumptions, Quantity, UnreadableValueError

# Sodium stearate bound by one mass of calcium carbonate: 2 x 306.5 / 100.09 (stoichiometry).
SOAP_PER_HARDNESS = 2 * 306.5 / 100.09


@dataclass(frozen=True, kw_only=True)
class DoseRow:
    """One row of a label's table.

    Args:
        up_to: the hardest water the row is for; None is any, or all harder than the rows before.
        per_kg: dose for one kilogram of dry goods; this or `parts` is given.
        parts: one part in so many parts of bath.
    """

    up_to: Quantity | None = None
    per_kg: Quantity | None = None
    parts: int | None = None

    def __post_init__(self) -> None:
        if (self.per_kg is None) == (self.parts is None):
            raise UnreadableValueError("machine.detergent.row")
        if (self.parts is not None and self.parts < 1) or (
            self.per_kg is not None and self.per_kg.to("mL") <= 0
        ):
            raise UnreadableValueError("machine.detergent.amount")
        if self.up_to is not None and self.up_to.to("mg/L") < 0:
            raise UnreadableValueError("machine.detergent.hardness", value=str(self.up_to))

    def dose_ml(self, load_kg: float, bath_l: float) -> float:
        """Return the dose for a load [mL]."""
        if self.per_kg is not None:
            return float(self.per_kg.to("mL")) * load_kg
        assert self.parts is not None  # one of the two is given
        return bath_l / self.parts * 1000


@dataclass(frozen=True, kw_only=True)
class Detergent:
    """A product as its label states it, softest water first."""

    name: str
    rows: tuple[DoseRow, ...]

    def row_for(self, hardness: Quantity | None) -> DoseRow | None:
        """Return the row for a water; None when the label does not say, or the water is unread."""
        if len(self.rows) == 1 and self.rows[0].up_to is None:
            return self.rows[0]
        if hardness is None:
            return None
        within = (
            row
            for row in self.rows
            if row.up_to is None or hardness.to("mg/L") <= row.up_to.to("mg/L")
        )
        return next(within, None)


def hardness_class(hardness: Quantity, assumptions: Assumptions) -> str:
    """Return the class of a water: "soft", "moderate", "hard" or "very-hard".

    Raises:
        UnreadableValueError: a hardness below zero.
    """
    milligrams = hardness.to("mg/L")
    if milligrams < 0:
        raise UnreadableValueError("machine.detergent.hardness", value=str(hardness))
    for name in ("soft", "moderate", "hard"):
        if milligrams <= assumptions.band(f"water.{name}").likely:
            return name
    return "very-hard"


def soap_bound_g(hardness: Quantity, bath_l: float) -> float:
    """Return the soap that a bath's hardness binds [g]; true of soap, not of other detergents."""
    return float(hardness.to("mg/L")) / 1000 * bath_l * SOAP_PER_HARDNESS
