"""Which components does a notice mean, possibly mean, or not mean, and which field says so?

A component is affected when every field the notice speaks of lies inside; it is not affected only
when a field that can be relied on lies outside. Date and lot are two statements about one thing:
where one lies inside and the other outside, one of them is wrong, and nobody here decides which.
Whatever is missing, partly known or readable in more than one way leaves it possible.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import Bearing, ComponentId, Finding, finding
from sootline.core.gear import Component, Life
from sootline.core.upkeep.recalls.fields import Field, FieldFit, lot_fit, made_fit, word_fit
from sootline.core.upkeep.recalls.lots import Fit
from sootline.core.upkeep.recalls.notices import Notice


class Affected(StrEnum):
    """Where a component stands to a notice."""

    AFFECTED = "affected"
    POSSIBLE = "possible"
    NOT_AFFECTED = "not-affected"
    GONE = "gone"


@dataclass(frozen=True, kw_only=True)
class Match:
    """One component against one notice.

    Args:
        fields: how each field stands.
        decided_by: the fields that decided.
        reasons: one finding for every field the notice speaks of, and for what they come to.
    """

    component: ComponentId
    affected: Affected
    fields: tuple[FieldFit, ...]
    decided_by: tuple[Field, ...]
    reasons: tuple[Finding, ...]


def match_notice(notice: Notice, components: Iterable[Component]) -> Iterator[Match]:
    """Hold a register against a notice, component by component, in the register's order.

    Raises:
        UnreadableValueError: a span of lots in the notice is none.
    """
    desk = _Desk(notice)
    return (desk.match(component) for component in components)


class _Desk:
    """Judges components against one notice and remembers each text it has judged."""

    def __init__(self, notice: Notice) -> None:
        self._notice = notice
        self._kinds = frozenset(notice.kinds)
        self._words: dict[tuple[Field, str | None, bool], FieldFit] = {}
        self._lots: dict[tuple[str | None, bool], FieldFit] = {}

    def match(self, component: Component) -> Match:
        """Judge one component."""
        fields = (self._kind(component), *self._marks(component))
        affected, decided = _decide({one.field: one for one in fields})
        if affected is not Affected.NOT_AFFECTED and component.state.life is Life.DISPOSED:
            affected = Affected.GONE
        said = tuple(_say(self._notice, one) for one in fields if one.fit is not Fit.SILENT)
        return Match(
            component=component.id,
            affected=affected,
            fields=fields,
            decided_by=decided,
            reasons=(*said, *_concluded(self._notice, affected, decided)),
        )

    def _kind(self, component: Component) -> FieldFit:
        fit = Fit.IN if component.kind in self._kinds else Fit.OUT
        return FieldFit(field=Field.KIND, fit=fit, given=component.kind)

    def _marks(self, component: Component) -> Iterator[FieldFit]:
        label, notice = component.label, self._notice
        readable = label.readable
        for field, given, named in (
            (Field.MAKER, label.maker, notice.makers),
            (Field.STYLE, label.style, notice.styles),
        ):
            key = (field, given, readable)
            if key not in self._words:
                self._words[key] = word_fit(field, given, named, readable=readable)
            yield self._words[key]
        yield made_fit(component, notice.made)
        if (label.lot, readable) not in self._lots:
            fit = lot_fit(label.lot, notice.lots, notice.except_lots, readable=readable)
            self._lots[label.lot, readable] = fit
        yield self._lots[label.lot, readable]


def _decide(fields: dict[Field, FieldFit]) -> tuple[Affected, tuple[Field, ...]]:
    """Weigh the fields; the first that can be relied on and lies outside decides."""
    for field in (Field.KIND, Field.MAKER, Field.STYLE):
        if fields[field].fit is Fit.OUT:
            return Affected.NOT_AFFECTED, (field,)
    made, lot = fields[Field.MADE], fields[Field.LOT]
    if lot.excepted:
        return Affected.NOT_AFFECTED, (Field.LOT,)
    outside = tuple(one.field for one in (made, lot) if one.fit is Fit.OUT)
    if outside and not _contradicted(made, lot):
        return Affected.NOT_AFFECTED, outside
    open_fields = tuple(one.field for one in fields.values() if one.fit in (Fit.POSSIBLY, Fit.OUT))
    if open_fields:
        both = (Field.MADE, Field.LOT) if outside else ()
        return Affected.POSSIBLE, tuple(dict.fromkeys((*both, *open_fields)))
    inside = tuple(one.field for one in fields.values() if one.fit is Fit.IN)
    return Affected.AFFECTED, inside


def _contradicted(made: FieldFit, lot: FieldFit) -> bool:
    """Whether what is known of the one speaks against the other that lies outside."""
    other = lot if made.fit is Fit.OUT else made
    return other.fit is Fit.IN or (other.fit is Fit.POSSIBLY and other.known)


def _say(notice: Notice, one: FieldFit) -> Finding:
    bearing = {Fit.IN: Bearing.NOTES, Fit.OUT: Bearing.NOTES, Fit.POSSIBLY: Bearing.ASKS}
    how = f"{one.fit}" if one.why is None else one.why
    return finding(
        bearing[one.fit],
        f"recall.{one.field}.{how}",
        notice.ground,
        given=one.given if one.given is not None else "-",
        reading=one.reading or "-",
        named=_named(notice, one.field),
    )


def _named(notice: Notice, field: Field) -> str:
    """Write what the notice says of a field, as a reader would compare it."""
    if field is Field.MADE:
        return str(notice.made)
    if field is Field.LOT:
        spans = (f"{one.first}..{one.last or one.first}" for one in notice.lots)
        excepted = "".join(f", - {one.first}" for one in notice.except_lots)
        return ", ".join(spans) + excepted
    named = {Field.KIND: notice.kinds, Field.MAKER: notice.makers, Field.STYLE: notice.styles}
    return ", ".join(named[field])


def _concluded(notice: Notice, affected: Affected, decided: tuple[Field, ...]) -> Iterator[Finding]:
    fields = ", ".join(decided)
    if affected is Affected.POSSIBLE and {Field.MADE, Field.LOT} <= set(decided):
        yield finding(Bearing.ASKS, "recall.disagree", notice.ground, fields=fields)
    bearing = {
        Affected.AFFECTED: Bearing.FORBIDS if notice.stop_use else Bearing.WARNS,
        Affected.POSSIBLE: Bearing.FORBIDS if notice.stop_use else Bearing.ASKS,
        Affected.NOT_AFFECTED: Bearing.NOTES,
        Affected.GONE: Bearing.NOTES,
    }
    here = affected in (Affected.AFFECTED, Affected.POSSIBLE)
    stop = ".stop" if here and notice.stop_use else ""
    yield finding(bearing[affected], f"recall.is.{affected}{stop}", notice.ground, fields=fields)
