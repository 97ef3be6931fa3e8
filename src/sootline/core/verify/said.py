"""Are the said ready times and sums the true ones, and is what was begun kept?"""

from collections.abc import Iterator
from dataclasses import replace

from sootline.core.basis import Fault
from sootline.core.verify.book import Book, fault
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import Drying, HandWash, Load, Task

_Step = Task | HandWash | Drying


def said(instance: Instance, book: Book, plan: Plan) -> Iterator[Fault]:
    """Check name, ready times, objective and makespan against the steps."""
    if plan.instance != instance.name:
        yield fault("instance", "said.instance", value=plan.instance, limit=instance.name)
    covered = set(plan.spares)
    ready = {member.id: member.release for member in instance.members}
    for piece in instance.pieces:
        if piece.id not in covered:
            ready[piece.member] = max(ready[piece.member], book.done(piece.id))
    for member in ready.keys() | plan.ready.keys():
        if plan.ready.get(member) != ready.get(member):
            values = {"value": plan.ready.get(member), "limit": ready.get(member)}
            yield fault(f"ready.{member}", "said.ready", **values)
    objective = sum(member.priority * ready[member.id] for member in instance.members)
    if plan.objective != objective:
        yield fault("objective", "said.objective", value=plan.objective, limit=objective)
    makespan = max((book.done(piece.id) for piece in instance.pieces), default=0)
    if plan.makespan != makespan:
        yield fault("makespan", "said.makespan", value=plan.makespan, limit=makespan)


def begun(instance: Instance, plan: Plan) -> Iterator[Fault]:
    """Check that begun steps stand as they are and nothing new starts in the past."""
    facts = instance.begun
    kinds: list[tuple[str, set[_Step], set[_Step]]] = [
        ("prep", set(facts.prep), set(plan.prep)),
        ("hand", set(facts.hand), set(plan.hand)),
        ("dry", set(facts.dry), set(plan.dry)),
        ("inspect", set(facts.inspect), set(plan.inspect)),
    ]
    for name, was, planned in kinds:
        for step in was - planned:
            yield fault(f"begun.{name}", "begun.changed", value=step.start)
        for step in planned - was:
            if step.start < facts.minute:
                yield fault(f"{name}@{step.start}", "begun.past", limit=facts.minute)
    yield from _begun_loads(instance, plan)
    for piece in set(facts.spares) - set(plan.spares):
        yield fault("begun.spares", "begun.changed", value=piece)


def _begun_loads(instance: Instance, plan: Plan) -> Iterator[Fault]:
    facts = instance.begun
    was = {_fixed(load, facts.minute) for load in facts.loads}
    planned = {_fixed(load, facts.minute) for load in plan.loads}
    for load in was - planned:
        yield fault("begun.loads", "begun.changed", value=load.load_start)
    for load in planned - was:
        if load.load_start < facts.minute:
            yield fault(f"loads@{load.load_start}", "begun.past", limit=facts.minute)


def _fixed(load: Load, minute: int) -> Load:
    """Leave out what is still open: an unloading at or after the minute."""
    if load.unload_start < minute:
        return load
    return replace(load, unload_start=minute, unload_end=minute)
