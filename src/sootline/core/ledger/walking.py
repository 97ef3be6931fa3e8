"""Which state is a component in after its facts, in whatever order they may have happened?"""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from sootline.core.basis import Finding
from sootline.core.gear.events import Refusal
from sootline.core.gear.state import CareStage, State
from sootline.core.gear.transitions import apply
from sootline.core.ledger.correcting import Amended, Settled
from sootline.core.ledger.events import OF_A_LOAD, START, event_of, outcomes, registered_state
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.lives import Effect
from sootline.core.ledger.ordering import certainly_before, clusters
from sootline.core.ledger.safest import safest, with_holds

# More orders than this are not followed: everything the facts could do counts instead.
MOST_NODES = 64
MOST_STEPS = 4_000


@dataclass(frozen=True, slots=True)
class Node:
    """Where a component may be: its state, the load it is in, whether it was registered."""

    state: State
    load: str | None = None
    registered: bool = False


@dataclass(slots=True)
class Walk:
    """What came out of one component's facts.

    Args:
        effects: what each fact did, by its place in the record, with the reason of a refusal.
        standing: who had written the fact that was in force when one was refused, by its place.
        unsure: runs of facts whose order makes a difference.
        held: the facts of wear that fell on a hold.
    """

    node: Node
    effects: dict[int, tuple[Effect, Finding | None]] = field(default_factory=dict)
    standing: dict[int, Settled] = field(default_factory=dict)
    unsure: list[tuple[Settled, ...]] = field(default_factory=list)
    held: set[int] = field(default_factory=set)
    last: Settled | None = None


def walk(ordered: Sequence[Settled], *, as_of: dt.datetime | None = None) -> Walk:
    """Apply a component's facts to its state.

    Args:
        ordered: as `in_order` sorts them, none withdrawn; facts of its loads among them.
        as_of: facts that may have come later than this are taken as maybe.
    """
    done = Walk(node=Node(START))
    for cluster in clusters(ordered):
        first = cluster[0]
        if len(cluster) == 1 and not _maybe(first, as_of):
            _step(done, first)
        elif not any(_maybe(one, as_of) for one in cluster) and _is_chain(cluster):
            for one in cluster:
                _step(done, one)
        else:
            _every_order(done, cluster, as_of)
    return done


def step(node: Node, settled: Settled) -> tuple[Node, Effect, Finding | None]:
    """Apply one fact: where the component is afterwards, and what the fact did."""
    fact = settled.fact
    if fact.kind is EntryKind.REGISTERED:
        return _registered(node, settled)
    event = event_of(settled)
    if event is None:
        return node, Effect.NOTED, None
    if fact.kind in OF_A_LOAD and not (
        node.state.stage is CareStage.IN_WASHER and fact.item == f"load:{node.load}"
    ):
        return node, Effect.NOTED, None
    after = apply(node.state, event)
    if isinstance(after, Refusal):
        # That it is held already is no contradiction.
        again = after.reason.message == "gear.refused.hold_already"
        return node, Effect.NOTED if again else Effect.REFUSED, after.reason
    load = node.load
    if fact.kind is EntryKind.PUT_IN_WASHER:
        load = fact.text("load")
    elif after.stage is not CareStage.IN_WASHER:
        load = None
    return Node(after, load, node.registered), Effect.TOOK, None


def _registered(node: Node, settled: Settled) -> tuple[Node, Effect, Finding | None]:
    """Take a first registration's word for the state; holds stay, and a second one is a note."""
    if node.registered:
        return node, Effect.NOTED, None
    state = with_holds(registered_state(settled.fact), node.state.holds)
    return Node(state, None, registered=True), Effect.TOOK, None


def _step(done: Walk, settled: Settled) -> None:
    seq = settled.fact.seq
    if settled.fact.kind is EntryKind.WORN and done.node.state.open_holds:
        done.held.add(seq)
    done.node, effect, reason = step(done.node, settled)
    done.effects[seq] = (effect, reason)
    if effect is Effect.TOOK:
        done.last = settled
    elif effect is Effect.REFUSED and done.last is not None:
        done.standing[seq] = done.last


def _maybe(settled: Settled, as_of: dt.datetime | None) -> bool:
    """Whether a fact may or may not have happened by then."""
    doubtful = settled.amended is Amended.DOUBTFUL
    return doubtful or (as_of is not None and settled.fact.latest > as_of)


def _is_chain(cluster: Sequence[Settled]) -> bool:
    return all(certainly_before(one, other) for one, other in pairwise(cluster))


def _every_order(done: Walk, cluster: Sequence[Settled], as_of: dt.datetime | None) -> None:
    """Follow every order the spans allow, and end in the state that asks for the most care."""
    orders = _Orders(cluster, as_of, done.held)
    nodes = orders.follow(done.node)
    states = [node.state for node in nodes]
    loads = {node.load for node in nodes}
    registered = any(node.registered for node in nodes)
    load = loads.pop() if len(loads) == 1 else None
    done.node = Node(safest(states), load, registered)
    for settled in cluster:
        done.effects[settled.fact.seq] = orders.effect(settled)
        done.standing[settled.fact.seq] = cluster[0] if done.last is None else done.last
    if len(set(states)) > 1:
        done.unsure.append(tuple(cluster))
    done.last = cluster[-1]


class _Orders:
    """All orders of one run of facts, followed together: what came before, not how, counts."""

    def __init__(
        self, cluster: Sequence[Settled], as_of: dt.datetime | None, held: set[int]
    ) -> None:
        self._cluster = cluster
        self._maybe = [_maybe(one, as_of) for one in cluster]
        self._before = [self._earlier(at) for at in range(len(cluster))]
        self._seen: dict[int, dict[Effect, Finding | None]] = {}
        self._held = held

    def _earlier(self, at: int) -> int:
        """Return, as a set of bits, which facts certainly came before one."""
        mine = self._cluster[at]
        return sum(
            1 << other
            for other, settled in enumerate(self._cluster)
            if other != at and certainly_before(settled, mine)
        )

    def follow(self, start: Node) -> set[Node]:
        """Return every node the component may be at after all of them."""
        frontier: dict[int, set[Node]] = {0: {start}}
        steps = 0
        for _ in self._cluster:
            reached = sum(map(len, frontier.values()))
            steps += reached
            if reached > MOST_NODES or steps > MOST_STEPS:
                return self._give_up(start)
            frontier = self._further(frontier)
        (nodes,) = frontier.values()
        return nodes

    def _further(self, frontier: dict[int, set[Node]]) -> dict[int, set[Node]]:
        after: dict[int, set[Node]] = {}
        for gone, nodes in frontier.items():
            for at in range(len(self._cluster)):
                bit = 1 << at
                if gone & bit or self._before[at] & ~gone:
                    continue
                reached = after.setdefault(gone | bit, set())
                reached.update(self._step(node, at) for node in nodes)
                if self._maybe[at]:
                    reached.update(nodes)
        return after

    def _give_up(self, start: Node) -> set[Node]:
        """Take everything that any of the facts could do, in whatever order."""
        states = [start.state]
        opens = bool(start.state.open_holds)
        for settled in self._cluster:
            states += outcomes(start.state, settled)
            opens = opens or settled.fact.kind is EntryKind.HOLD_OPENED
        for settled in self._cluster:
            noted = event_of(settled) is None and settled.fact.kind is not EntryKind.REGISTERED
            effect = Effect.NOTED if noted else Effect.DEPENDS
            self._seen[settled.fact.seq] = {effect: None}
            if opens and settled.fact.kind is EntryKind.WORN:
                self._held.add(settled.fact.seq)
        return {Node(state, None, start.registered) for state in states}

    def _step(self, node: Node, at: int) -> Node:
        settled = self._cluster[at]
        if settled.fact.kind is EntryKind.WORN and node.state.open_holds:
            self._held.add(settled.fact.seq)
        after, effect, reason = step(node, settled)
        self._seen.setdefault(settled.fact.seq, {})[effect] = reason
        return after

    def effect(self, settled: Settled) -> tuple[Effect, Finding | None]:
        """Say what a fact did, if it did the same in every order."""
        effects = self._seen[settled.fact.seq]
        if settled.amended is Amended.DOUBTFUL:
            effects[Effect.DEPENDS] = None
        if len(effects) == 1:
            ((effect, reason),) = effects.items()
            return effect, reason
        reasons: Iterable[Finding | None] = effects.values()
        return Effect.DEPENDS, next((reason for reason in reasons if reason is not None), None)
