"""Who wore which component at which call, and what was noticed on it?"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from sootline.core.basis import ComponentId, MemberId
from sootline.core.exposure.calls import Call, Presence, Remark
from sootline.core.gear.components import Component


@dataclass(frozen=True, kw_only=True)
class Wearing:
    """One component at one call.

    Args:
        people: everybody said to have worn it, or whose it is; empty when it is only remarked on.
        remarks: what was noticed on the component itself.
    """

    component: Component
    call: Call
    people: tuple[Presence, ...] = ()
    remarks: tuple[Remark, ...] = ()


def find_wearings(components: Sequence[Component], calls: Iterable[Call]) -> tuple[Wearing, ...]:
    """List every component that was at a call, call by call.

    A person who names nothing worn counts as having worn everything of their own.
    """
    by_id = {component.id: component for component in components}
    owned: dict[MemberId, list[ComponentId]] = defaultdict(list)
    for component in components:
        if component.owner is not None:
            owned[component.owner].append(component.id)
    return tuple(wearing for call in calls for wearing in _at_call(call, by_id, owned))


def _at_call(
    call: Call,
    by_id: dict[ComponentId, Component],
    owned: dict[MemberId, list[ComponentId]],
) -> Iterator[Wearing]:
    people: dict[ComponentId, list[Presence]] = defaultdict(list)
    for presence in call.people:
        own = owned.get(presence.member, [])
        for worn in own if presence.worn is None else presence.worn:
            people[worn].append(presence)
    remarks: dict[ComponentId, list[Remark]] = defaultdict(list)
    for remark in call.remarks:
        remarks[remark.component].append(remark)
    for worn in dict.fromkeys((*people, *remarks)):
        component = by_id.get(worn)
        if component is not None:
            yield Wearing(
                component=component,
                call=call,
                people=tuple(sorted(people.get(worn, ()), key=_by_member)),
                remarks=tuple(sorted(remarks.get(worn, ()), key=repr)),
            )


def _by_member(presence: Presence) -> tuple[str, str]:
    """Order people so that the order in which they were entered changes nothing."""
    return presence.member, repr(presence)
