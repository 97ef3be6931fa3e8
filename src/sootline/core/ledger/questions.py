"""What do entries that do not fit together leave to ask, without blame?"""

from collections.abc import Iterable, Iterator, Sequence

from sootline.core.basis import (
    Bearing,
    Confidence,
    EditionId,
    Finding,
    Ground,
    ItemId,
    MemberId,
    RuleId,
    finding,
)
from sootline.core.gear.state import State
from sootline.core.ledger.correcting import Settled
from sootline.core.ledger.facts import Fact
from sootline.core.ledger.items import name_of
from sootline.core.ledger.kinds import EntryKind
from sootline.core.ledger.lives import Effect, Line, Question
from sootline.core.ledger.walking import Walk


def ask(item: ItemId, state: State, history: Sequence[Line], walked: Walk) -> Iterator[Question]:
    """Ask at most one question about what does not fit, and one about what cannot be read.

    Args:
        state: what counts until somebody answers.
    """
    answered = _answered(history)
    unsure = {one.fact.seq for run in walked.unsure for one in run}
    odd = [
        line
        for line in history
        if line.seq not in answered
        and (
            line.effect is Effect.REFUSED
            or (line.seq in unsure and line.effect is not Effect.NOTED)
        )
    ]
    if odd:
        yield _contradiction(item, state, odd, walked)
    unread = [
        line.settled.fact
        for line in history
        if _unreadable(line.settled.fact) and line.seq not in answered
    ]
    if unread:
        yield _unread(item, unread)


def _unreadable(fact: Fact) -> bool:
    return not fact.readable or (fact.kind is EntryKind.FOREIGN and fact.erased)


def _answered(history: Iterable[Line]) -> set[int]:
    """Return the entries that somebody has answered for by name."""
    found: set[int] = set()
    for line in history:
        fact = line.settled.fact
        listed = fact.payload.get("entries")
        if (
            fact.kind is EntryKind.ANSWERED
            and line.effect is not Effect.WITHDRAWN
            and isinstance(listed, list)
        ):
            found.update(seq for seq in listed if isinstance(seq, int))
    return found


def _contradiction(item: ItemId, state: State, odd: Sequence[Line], walked: Walk) -> Question:
    concerned = _concerned(odd, walked)
    people = tuple(dict.fromkeys(one.fact.actor for one in concerned))
    if state.open_holds:
        message = "ledger.ask.disagree_held" if len(people) > 1 else "ledger.ask.unfitting_held"
    else:
        message = "ledger.ask.disagree" if len(people) > 1 else "ledger.ask.unfitting"
    facts = [line.settled.fact for line in odd]
    found = finding(
        Bearing.ASKS,
        message,
        _ground(facts),
        item=name_of(item),
        people=", ".join(people),
        kinds=", ".join(dict.fromkeys(fact.kind.value for fact in facts)),
        first=min(one.fact.earliest for one in concerned).isoformat(timespec="minutes"),
        last=max(one.fact.latest for one in concerned).isoformat(timespec="minutes"),
        stage=state.stage,
        causes=", ".join(hold.cause for hold in state.open_holds),
        deciders=", ".join(dict.fromkeys(hold.decider for hold in state.open_holds)),
    )
    return Question(
        item=item, finding=found, entries=tuple(fact.seq for fact in facts), people=people
    )


def _concerned(odd: Sequence[Line], walked: Walk) -> list[Settled]:
    """Return the odd entries and those they do not fit with, in the order of their times."""
    found: dict[int, Settled] = {}
    for line in odd:
        found[line.seq] = line.settled
        if line.seq in walked.standing:
            standing = walked.standing[line.seq]
            found[standing.fact.seq] = standing
        for run in walked.unsure:
            if line.settled in run:
                found.update((one.fact.seq, one) for one in run)
    return sorted(found.values(), key=lambda one: (one.fact.earliest, one.fact.seq))


def _unread(item: ItemId, facts: Sequence[Fact]) -> Question:
    people: tuple[MemberId, ...] = tuple(dict.fromkeys(fact.actor for fact in facts))
    origins = ", ".join(dict.fromkeys(fact.origin for fact in facts))
    found: Finding = finding(
        Bearing.ASKS, "ledger.ask.unreadable", _ground(facts), item=name_of(item), origins=origins
    )
    return Question(
        item=item, finding=found, entries=tuple(fact.seq for fact in facts), people=people
    )


def _ground(facts: Sequence[Fact]) -> Ground:
    return Ground(
        rule=RuleId("ledger.fold"),
        edition=EditionId("statement"),
        source=", ".join(str(fact.seq) for fact in facts),
        confidence=Confidence.STATED,
    )
