"""Which facts are missing, and what has an officer decided for all such pieces at once?

Missing facts by themselves hold nothing: a piece without a date stays in use and on the list.
Past its life under every reading, it is held, whoever decided otherwise.
"""

import datetime as dt
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    DateSpan,
    KindId,
    MemberId,
    SetId,
    UnreadableValueError,
)
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import Layer
from sootline.core.gear.state import Life
from sootline.core.intervals import Due
from sootline.core.roster.pieces import hold_for, is_unlabelled_part
from sootline.core.roster.tables import fault

_IN_USE = (Life.IN_SERVICE, Life.RESERVE, Life.TRAINING_ONLY)


class MissingFact(StrEnum):
    """What somebody has to look up on the piece."""

    MADE = "made"
    SERIAL = "serial"
    SIZE = "size"
    OWN_LABEL = "own-label"
    DRAG_DEVICE = "drag-device"


@dataclass(frozen=True, kw_only=True)
class Missing:
    """A piece in use of which facts are missing."""

    piece: ComponentId
    kind: KindId
    facts: tuple[MissingFact, ...]


class Choice(StrEnum):
    """What an officer may decide for pieces whose date is not known."""

    KEEP = "keep"
    PULL = "pull"
    MADE = "made"


@dataclass(frozen=True, kw_only=True)
class Decision:
    """One decision for every undated piece of a list.

    Args:
        by: who decides.
        why: what it rests on, in the officer's words.
        made: the span the officer stands for, with the choice MADE.
    """

    choice: Choice
    by: str
    on: dt.date
    why: str
    made: DateSpan = DateSpan()


@dataclass(frozen=True, kw_only=True)
class DecisionRecord:
    """Who decided what, for which pieces."""

    decision: Decision
    pieces: tuple[ComponentId, ...]


def list_missing(components: Iterable[Component]) -> tuple[Missing, ...]:
    """List what is not known of every piece in use, in the order of the list."""
    pieces = tuple(components)
    with_device = {(piece.owner, piece.set) for piece in pieces if piece.kind == "drag-device"}
    found = (
        Missing(piece=piece.id, kind=piece.kind, facts=_missing(piece, with_device))
        for piece in pieces
        if piece.state.life in _IN_USE
    )
    return tuple(missing for missing in found if missing.facts)


def hold_past(
    components: Iterable[Component], due: Callable[[Component], Due | None], today: dt.date
) -> tuple[tuple[Component, ...], tuple[Due, ...]]:
    """Hold every piece that is past its life under every reading of its dates.

    Args:
        due: a piece's first day out, None where it is retired already.

    Returns:
        All pieces, those held among them, and the due days that held them.
    """
    kept: list[Component] = []
    past: list[Due] = []
    for component in components:
        out = due(component)
        if out is not None and out.first_day.latest is not None and out.first_day.latest <= today:
            reason = out.reasons[0]
            hold = replace(hold_for("roster.ask.past_life"), reason=reason)
            holds = (*component.state.holds, hold)
            kept.append(replace(component, state=replace(component.state, holds=holds)))
            past.append(out)
        else:
            kept.append(component)
    return tuple(kept), tuple(past)


def decide_undated(
    components: Iterable[Component], decision: Decision
) -> tuple[tuple[Component, ...], DecisionRecord]:
    """Apply one officer's decision to every piece in use whose date nothing bounds from below.

    Raises:
        BadInputError: nobody signs it, it gives no reason, or the span it gives contradicts what
            is known of a piece.
    """
    _check(decision)
    decided: list[Component] = []
    pieces: list[ComponentId] = []
    faults = []
    for component in components:
        if component.state.life not in _IN_USE or component.made.earliest is not None:
            decided.append(component)
            continue
        pieces.append(component.id)
        try:
            decided.append(_decided(component, decision))
        except UnreadableValueError:
            values = {"piece": component.id, "value": decision.made, "other": component.made}
            faults.append(fault(component.id, "roster.decision.contradicts", **values))
    if faults:
        raise BadInputError(faults)
    return tuple(decided), DecisionRecord(decision=decision, pieces=tuple(pieces))


def _check(decision: Decision) -> None:
    missing = [name for name in ("by", "why") if not getattr(decision, name).strip()]
    faults = [fault(f"--{name}", f"roster.decision.{name}") for name in missing]
    if decision.choice is Choice.MADE and decision.made.earliest is None:
        faults.append(fault("--undated", "roster.decision.open", value=decision.made))
    if faults:
        raise BadInputError(faults)


def _decided(component: Component, decision: Decision) -> Component:
    if decision.choice is Choice.MADE:
        return replace(component, made=component.made.intersect(decision.made))
    if decision.choice is Choice.PULL:
        holds = (*component.state.holds, hold_for("roster.ask.undated"))
        return replace(component, state=replace(component.state, holds=holds))
    return component


def _missing(
    component: Component, with_device: set[tuple[MemberId | None, SetId | None]]
) -> tuple[MissingFact, ...]:
    part = is_unlabelled_part(component)
    coat = component.kind == "coat-shell"
    shell = find_kind(component.kind).layer is Layer.SHELL
    facts = {
        MissingFact.MADE: component.made.earliest is None,
        MissingFact.SERIAL: component.label.serial is None and not part,
        MissingFact.SIZE: shell and not component.size,
        MissingFact.OWN_LABEL: part,
        MissingFact.DRAG_DEVICE: coat and (component.owner, component.set) not in with_device,
    }
    return tuple(fact for fact, missing in facts.items() if missing)
