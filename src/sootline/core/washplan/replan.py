"""What now, when something comes in between: what runs stays, the rest is planned again."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from sootline.core.basis import BadInputError, ComponentId, Fault, MachineId, MessageId, PlaceId
from sootline.core.washplan.facts import Begun, Member, Piece, Washer
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.search import Stop, solve
from sootline.core.washplan.steps import Drying, Load, Task


@dataclass(frozen=True, kw_only=True)
class Down:
    """A washer stops; a programme it is running counts for nothing and is run again.

    Args:
        until: when it is available again [min]; None means not within this plan.
    """

    washer: MachineId
    until: int | None = None


@dataclass(frozen=True, kw_only=True)
class LateLoad:
    """The load in a washer takes longer than planned by so many minutes."""

    washer: MachineId
    minutes: int


@dataclass(frozen=True, kw_only=True)
class DryerDown:
    """A drying cabinet stops; what hangs in it is still wet and is dried anew.

    Args:
        until: when it is available again [min]; None means not within this plan.
    """

    cabinet: PlaceId
    until: int | None = None


@dataclass(frozen=True, kw_only=True)
class LateRun:
    """The run in a drying cabinet takes longer than planned by so many minutes."""

    cabinet: PlaceId
    minutes: int


@dataclass(frozen=True, kw_only=True)
class StillDamp:
    """A piece was found damp when its drying should have been over: it hangs again.

    Args:
        minutes: how long, never more than its full drying.
    """

    piece: ComponentId
    minutes: int


@dataclass(frozen=True, kw_only=True)
class Changes:
    """What has become different.

    Args:
        members, pieces: come on top (a second call).
        helpers: the new head counts, None if they stay.
    """

    down: tuple[Down, ...] = ()
    late: tuple[LateLoad, ...] = ()
    dryers: tuple[DryerDown, ...] = ()
    late_runs: tuple[LateRun, ...] = ()
    damp: tuple[StillDamp, ...] = ()
    members: tuple[Member, ...] = ()
    pieces: tuple[Piece, ...] = ()
    helpers: tuple[tuple[int, int, int], ...] | None = None


@dataclass(frozen=True, kw_only=True)
class Replanned:
    """A new plan with the instance it answers, in which what is begun is written down."""

    instance: Instance
    plan: Plan


def replan(
    instance: Instance,
    plan: Plan,
    *,
    minute: int,
    changes: Changes,
    goal: Goal = Goal.SOONEST,
    by: int | None = None,
    stop: Stop,
    seed: int = 0,
) -> Replanned:
    """Plan the rest again from the state at a minute.

    The old order joins the pool, so it is kept where nothing better is found.

    Args:
        minute: now; steps that start before it stand.

    Raises:
        BadInputError: a change names what is not there, or leaves a piece without a washer.
    """
    now = carry_on(instance, plan, minute=minute, changes=changes)
    new = solve(now, goal=goal, by=by, stop=stop, seed=seed, known=plan)
    return Replanned(instance=now, plan=new)


def power_cut(instance: Instance, plan: Plan, *, minute: int, minutes: int) -> Changes:
    """Say what it changes when no machine runs for so many minutes and then all go on.

    What hangs on the rack goes on drying and helpers go on working.
    """
    turning = {load.washer for load in plan.loads if load.load_start < minute < load.prog_end}
    shut = {step.where for step in plan.dry if step.start < minute < step.end}
    back = minute + minutes
    return Changes(
        down=tuple(
            Down(washer=washer.id, until=back)
            for washer in instance.washers
            if washer.programmes and washer.id not in turning
        ),
        late=tuple(LateLoad(washer=one, minutes=minutes) for one in sorted(turning)),
        dryers=tuple(
            DryerDown(cabinet=one.id, until=back)
            for one in instance.open_cabinets
            if one.id not in shut
        ),
        late_runs=tuple(
            LateRun(cabinet=one.id, minutes=minutes)
            for one in instance.open_cabinets
            if one.id in shut
        ),
    )


def carry_on(instance: Instance, plan: Plan, *, minute: int, changes: Changes) -> Instance:
    """Write down the state at a minute of a plan that has been kept until then.

    Raises:
        BadInputError: a change names what is not there, or leaves a piece without a washer.
    """
    _check(instance, plan, minute, changes)
    down = {one.washer: one.until for one in changes.down}
    late = {one.washer: one.minutes for one in changes.late}
    release = {member.id: member.release for member in instance.members}
    owner = {piece.id: piece.member for piece in instance.pieces}
    free = {washer: until for washer, until in down.items() if until is not None}
    return replace(
        instance,
        members=instance.members + changes.members,
        pieces=_dampened(instance, changes) + changes.pieces,
        helpers=instance.helpers if changes.helpers is None else changes.helpers,
        washers=tuple(
            Washer(id=washer.id, programmes={}) if down.get(washer.id, 0) is None else washer
            for washer in instance.washers
        ),
        washer_free={**instance.washer_free, **free},
        dryer_free={**instance.dryer_free, **{one.cabinet: one.until for one in changes.dryers}},
        begun=Begun(
            minute=minute,
            loads=tuple(
                _delayed(load, minute, late.get(load.washer, 0), instance.unload_min)
                for load in plan.loads
                if load.load_start < minute and not (load.washer in down and load.prog_end > minute)
            ),
            prep=tuple(step for step in plan.prep if step.start < minute),
            hand=tuple(step for step in plan.hand if step.start < minute),
            dry=tuple(_hung(plan, minute, changes)),
            inspect=tuple(_inspected(instance, plan, minute, changes)),
            spares=tuple(piece for piece in plan.spares if release[owner[piece]] <= minute),
        ),
    )


def _delayed(load: Load, minute: int, minutes: int, unload_min: int) -> Load:
    """Let a running programme end later; its unloading is open anyway."""
    if not minutes or load.prog_end <= minute:
        return load
    end = load.prog_end + minutes
    return replace(load, prog_end=end, unload_start=end, unload_end=end + unload_min)


def _hung(plan: Plan, minute: int, changes: Changes) -> Iterator[Drying]:
    """List the drying that has begun and counts."""
    stopped = {one.cabinet for one in changes.dryers}
    late: dict[str, int] = {one.cabinet: one.minutes for one in changes.late_runs}
    damp = {one.piece for one in changes.damp}
    for step in plan.dry:
        if step.start >= minute or step.piece in damp:
            continue
        if step.end <= minute:
            yield step
        elif step.where not in stopped:
            yield replace(step, end=step.end + late.get(step.where, 0))


def _inspected(instance: Instance, plan: Plan, minute: int, changes: Changes) -> Iterator[Task]:
    """List the inspection that has begun, without what was found damp in it."""
    damp = {one.piece for one in changes.damp}
    need = {piece.id: piece.inspect for piece in instance.pieces}
    for task in plan.inspect:
        rest = tuple(piece for piece in task.pieces if piece not in damp)
        if task.start < minute and rest:
            less = sum(need[piece] for piece in task.pieces if piece in damp)
            yield replace(task, pieces=rest, end=task.end - less)


def _dampened(instance: Instance, changes: Changes) -> tuple[Piece, ...]:
    """Give what was found damp the minutes it still has to hang."""
    damp = {one.piece: one.minutes for one in changes.damp}
    return tuple(
        replace(
            piece,
            dry_rack=min(piece.dry_rack, damp[piece.id]),
            dry_cab=None if piece.dry_cab is None else min(piece.dry_cab, damp[piece.id]),
        )
        if piece.id in damp
        else piece
        for piece in instance.pieces
    )


def _check(instance: Instance, plan: Plan, minute: int, changes: Changes) -> None:
    washers: set[str] = {washer.id for washer in instance.washers}
    cabinets: set[str] = {cabinet.id for cabinet in instance.cabinets}
    hanging: set[str] = {step.piece for step in plan.dry if step.end <= minute}
    named: list[tuple[str, Iterable[str], set[str]]] = [
        ("down", [one.washer for one in changes.down], washers),
        ("late", [one.washer for one in changes.late], washers),
        ("dryers", [one.cabinet for one in changes.dryers], cabinets),
        ("late_runs", [one.cabinet for one in changes.late_runs], cabinets),
        ("damp", [one.piece for one in changes.damp], hanging),
    ]
    faults = [
        Fault(place=place, message=MessageId("washplan.unknown"), values=(("value", value),))
        for place, values, known in named
        for value in values
        if value not in known
    ]
    if faults:
        raise BadInputError(faults)
