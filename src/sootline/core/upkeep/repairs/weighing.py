"""Is a repair worth it: what does it cost for each year that is left, and against a new piece?

Figures and a threshold of the department's, never a decision: a named person decides. A price
counts for as long as the component may still be used, which is known only as a span.
"""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal

from sootline.core.basis import Bearing, DateSpan, Finding, Limit, Quantity, finding
from sootline.core.basis import Standing as Within
from sootline.core.gear import CareStage, Component, find_kind
from sootline.core.gear.sources import kind_traits
from sootline.core.intervals.dues import register_ground
from sootline.core.rulebook import Rulebook, voices
from sootline.core.upkeep.qualified import PRACTICE, Qualified, ask_leave
from sootline.core.upkeep.repairs.facts import Price, Repair
from sootline.core.upkeep.repairs.works import place_work

_DAYS_A_YEAR = Decimal("365.25")
_CENT = Decimal("0.01")
_NOT_WASHED = (CareStage.WORN, CareStage.TO_WASH, CareStage.IN_WASHER)


@dataclass(frozen=True, kw_only=True)
class Worth:
    """A repair in figures.

    Args:
        per_year: what it costs for each year left [lowest, highest], in the quote's currency;
            None where price or years are not known.
        per_year_new: what a new piece costs for each year of its life, likewise.
        percent: the quote against the price of a new piece [%].
        over: whether that is over the department's threshold; None is not known.
    """

    per_year: tuple[Decimal, Decimal] | None
    per_year_new: Decimal | None
    percent: Decimal | None
    over: bool | None
    reasons: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class Weighing:
    """What a repair is weighed by.

    Args:
        first_day_out: of the component, by its years.
        life_months: how long a new one may be used; None is not known [months].
        people: persons and providers, and for what.
    """

    rulebook: Rulebook
    first_day_out: DateSpan
    life_months: int | None
    people: tuple[Qualified, ...]
    today: dt.date


def weigh_repair(component: Component, repair: Repair, by: Weighing) -> Worth:
    """Weigh one repair.

    Raises:
        BadInputError: the component's kind is unknown.
    """
    per_year = _per_year(repair.quote, by)
    percent = _percent(repair)
    over, threshold = _threshold(component, percent, by.rulebook)
    new = repair.new if _comparable(repair) else None
    per_year_new = (
        _cents(new.amount * 12 / by.life_months) if new is not None and by.life_months else None
    )
    reasons = (
        *_before(component, repair, by),
        *_cost(component, repair, per_year, per_year_new, by),
        *threshold,
        *_course(repair, by.today),
    )
    return Worth(
        per_year=per_year,
        per_year_new=per_year_new,
        percent=None if percent is None else _tenth(percent),
        over=over,
        reasons=reasons,
    )


def _before(component: Component, repair: Repair, by: Weighing) -> Iterator[Finding]:
    """Say what stands before any repair: a wash, and who may do the work."""
    stage = component.state.stage
    if stage in _NOT_WASHED:
        yield finding(Bearing.REQUIRES, "mend.wash_first", PRACTICE, stage=stage)
    day = DateSpan.day(by.today)
    for work in repair.works:
        placed = place_work(work, component, by.rulebook)
        yield from placed.reasons
        if repair.by:
            leave = ask_leave(
                placed.scope, repair.by, component, by.rulebook, people=by.people, day=day
            )
            yield from leave.reasons


def _cost(
    component: Component,
    repair: Repair,
    per_year: tuple[Decimal, Decimal] | None,
    per_year_new: Decimal | None,
    by: Weighing,
) -> Iterator[Finding]:
    quote = repair.quote
    if quote is None:
        yield finding(Bearing.ASKS, "mend.no_quote", register_ground(component.id, "repair"))
        return
    if per_year is None:
        ground = register_ground(component.id, "made")
        yield finding(Bearing.ASKS, "mend.no_years", ground, first_day=by.first_day_out)
    else:
        low, high = per_year
        yield finding(
            Bearing.NOTES,
            "mend.per_year",
            quote.ground,
            price=quote,
            low=low,
            high=high,
            currency=quote.currency,
            first_day=by.first_day_out,
            washes="?" if component.wash_count is None else component.wash_count,
        )
    if per_year_new is not None and repair.new is not None:
        yield finding(
            Bearing.NOTES,
            "mend.per_year_new",
            repair.new.ground,
            price=repair.new,
            each=per_year_new,
            currency=repair.new.currency,
        )


def _course(repair: Repair, today: dt.date) -> Iterator[Finding]:
    """Say how far it has come: who decides, and whether it is late."""
    if repair.decided is None:
        yield finding(Bearing.ASKS, "mend.undecided", PRACTICE)
    else:
        yield finding(
            Bearing.NOTES,
            "mend.decided",
            PRACTICE,
            choice=repair.decided.choice,
            by=repair.decided.by,
            why=repair.decided.why or "-",
        )
    away = repair.sent != DateSpan() and repair.back == DateSpan()
    if away and repair.due_back.latest is not None and repair.due_back.latest < today:
        days = (today - repair.due_back.latest).days
        yield finding(Bearing.WARNS, "mend.late", PRACTICE, by=repair.by or "?", n=days)


def _per_year(quote: Price | None, by: Weighing) -> tuple[Decimal, Decimal] | None:
    """Divide a price by the years left, at the longest and at the shortest reading."""
    first, last = by.first_day_out.earliest, by.first_day_out.latest
    if quote is None or first is None or last is None or first <= by.today:
        return None
    longest, shortest = ((day - by.today).days / _DAYS_A_YEAR for day in (last, first))
    return _cents(quote.amount / longest), _cents(quote.amount / shortest)


def _comparable(repair: Repair) -> bool:
    """Whether quote and new price are of one currency, and the new one is a price at all."""
    quote, new = repair.quote, repair.new
    return new is not None and new.amount > 0 and (quote is None or quote.currency == new.currency)


def _percent(repair: Repair) -> Decimal | None:
    if repair.quote is None or repair.new is None or not _comparable(repair):
        return None
    return repair.quote.amount * 100 / repair.new.amount


def _threshold(
    component: Component, percent: Decimal | None, rulebook: Rulebook
) -> tuple[bool | None, tuple[Finding, ...]]:
    """Hold the share against every threshold anybody states; the strictest speaks first."""
    if percent is None:
        ground = register_ground(component.id, "price")
        return None, (finding(Bearing.ASKS, "mend.no_share", ground),)
    reading = Quantity(amount=percent, unit="%")
    traits = kind_traits(find_kind(component.kind), component.traits)
    over: bool | None = None
    said = []
    for one in voices(rulebook, "repair.percent", traits):
        limit = one.rule.value
        if isinstance(limit, Limit):
            beyond = limit.stand(reading) is Within.BEYOND
            over = beyond or bool(over)
            bearing = Bearing.WARNS if beyond else Bearing.NOTES
            message = "mend.over" if beyond else "mend.within"
            named = {"percent": _tenth(percent), "limit": limit.numbers}
            said.append(finding(bearing, message, one.ground, **named))
    return over, tuple(said)


def _tenth(percent: Decimal) -> Decimal:
    return percent.quantize(Decimal("0.1"), ROUND_HALF_UP)


def _cents(amount: Decimal) -> Decimal:
    return amount.quantize(_CENT, ROUND_HALF_UP)
