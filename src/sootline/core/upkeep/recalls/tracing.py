"""Who owns, borrows and wears a component that a notice means, and who must be told?"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from sootline.core.basis import ComponentId, MemberId, PlaceId, SetId
from sootline.core.gear import Component, Custody
from sootline.core.rebuild import Built


@dataclass(frozen=True, kw_only=True)
class Whereabouts:
    """Where a component is, as recorded.

    Args:
        department: whose it is; "" is a department without a name.
        owner: whose it is there; None is a spare or nobody's.
        borrower: to which department it is lent.
        wearer: who has or wears it now, as far as recorded.
        inside: the component it is fitted into, when that is of another set.
        tell: departments and people who must hear of it, in this order, each once.
    """

    component: ComponentId
    department: str
    owner: MemberId | None
    borrower: PlaceId | None
    custody: Custody
    place: PlaceId | None
    wearer: MemberId | None
    inside: ComponentId | None
    in_set: SetId | None
    tell: tuple[str, ...]


def trace_whereabouts(
    component: Component,
    *,
    department: str,
    fitted: Mapping[ComponentId, Component],
) -> Whereabouts:
    """Say where one component is and who must hear of it.

    Args:
        department: the department whose record this is.
        fitted: into which shell of another set a component was fitted last (`fitted_into`).
    """
    state = component.state
    shell = fitted.get(component.id)
    ours = component.guest or department
    borrower = state.place if state.custody is Custody.LOAN else None
    wearer = state.holder or (_has(shell) if shell else None) or component.owner
    told = (ours, borrower, component.owner, wearer)
    return Whereabouts(
        component=component.id,
        department=ours,
        owner=component.owner,
        borrower=borrower,
        custody=state.custody,
        place=state.place,
        wearer=wearer,
        inside=shell.id if shell else None,
        in_set=shell.set if shell else component.set,
        tell=tuple(dict.fromkeys(str(one) for one in told if one)),
    )


def fitted_into(
    builds: Iterable[Built], components: Iterable[Component]
) -> dict[ComponentId, Component]:
    """Return, for each component fitted with one of another set, that other component.

    A later build counts over an earlier one. The other is the first part of the build, which is
    how builds are written down: shell first.
    """
    known = {component.id: component for component in components}
    found: dict[ComponentId, Component] = {}
    for built in builds:
        parts = [known[part] for part in built.parts if part in known]
        for part in parts:
            found.pop(part.id, None)
            if part.set != parts[0].set:
                found[part.id] = parts[0]
    return found


def _has(component: Component) -> MemberId | None:
    return component.state.holder or component.owner
