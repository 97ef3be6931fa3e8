"""What now, when something comes in between: what runs stays, the rest is planned again."""

from dataclasses import dataclass, replace

from sootline.core.basis import BadInputError, Fault, MachineId, MessageId
from sootline.core.washplan.facts import Begun, Member, Piece, Washer
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Goal, Plan
from sootline.core.washplan.search import Stop, solve
from sootline.core.washplan.steps import Load


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
class Changes:
    """What has become different.

    Args:
        members, pieces: come on top (a second call).
        helpers: the new head counts, None if they stay.
    """

    down: tuple[Down, ...] = ()
    late: tuple[LateLoad, ...] = ()
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


def carry_on(instance: Instance, plan: Plan, *, minute: int, changes: Changes) -> Instance:
    """Write down the state at a minute of a plan that has been kept until then.

    Raises:
        BadInputError: a change names what is not there, or leaves a piece without a washer.
    """
    _check(instance, changes)
    down = {one.washer: one.until for one in changes.down}
    late = {one.washer: one.minutes for one in changes.late}
    release = {member.id: member.release for member in instance.members}
    owner = {piece.id: piece.member for piece in instance.pieces}
    free = {washer: until for washer, until in down.items() if until is not None}
    return replace(
        instance,
        members=instance.members + changes.members,
        pieces=instance.pieces + changes.pieces,
        helpers=instance.helpers if changes.helpers is None else changes.helpers,
        washers=tuple(
            Washer(id=washer.id, programmes={}) if down.get(washer.id, 0) is None else washer
            for washer in instance.washers
        ),
        washer_free={**instance.washer_free, **free},
        begun=Begun(
            minute=minute,
            loads=tuple(
                _delayed(load, minute, late.get(load.washer, 0), instance.unload_min)
                for load in plan.loads
                if load.load_start < minute and not (load.washer in down and load.prog_end > minute)
            ),
            prep=tuple(step for step in plan.prep if step.start < minute),
            hand=tuple(step for step in plan.hand if step.start < minute),
            dry=tuple(step for step in plan.dry if step.start < minute),
            inspect=tuple(step for step in plan.inspect if step.start < minute),
            spares=tuple(piece for piece in plan.spares if release[owner[piece]] <= minute),
        ),
    )


def _delayed(load: Load, minute: int, minutes: int, unload_min: int) -> Load:
    """Let a running programme end later; its unloading is open anyway."""
    if not minutes or load.prog_end <= minute:
        return load
    end = load.prog_end + minutes
    return replace(load, prog_end=end, unload_start=end, unload_end=end + unload_min)


def _check(instance: Instance, changes: Changes) -> None:
    known = {washer.id for washer in instance.washers}
    faults = [
        Fault(place=place, message=MessageId("washplan.unknown"), values=(("value", one.washer),))
        for place, ones in (("down", changes.down), ("late", changes.late))
        for one in ones
        if one.washer not in known
    ]
    if faults:
        raise BadInputError(faults)
