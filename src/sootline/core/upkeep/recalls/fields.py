"""How does one field of a component stand to what a notice says of it?"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import DateSpan
from sootline.core.gear import Component
from sootline.core.intervals import made_when
from sootline.core.roster import folded
from sootline.core.upkeep.recalls.lots import CUT_SHORT, Fit, LotFit, LotSpan, canonical, could_read


class Field(StrEnum):
    """What a notice may speak of."""

    KIND = "kind"
    MAKER = "maker"
    STYLE = "style"
    MADE = "made"
    LOT = "lot"


@dataclass(frozen=True, kw_only=True)
class FieldFit:
    """How one field stands.

    Args:
        given: what the record says; None is nothing.
        why: the sentence's last part, where it is not just the fit ("slip", "unreadable").
        reading: how it would have to be read to lie inside.
        known: whether the record says enough to speak against another field.
        excepted: whether the notice names it as not meant.
    """

    field: Field
    fit: Fit
    given: str | None = None
    why: str | None = None
    reading: str | None = None
    known: bool = True
    excepted: bool = False


def word_fit(
    field: Field, given: str | None, named: tuple[str, ...], *, readable: bool
) -> FieldFit:
    """Hold a maker or a style against those a notice names.

    What a record says of a label that cannot be read was written down elsewhere; it rules nothing
    out.
    """
    if not named:
        return FieldFit(field=field, fit=Fit.SILENT, given=given)
    if given is None or not given.strip():
        return FieldFit(field=field, fit=Fit.POSSIBLY, why="missing", known=False)
    if any(_same(field, given, one) for one in named):
        return FieldFit(field=field, fit=Fit.IN, given=given)
    meant = next((one for one in named if _near(field, given, one)), None)
    if meant is not None:
        return FieldFit(field=field, fit=Fit.POSSIBLY, given=given, why="slip", reading=meant)
    if not readable:
        return FieldFit(field=field, fit=Fit.POSSIBLY, given=given, why="unreadable")
    return FieldFit(field=field, fit=Fit.OUT, given=given)


def made_fit(component: Component, bounds: DateSpan) -> FieldFit:
    """Hold the day of manufacture, as far as it is known, against a notice's days."""
    if bounds == DateSpan():
        return FieldFit(field=Field.MADE, fit=Fit.SILENT)
    span, contradictions = made_when(component)
    given = str(span)
    if contradictions:
        return FieldFit(field=Field.MADE, fit=Fit.POSSIBLY, given=given, why="contradicts")
    if _apart(span, bounds):
        return FieldFit(field=Field.MADE, fit=Fit.OUT, given=given)
    if _within(span, bounds):
        return FieldFit(field=Field.MADE, fit=Fit.IN, given=given)
    known = span.earliest is not None
    why = "partly" if known else "missing"
    return FieldFit(field=Field.MADE, fit=Fit.POSSIBLY, given=given, why=why, known=known)


def lot_fit(
    given: str | None, lots: Iterable[LotSpan], excepted: Iterable[LotSpan], *, readable: bool
) -> FieldFit:
    """Hold a lot against the lots a notice names, and those it excepts."""
    named = tuple(lots)
    if not named:
        return FieldFit(field=Field.LOT, fit=Fit.SILENT, given=given)
    if given is None or not canonical(given).strip(f"-{CUT_SHORT}"):
        return FieldFit(field=Field.LOT, fit=Fit.POSSIBLY, why="missing", known=False)
    fits = [span.fit(given) for span in named]
    meant = next((one for one in fits if one.fit is Fit.POSSIBLY), None)
    left_out = [span.fit(given) for span in excepted]
    if any(one.fit is Fit.IN for one in fits):
        return _inside(given, left_out, readable=readable)
    if meant is not None:
        return FieldFit(
            field=Field.LOT, fit=Fit.POSSIBLY, given=given, why="slip", reading=meant.reading
        )
    if not readable:
        return FieldFit(field=Field.LOT, fit=Fit.POSSIBLY, given=given, why="unreadable")
    return FieldFit(field=Field.LOT, fit=Fit.OUT, given=given)


def _inside(given: str, left_out: list[LotFit], *, readable: bool) -> FieldFit:
    """Judge a lot that lies inside: it may be one of those the notice leaves out."""
    if readable and any(one.fit is Fit.IN for one in left_out):
        return FieldFit(field=Field.LOT, fit=Fit.OUT, given=given, why="excepted", excepted=True)
    near = next((one for one in left_out if one.fit is not Fit.OUT), None)
    if near is None:
        return FieldFit(field=Field.LOT, fit=Fit.IN, given=given)
    reading = near.reading or given
    return FieldFit(
        field=Field.LOT, fit=Fit.POSSIBLY, given=given, why="maybe_excepted", reading=reading
    )


def _same(field: Field, given: str, named: str) -> bool:
    if field is Field.MAKER:
        return folded(given) == folded(named)
    return canonical(given) == canonical(named)


def _near(field: Field, given: str, named: str) -> bool:
    """Whether one could be the other, written in another way or by a slip."""
    if field is Field.STYLE:
        return could_read(given, named)
    mine, theirs = set(folded(given).split()), set(folded(named).split())
    return bool(mine & theirs) or could_read(given, named)


def _apart(span: DateSpan, bounds: DateSpan) -> bool:
    late = span.earliest and bounds.latest and span.earliest > bounds.latest
    early = span.latest and bounds.earliest and span.latest < bounds.earliest
    return bool(late or early)


def _within(span: DateSpan, bounds: DateSpan) -> bool:
    low = bounds.earliest is None or (
        span.earliest is not None and span.earliest >= bounds.earliest
    )
    high = bounds.latest is None or (span.latest is not None and span.latest <= bounds.latest)
    return low and high
