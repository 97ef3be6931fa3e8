"""Ways to damage a good plan; each breaks one hard rule. None means: not possible in this plan."""

from collections.abc import Callable
from dataclasses import replace
from random import Random

from sootline.core.basis import ComponentId, MachineId, MemberId, PlaceId
from sootline.core.washplan import RACK, Drying, Instance, Load, Plan

Damage = Callable[[Instance, Plan, Random], Plan | None]


def _with_load(plan: Plan, k: int, load: Load) -> Plan:
    return replace(plan, loads=(*plan.loads[:k], load, *plan.loads[k + 1 :]))


def _with_dry(plan: Plan, k: int, step: Drying) -> Plan:
    return replace(plan, dry=(*plan.dry[:k], step, *plan.dry[k + 1 :]))


def _drawn(plan: Plan, chance: Random) -> tuple[int, Load]:
    k = chance.randrange(len(plan.loads))
    return k, plan.loads[k]


def _moved(load: Load, minutes: int) -> Load:
    return replace(
        load, load_start=load.load_start + minutes, prog_start=load.prog_start + minutes,
        prog_end=load.prog_end + minutes, unload_start=load.unload_start + minutes,
        unload_end=load.unload_end + minutes,
    )  # fmt: skip


def drop_a_load(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Leave some pieces unwashed."""
    k, _load = _drawn(plan, chance)
    return replace(plan, loads=plan.loads[:k] + plan.loads[k + 1 :])


def drop_preparation(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Leave some pieces unprepared."""
    k = chance.randrange(len(plan.prep))
    return replace(plan, prep=plan.prep[:k] + plan.prep[k + 1 :])


def drop_drying(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Let a piece never dry."""
    k = chance.randrange(len(plan.dry))
    return replace(plan, dry=plan.dry[:k] + plan.dry[k + 1 :])


def drop_inspection(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Leave some pieces uninspected."""
    k = chance.randrange(len(plan.inspect))
    return replace(plan, inspect=plan.inspect[:k] + plan.inspect[k + 1 :])


def drop_hand_wash(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Leave a hand piece unwashed."""
    k = chance.randrange(len(plan.hand))
    return replace(plan, hand=plan.hand[:k] + plan.hand[k + 1 :])


def wash_twice(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Put a piece into its drum twice."""
    k, load = _drawn(plan, chance)
    return _with_load(plan, k, replace(load, pieces=(*load.pieces, load.pieces[0])))


def prepare_twice(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Prepare a piece again at the end."""
    task = chance.choice(plan.prep)
    end = plan.makespan + 100
    again = replace(task, start=end, end=end + task.end - task.start)
    return replace(plan, prep=(*plan.prep, again))


def empty_drum(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Turn a drum with nothing in it."""
    _k, load = _drawn(plan, chance)
    return replace(plan, loads=(*plan.loads, replace(_moved(load, 10_000), pieces=())))


def load_before_preparation(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Load a drum at minute 0, before anything can be prepared."""
    k, load = _drawn(plan, chance)
    return _with_load(plan, k, _moved(load, -load.load_start))


def quick_loading(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Start the programme before loading is over."""
    k, load = _drawn(plan, chance)
    return _with_load(plan, k, replace(load, prog_start=load.prog_start - 1))


def short_programme(_: Instance, plan: Plan, chance: Random) -> Plan:
    """End a programme early."""
    k, load = _drawn(plan, chance)
    return _with_load(plan, k, replace(load, prog_end=load.prog_end - 1))


def unload_while_running(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Open a drum before its programme is over."""
    k, load = _drawn(plan, chance)
    minutes = load.unload_start - load.prog_end + 1
    opened = replace(
        load, unload_start=load.unload_start - minutes, unload_end=load.unload_end - minutes
    )
    return _with_load(plan, k, opened)


def quick_unloading(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Unloading takes a minute less than it takes."""
    k, load = _drawn(plan, chance)
    return _with_load(plan, k, replace(load, unload_end=load.unload_end - 1))


def too_heavy(instance: Instance, plan: Plan, chance: Random) -> Plan | None:
    """Put two drums' contents into one."""
    weight = {piece.id: piece.weight for piece in instance.pieces}
    caps = {washer.id: washer.programmes for washer in instance.washers}
    pairs = [
        (k, j)
        for k, one in enumerate(plan.loads)
        for j, two in enumerate(plan.loads)
        if k != j
        and one.family == two.family
        and sum(weight[p] for p in one.pieces + two.pieces) > caps[one.washer][one.family].cap
    ]
    if not pairs:
        return None
    k, j = chance.choice(pairs)
    both = replace(plan.loads[k], pieces=plan.loads[k].pieces + plan.loads[j].pieces)
    less = _with_load(plan, k, both)
    return replace(less, loads=less.loads[:j] + less.loads[j + 1 :])


def wrong_family(_: Instance, plan: Plan, chance: Random) -> Plan | None:
    """Put a shell into a drum of liners, or the other way."""
    pairs = [
        (k, j)
        for k, one in enumerate(plan.loads)
        for j, two in enumerate(plan.loads)
        if one.family != two.family and len(two.pieces) > 1
    ]
    if not pairs:
        return None
    k, j = chance.choice(pairs)
    stray = plan.loads[j].pieces[0]
    less = _with_load(plan, j, replace(plan.loads[j], pieces=plan.loads[j].pieces[1:]))
    return _with_load(less, k, replace(less.loads[k], pieces=(*less.loads[k].pieces, stray)))


def family_without_programme(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Say a drum runs what the washer cannot."""
    k, load = _drawn(plan, chance)
    return _with_load(plan, k, replace(load, family="feathers"))


def by_hand_in_a_drum(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Gloves go into the washer."""
    k, load = _drawn(plan, chance)
    step = chance.choice(plan.hand)
    less = replace(plan, hand=tuple(one for one in plan.hand if one != step))
    return _with_load(less, k, replace(load, pieces=(*load.pieces, step.piece)))


def two_loads_in_one_washer(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Move a drum onto another one."""
    one, two = chance.sample(range(len(plan.loads)), 2)
    load = plan.loads[two]
    moved = _moved(load, plan.loads[one].load_start - load.load_start)
    return _with_load(plan, two, replace(moved, washer=plan.loads[one].washer))


def wrong_station(instance: Instance, plan: Plan, chance: Random) -> Plan:
    """Boots are scrubbed in the sink, gloves on the bench."""
    k = chance.randrange(len(plan.hand))
    step = plan.hand[k]
    other = next(one for one in instance.stations if one != step.station)
    moved = replace(step, station=other)
    return replace(plan, hand=(*plan.hand[:k], moved, *plan.hand[k + 1 :]))


def quick_by_hand(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Washing by hand takes a minute less than it takes."""
    k = chance.randrange(len(plan.hand))
    step = replace(plan.hand[k], end=plan.hand[k].end - 1)
    return replace(plan, hand=(*plan.hand[:k], step, *plan.hand[k + 1 :]))


def crowded_station(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Everything at one station happens at once."""
    start = chance.choice(plan.hand).start
    return replace(
        plan,
        hand=tuple(
            replace(step, start=start, end=start + step.end - step.start) for step in plan.hand
        ),
    )


def short_drying(instance: Instance, plan: Plan, chance: Random) -> Plan:
    """Take a piece off the rack a minute early."""
    minutes = {piece.id: piece.dry_rack for piece in instance.pieces}
    k = chance.choice([k for k, step in enumerate(plan.dry) if step.where == RACK])
    step = plan.dry[k]
    return _with_dry(plan, k, replace(step, end=step.start + minutes[step.piece] - 1))


def dry_before_wet(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Hang a piece before it is washed."""
    k = chance.randrange(len(plan.dry))
    return _with_dry(plan, k, replace(plan.dry[k], start=0))


def forbidden_place(instance: Instance, plan: Plan, chance: Random) -> Plan | None:
    """Put a piece that no cabinet may dry into one."""
    barred = {piece.id for piece in instance.pieces if piece.dry_cab is None}
    ks = [k for k, step in enumerate(plan.dry) if step.piece in barred]
    if not ks or not instance.cabinets:
        return None
    k = chance.choice(ks)
    return _with_dry(plan, k, replace(plan.dry[k], where=instance.cabinets[0].id))


def crowded_rack(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Everything hangs from one minute on, long enough for anything."""
    start = chance.choice(plan.dry).start + plan.makespan
    return replace(
        plan,
        dry=tuple(replace(step, start=start, end=start + 1000, where=RACK) for step in plan.dry),
    )


def _run(plan: Plan, chance: Random) -> list[int]:
    """Draw a cabinet run; the numbers of its drying entries."""
    boxed = [step for step in plan.dry if step.where != RACK]
    if not boxed:
        return []
    one = chance.choice(boxed)
    return [
        k for k, step in enumerate(plan.dry) if step.where == one.where and step.start == one.start
    ]


def opened_cabinet(_: Instance, plan: Plan, chance: Random) -> Plan | None:
    """One piece is taken out of a run later than the others."""
    run = _run(plan, chance)
    if len(run) < 2:
        return None
    step = plan.dry[run[0]]
    return _with_dry(plan, run[0], replace(step, end=step.end + 1))


def late_into_cabinet(_: Instance, plan: Plan, chance: Random) -> Plan | None:
    """One piece is put into a run that has begun."""
    run = _run(plan, chance)
    if len(run) < 2:
        return None
    step = plan.dry[run[0]]
    return _with_dry(plan, run[0], replace(step, start=step.start + 1, end=step.end + 1))


def overfull_cabinet(_: Instance, plan: Plan, chance: Random) -> Plan | None:
    """Everything that may goes into one run."""
    run = _run(plan, chance)
    if not run:
        return None
    one = plan.dry[run[0]]
    return replace(
        plan,
        dry=tuple(
            replace(step, where=one.where, start=one.start, end=one.end) for step in plan.dry
        ),
    )


def inspect_wet(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Inspect a piece a minute before it is dry."""
    ends = {step.piece: step.end for step in plan.dry}
    k = chance.randrange(len(plan.inspect))
    task = plan.inspect[k]
    start = max(ends[piece] for piece in task.pieces) - 1
    early = replace(task, start=start, end=start + task.end - task.start)
    return replace(plan, inspect=(*plan.inspect[:k], early, *plan.inspect[k + 1 :]))


def quick_inspection(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Make an inspection a minute shorter than it is."""
    k = chance.randrange(len(plan.inspect))
    task = replace(plan.inspect[k], end=plan.inspect[k].end - 1)
    return replace(plan, inspect=(*plan.inspect[:k], task, *plan.inspect[k + 1 :]))


def slow_preparation(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Make a preparation a minute longer than it is."""
    k = chance.randrange(len(plan.prep))
    task = replace(plan.prep[k], end=plan.prep[k].end + 1)
    return replace(plan, prep=(*plan.prep[:k], task, *plan.prep[k + 1 :]))


def too_few_helpers(_: Instance, plan: Plan, chance: Random) -> Plan:
    """All inspections happen at once, when everything is long dry."""
    start = plan.makespan + chance.randrange(100)
    return replace(
        plan,
        inspect=tuple(
            replace(task, start=start, end=start + task.end - task.start) for task in plan.inspect
        ),
    )


def flattering_ready(instance: Instance, plan: Plan, chance: Random) -> Plan:
    """Say a member is ready a minute early."""
    member = chance.choice(instance.members).id
    return replace(plan, ready={**plan.ready, member: plan.ready[member] - 1})


def forgotten_member(instance: Instance, plan: Plan, chance: Random) -> Plan:
    """Leave a member out of the ready times."""
    member = chance.choice(instance.members).id
    ready = {one: minute for one, minute in plan.ready.items() if one != member}
    return replace(plan, ready=ready)


def invented_member(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Somebody who is not there is said to be ready."""
    return replace(plan, ready={**plan.ready, MemberId("nobody"): chance.randrange(100)})


def flattering_objective(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Say the objective is less."""
    return replace(plan, objective=plan.objective - chance.randrange(1, 100))


def flattering_makespan(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Say the makespan is less."""
    return replace(plan, makespan=plan.makespan - chance.randrange(1, 100))


def spare_out_of_stock(instance: Instance, plan: Plan, chance: Random) -> Plan:
    """Hand out a loan piece that nobody has."""
    stocked = {(spare.type, spare.size) for spare in instance.spares}
    pieces = [piece.id for piece in instance.pieces if (piece.type, piece.size) not in stocked]
    return replace(plan, spares=(*plan.spares, chance.choice(pieces)))


def spare_twice(_: Instance, plan: Plan, chance: Random) -> Plan | None:
    """Cover one piece twice."""
    if not plan.spares:
        return None
    return replace(plan, spares=(*plan.spares, chance.choice(plan.spares)))


def unknown_piece(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Put what the instance does not have into a drum."""
    k, load = _drawn(plan, chance)
    return _with_load(plan, k, replace(load, pieces=(*load.pieces, ComponentId("stray"))))


def unknown_washer(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Run a load in a washer that is not there."""
    k, load = _drawn(plan, chance)
    return _with_load(plan, k, replace(load, washer=MachineId("the neighbour's")))


def unknown_place(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Dry a piece over the fence."""
    k = chance.randrange(len(plan.dry))
    return _with_dry(plan, k, replace(plan.dry[k], where=PlaceId("fence")))


def other_instance(_: Instance, plan: Plan, chance: Random) -> Plan:
    """Name the plan for another evening."""
    return replace(plan, instance=f"evening {chance.randrange(100)}")


# Each damage with the fault that must be among those found.
DAMAGES: tuple[tuple[Damage, str], ...] = (
    (drop_a_load, "wash.once"),
    (drop_preparation, "prep.once"),
    (drop_drying, "dry.once"),
    (drop_inspection, "inspect.once"),
    (drop_hand_wash, "wash.once"),
    (wash_twice, "wash.once"),
    (prepare_twice, "prep.once"),
    (empty_drum, "load.empty"),
    (load_before_preparation, "load.early"),
    (quick_loading, "load.loading"),
    (short_programme, "load.minutes"),
    (unload_while_running, "load.unload_early"),
    (quick_unloading, "load.unloading"),
    (too_heavy, "load.weight"),
    (wrong_family, "load.family"),
    (family_without_programme, "load.programme"),
    (by_hand_in_a_drum, "load.by_hand"),
    (two_loads_in_one_washer, "washer.busy"),
    (wrong_station, "hand.station"),
    (quick_by_hand, "hand.minutes"),
    (crowded_station, "number"),
    (short_drying, "dry.minutes"),
    (dry_before_wet, "dry.early"),
    (forbidden_place, "dry.place"),
    (crowded_rack, "number"),
    (opened_cabinet, "cabinet.ends"),
    (late_into_cabinet, "cabinet.opened"),
    (overfull_cabinet, "cabinet.units"),
    (inspect_wet, "inspect.early"),
    (quick_inspection, "inspect.minutes"),
    (slow_preparation, "prep.minutes"),
    (too_few_helpers, "number"),
    (flattering_ready, "said.ready"),
    (forgotten_member, "said.ready"),
    (invented_member, "said.ready"),
    (flattering_objective, "said.objective"),
    (flattering_makespan, "said.makespan"),
    (spare_out_of_stock, "spare.stock"),
    (spare_twice, "spare.twice"),
    (unknown_piece, "unknown"),
    (unknown_washer, "unknown"),
    (unknown_place, "unknown"),
    (other_instance, "said.instance"),
)
