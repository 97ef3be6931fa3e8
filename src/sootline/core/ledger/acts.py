"""Which entries make up one act over several things, of which all count or none?"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    DeviceId,
    Fault,
    ItemId,
    MemberId,
    MessageId,
)
from sootline.core.ledger.drafts import Draft, write_payload
from sootline.core.ledger.items import ItemKind, component, item, kind_of
from sootline.core.ledger.kinds import EntryKind, Established
from sootline.core.ledger.times import Occurred


@dataclass(frozen=True, kw_only=True)
class Act:
    """Who does something, when, and where it is written down.

    Args:
        idem: the key of the whole act; each of its entries has a key made from it.
        position: where the record ended on the page it was written on, of an act that came later
            than it was done; entries about components say it.
    """

    idem: str
    occurred: Occurred
    device: DeviceId
    actor: MemberId
    established: Established
    position: str | None = None

    def entry(self, kind: EntryKind, thing: ItemId, payload: Mapping[str, object]) -> Draft:
        """Return the draft of one entry of this act."""
        seen = self.position if kind_of(thing) is ItemKind.COMPONENT else None
        return Draft(
            idem=f"{self.idem}/{thing}",
            item=thing,
            kind=kind,
            occurred=self.occurred,
            device=self.device,
            actor=self.actor,
            established=self.established,
            payload=write_payload(payload, position=seen),
        )


def exchange(
    act: Act, first: tuple[ComponentId, MemberId], second: tuple[ComponentId, MemberId]
) -> tuple[Draft, Draft]:
    """Let two members swap two components in one step.

    Args:
        first, second: each component with the member who has it afterwards.

    Raises:
        BadInputError: it is the same component, or the same member.
    """
    if first[0] == second[0] or first[1] == second[1]:
        raise BadInputError([Fault(place="with", message=MessageId("ledger.exchange.one"))])
    return (
        _swapped(act, first, second[0]),
        _swapped(act, second, first[0]),
    )


def _swapped(act: Act, mine: tuple[ComponentId, MemberId], other: ComponentId) -> Draft:
    payload = {"holder": mine[1], "with": other}
    return act.entry(EntryKind.EXCHANGED, component(mine[0]), payload)


def lock_member(
    act: Act, member: MemberId, pieces: Iterable[ComponentId], *, by: str, reason: str
) -> tuple[Draft, ...]:
    """Secure everything of a member, unwashed, after a death or a serious injury.

    Args:
        pieces: every component the member has, or wore on that day.
        by: who secures it.
    """
    listed = tuple(dict.fromkeys(pieces))
    said = {"by": by, "reason": reason}
    whose = item(ItemKind.MEMBER, member)
    return (
        act.entry(EntryKind.MEMBER_LOCKED, whose, {**said, "pieces": listed}),
        *(
            act.entry(EntryKind.EVIDENCE_TAKEN, component(piece), {**said, "member": member})
            for piece in listed
        ),
    )


def start_load(
    act: Act,
    load: str,
    pieces: Iterable[ComponentId],
    *,
    machine: str,
    by: str,
    level: str | None = None,
) -> tuple[Draft, ...]:
    """Start a load: one entry for it, and one for each component put in.

    Each component has an entry of its own, so that its export shows nobody else's. A load that is
    started again after it stopped names all its pieces again.

    Args:
        load: a name that no other load ever had.
        level: how thorough the programme is, where it is known.
    """
    started = {"machine": machine, "by": by} | ({"level": level} if level else {})
    put = {"load": load, "place": machine, "by": by}
    return (
        act.entry(EntryKind.LOAD_STARTED, item(ItemKind.LOAD, load), started),
        *(
            act.entry(EntryKind.PUT_IN_WASHER, component(piece), put)
            for piece in dict.fromkeys(pieces)
        ),
    )
