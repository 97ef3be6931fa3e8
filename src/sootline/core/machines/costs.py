"""What does a load or a set cost to wash here, against a contract, at the department's prices?

Every price is the department's own, with the day it was good for; none comes with the program.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    Bearing,
    DateSpan,
    Finding,
    Quantity,
    UnreadableValueError,
    finding,
)
from sootline.core.machines.grounds import as_entered


class CostKind(StrEnum):
    """What a load of washing uses up, or what a set costs beside it."""

    WATER = "water"
    POWER = "power"
    GAS = "gas"
    DETERGENT = "detergent"
    LABOUR = "labour"
    INSPECTION = "inspection"
    SPARE_GEAR = "spare-gear"
    FREIGHT = "freight"
    OTHER = "other"


# Without these a comparison says little: labour is most of a load, and the rest is in a contract.
_NEEDED = (CostKind.LABOUR, CostKind.INSPECTION, CostKind.SPARE_GEAR)


@dataclass(frozen=True, kw_only=True)
class Price:
    """An amount of money for an amount of something (15.00 for 1000 gal)."""

    amount: float
    per: Quantity

    def __post_init__(self) -> None:
        if self.amount < 0 or self.per.amount <= 0:
            raise UnreadableValueError("machine.cost.amount", value=f"{self.amount:g} / {self.per}")

    def of(self, used: Quantity) -> float:
        """Return what an amount costs; the units must measure the same thing."""
        return self.amount * float(used.to(self.per.unit)) / float(self.per.amount)


@dataclass(frozen=True, kw_only=True)
class CostItem:
    """What one load uses of one thing, and its price."""

    kind: CostKind
    used: Quantity
    price: Price

    def __post_init__(self) -> None:
        if self.used.amount < 0:
            raise UnreadableValueError("machine.cost.amount", value=str(self.used))

    @property
    def cost(self) -> float:
        """What the load costs in this."""
        return self.price.of(self.used)


@dataclass(frozen=True, kw_only=True)
class CostSheet:
    """The department's figures.

    Args:
        dated: when the prices were good.
        currency: as the department writes it.
        items: what one load uses.
        sets: full sets in one load, at least 1; it may be a part.
        yearly: what the washing place costs a year whatever is washed (machines over their life,
            maintenance).
        contract: a contractor's price for one set; None is not asked for.
        contract_covers: what that price has in it beside the wash.
        sets_a_year: how many sets are washed a year; None is not known.
    """

    dated: DateSpan
    currency: str
    items: tuple[CostItem, ...]
    sets: float
    yearly: float = 0.0
    contract: float | None = None
    contract_covers: tuple[CostKind, ...] = ()
    sets_a_year: float | None = None

    def __post_init__(self) -> None:
        if self.dated == DateSpan():
            raise UnreadableValueError("machine.cost.undated")
        wrong = self.sets <= 0 or self.yearly < 0 or (self.contract or 0) < 0
        if wrong or (self.sets_a_year is not None and self.sets_a_year <= 0):
            raise UnreadableValueError("machine.cost.amount", value=f"{self.sets:g}")


@dataclass(frozen=True, kw_only=True)
class Cost:
    """What a load and a set cost, and where in-house meets the contract.

    Args:
        shares: of the load's cost, by kind, in the order entered.
        set_all_in: with the yearly cost spread over the sets of a year; None is not known.
        break_even: sets a year from which in-house costs less; None where it never does, or
            without a contract.
    """

    load: float
    set: float
    shares: tuple[tuple[CostKind, float], ...]
    set_all_in: float | None
    break_even: float | None
    findings: tuple[Finding, ...]


def reckon_cost(sheet: CostSheet) -> Cost:
    """Return what washing costs at the prices entered."""
    load = sum(item.cost for item in sheet.items)
    variable = load / sheet.sets
    whole = None if sheet.sets_a_year is None else variable + sheet.yearly / sheet.sets_a_year
    shares = tuple((item.kind, item.cost / load if load else 0.0) for item in sheet.items)
    return Cost(
        load=load,
        set=variable,
        shares=shares,
        set_all_in=whole,
        break_even=_break_even(sheet, variable),
        findings=tuple(_findings(sheet, variable)),
    )


def _break_even(sheet: CostSheet, variable: float) -> float | None:
    if sheet.contract is None or sheet.contract <= variable:
        return None
    return sheet.yearly / (sheet.contract - variable)


def _findings(sheet: CostSheet, variable: float) -> Iterator[Finding]:
    ground = as_entered("washer.cost")
    yield finding(Bearing.NOTES, "machine.cost.dated", ground, dated=sheet.dated)
    given = {item.kind for item in sheet.items}
    for kind in _NEEDED:
        if kind not in given:
            yield finding(Bearing.WARNS, f"machine.cost.without.{kind}", ground)
    if sheet.contract is None:
        return
    for kind in sheet.contract_covers:
        if kind not in given:
            yield finding(Bearing.WARNS, "machine.cost.only_contract", ground, kind=kind)
    if sheet.contract <= variable:
        values = {"contract": f"{sheet.contract:.2f}", "own": f"{variable:.2f}"}
        yield finding(Bearing.NOTES, "machine.cost.never_even", ground, **values)
