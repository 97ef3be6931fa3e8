"""What was every component exposed to, how well is that known, and on what ground?"""

import datetime as dt
from collections import defaultdict
from collections.abc import Iterator, Sequence

from sootline.core.basis import CallId
from sootline.core.exposure.calls import Call
from sootline.core.exposure.grades import Exposure
from sootline.core.exposure.layers import Layers, find_layers, soak_through
from sootline.core.exposure.observed import Grading, from_people, from_remarks, is_denied
from sootline.core.exposure.smoke import AIR_REQUIRED, trigger
from sootline.core.exposure.wearing import Wearing, find_wearings
from sootline.core.gear.components import Component
from sootline.core.rulebook.contaminants import ContaminantRule, Knowledge
from sootline.core.rulebook.rules import Rulebook

_HELD = frozenset((Knowledge.KNOWN, Knowledge.SUSPECTED))


def grade_exposure(
    *,
    components: Sequence[Component],
    calls: Sequence[Call],
    rulebook: Rulebook,
    contaminants: Sequence[ContaminantRule],
    now: dt.datetime | None = None,
) -> tuple[Exposure, ...]:
    """List every reason to think that something is, or is not, on a component.

    The order of people and remarks within a call changes no grade. Training burns count as calls,
    guests' gear as gear.

    Args:
        now: surveys signed later are not known yet; None knows all of them.
    """
    wearings = find_wearings(components, calls)
    return grade_wearings(
        wearings=wearings,
        components=components,
        rulebook=rulebook,
        contaminants=contaminants,
        now=now,
    )


def grade_wearings(
    *,
    wearings: Sequence[Wearing],
    components: Sequence[Component],
    rulebook: Rulebook,
    contaminants: Sequence[ContaminantRule],
    now: dt.datetime | None,
) -> tuple[Exposure, ...]:
    """Grade wearings that are already listed; see grade_exposure."""
    grading = Grading(
        wet=frozenset(rule.id for rule in contaminants if rule.disinfect),
        firm=frozenset(rule.id for rule in contaminants if _stands_firm(rule)),
        inside=trigger(rulebook, AIR_REQUIRED),
        now=now,
    )
    layers = find_layers(components)
    by_call: dict[CallId, list[Wearing]] = defaultdict(list)
    for wearing in wearings:
        by_call[wearing.call.id].append(wearing)
    return tuple(
        exposure for at_call in by_call.values() for exposure in _at_call(at_call, layers, grading)
    )


def _stands_firm(rule: ContaminantRule) -> bool:
    """Whether only a decider can rule on it: it holds, and a look does not show it."""
    return not _HELD.isdisjoint(rule.holds_when) and not rule.disinfect


def _at_call(at_call: list[Wearing], layers: Layers, grading: Grading) -> Iterator[Exposure]:
    for wearing in at_call:
        yield from from_people(wearing, grading)
        yield from from_remarks(wearing)
    remarks = {wearing.component.id: wearing.remarks for wearing in at_call}
    for exposure in soak_through(at_call, layers, grading.wet):
        looked_at = remarks.get(exposure.component, ())
        asked = exposure.knowledge is Knowledge.SUSPECTED
        if not (asked and is_denied(exposure.contaminant, looked_at)):
            yield exposure
