"""May a member bring one piece back and take another, in one step: both moves or neither?"""

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass, replace

from sootline.core.basis import (
    Bearing,
    Confidence,
    DateSpan,
    EditionId,
    Finding,
    Ground,
    MemberId,
    Reading,
    RuleId,
    add_months,
    finding,
)
from sootline.core.gear import CareStage, Component, Custody, State
from sootline.core.riding.wearable import record_ground

_PRACTICE = Ground(
    rule=RuleId("exchange"),
    edition=EditionId("practice"),
    source="common practice, no published source",
    confidence=Confidence.PRACTICE,
)


@dataclass(frozen=True, kw_only=True)
class Exchange:
    """What comes back, what goes out, and what is known of both.

    Args:
        on: the civil day of the exchange.
        worn: when the returned piece was last worn; unknown counts as worn since its wash.
        washed: when it had its last advanced cleaning.
        first_day_out: of the piece taken, from the intervals.
        bars: why the piece taken cannot be worn at all, from its state; none when it can.
        signed_by: who signed the try-on of the piece taken; None is nobody yet.
        warn_months_left: warn below so many months of life left; None warns of none.
    """

    member: MemberId
    on: dt.date
    returns: Component
    takes: Component
    worn: DateSpan = DateSpan()
    washed: DateSpan = DateSpan()
    first_day_out: DateSpan = DateSpan()
    bars: tuple[Finding, ...] = ()
    signed_by: str | None = None
    warn_months_left: int | None = None


@dataclass(frozen=True, kw_only=True)
class Move:
    """One half of an exchange: a component and its state afterwards."""

    component: Component
    after: State


@dataclass(frozen=True, kw_only=True)
class ExchangeAnswer:
    """Both moves, or none, with every reason.

    Args:
        moves: the return and the taking; empty when the exchange cannot be made.
        issuable: whether the returned piece could go to somebody else as it is.
        interior: whether the piece taken may be worn for interior work.
        months_left: whole months until its first day out; None is not known.
    """

    moves: tuple[Move, ...]
    issuable: bool
    interior: bool
    months_left: int | None
    findings: tuple[Finding, ...]


def check_exchange(exchange: Exchange) -> ExchangeAnswer:
    """Check an exchange; a piece that may not be taken leaves both where they are."""
    left = months_left(exchange.on, exchange.first_day_out)
    bars = tuple(_bars(exchange))
    wash = _wash_first(exchange)
    findings = (*bars, *wash, *_life(exchange, left), *_try_on(exchange))
    return ExchangeAnswer(
        moves=() if bars else _moves(exchange, soiled=bool(wash)),
        issuable=not wash,
        interior=not bars and exchange.signed_by is not None,
        months_left=left,
        findings=findings,
    )


def months_left(on: dt.date, first_day_out: DateSpan) -> int | None:
    """Count whole civil months until the earliest first day out; 0 when it has come."""
    last = first_day_out.earliest
    if last is None:
        return None
    months = max(0, (last.year - on.year) * 12 + last.month - on.month)
    return months - 1 if months and add_months(on, months) > last else months


def _moves(exchange: Exchange, *, soiled: bool) -> tuple[Move, ...]:
    back, out = exchange.returns.state, exchange.takes.state
    returned = replace(
        back,
        custody=Custody.WASH_ROOM if soiled else Custody.SPARE_RACK,
        holder=None,
        stage=CareStage.TO_WASH if soiled else back.stage,
    )
    taken = replace(out, custody=Custody.MEMBER, holder=exchange.member)
    return (
        Move(component=exchange.returns, after=returned),
        Move(component=exchange.takes, after=taken),
    )


def _bars(exchange: Exchange) -> Iterator[Finding]:
    """List what forbids taking the piece; its state, its date, or somebody else's right to it."""
    yield from exchange.bars
    takes = exchange.takes
    holder = takes.state.holder or takes.owner
    if holder not in (None, exchange.member):
        yield _found(exchange, Bearing.FORBIDS, "taken", takes, holder=holder)
    if exchange.returns.state.holder not in (None, exchange.member):
        other = exchange.returns.state.holder
        yield _found(exchange, Bearing.FORBIDS, "not_with_member", exchange.returns, holder=other)
    if exchange.first_day_out.reached(exchange.on) in (Reading.YES, Reading.POSSIBLY):
        day = exchange.first_day_out
        yield _found(exchange, Bearing.FORBIDS, "out", takes, first_day=day)


def _wash_first(exchange: Exchange) -> tuple[Finding, ...]:
    """Ask for a wash unless the last one is known to lie after the last wearing."""
    worn, washed = exchange.worn, exchange.washed
    since = (
        worn.latest is not None and washed.earliest is not None and worn.latest < washed.earliest
    )
    if since:
        return ()
    piece = exchange.returns
    values = {"worn": worn, "washed": washed}
    return (_found(exchange, Bearing.REQUIRES, "wash_first", piece, **values),)


def _life(exchange: Exchange, left: int | None) -> Iterator[Finding]:
    takes, day = exchange.takes, exchange.first_day_out
    if left is None:
        yield _found(exchange, Bearing.ASKS, "life_unknown", takes)
    elif exchange.warn_months_left is not None and left < exchange.warn_months_left:
        yield finding(
            Bearing.WARNS,
            "riding.exchange.months_left",
            record_ground("retirement", takes.id),
            component=takes.id,
            n=left,
            first_day=day.earliest,
            latest=day.latest or "?",
        )


def _try_on(exchange: Exchange) -> Iterator[Finding]:
    if exchange.signed_by is None:
        yield _found(exchange, Bearing.LIMITS, "try_on", exchange.takes)


def _found(
    exchange: Exchange, bearing: Bearing, message: str, component: Component, **values: object
) -> Finding:
    return finding(
        bearing,
        f"riding.exchange.{message}",
        _PRACTICE,
        member=exchange.member,
        component=component.id,
        kind=component.kind,
        **values,
    )
