"""What came through a shell to the layers beneath it?

What reached the skin went through every layer; where nobody can say, it is suspected there.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from sootline.core.basis import (
    Bearing,
    ComponentId,
    Confidence,
    ContaminantId,
    EditionId,
    Ground,
    MemberId,
    RuleId,
    SetId,
)
from sootline.core.exposure.calls import Answer, Call, Remark
from sootline.core.exposure.grades import Exposure, stated, tell
from sootline.core.exposure.wearing import Wearing
from sootline.core.exposure.zones import closest_zone
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import Layer
from sootline.core.rulebook.contaminants import Knowledge

_BENEATH_SHELL = frozenset((Layer.LINER, Layer.PAD))
_UNTIL_SAID = Ground(
    rule=RuleId("layers.beneath"),
    edition=EditionId("practice/exposure"),
    source="common practice, no published source",
    confidence=Confidence.PRACTICE,
)


@dataclass(frozen=True, kw_only=True)
class Layers:
    """Every layer that lies beneath a shell, by its set and by its owner."""

    by_set: Mapping[SetId | None, tuple[Component, ...]]
    by_owner: Mapping[MemberId | None, tuple[Component, ...]]

    def of(self, shell: Component) -> list[Component]:
        """List the layers of a shell's garment: of its set or, without a set, of its owner."""
        near = (*self.by_set.get(shell.set, ()), *self.by_owner.get(shell.owner, ()))
        once = {other.id: other for other in near}
        return [
            other
            for other in once.values()
            if _beneath(other, shell) and _belong_together(other, shell)
        ]


def find_layers(components: Iterable[Component]) -> Layers:
    """Sort out the layers beneath shells, once for all calls."""
    by_set: dict[SetId | None, list[Component]] = defaultdict(list)
    by_owner: dict[MemberId | None, list[Component]] = defaultdict(list)
    for component in components:
        if find_kind(component.kind).layer in _BENEATH_SHELL:
            by_set[component.set].append(component)
            by_owner[component.owner].append(component)
    return Layers(
        by_set={key: tuple(found) for key, found in by_set.items() if key is not None},
        by_owner={key: tuple(found) for key, found in by_owner.items() if key is not None},
    )


def soak_through(
    wearings: Sequence[Wearing], layers: Layers, wet: frozenset[ContaminantId]
) -> Iterator[Exposure]:
    """List what came, or may have come, through the shells of one call.

    Args:
        wearings: everything at that call.
        layers: all there are; a liner nobody listed as worn may lie beneath too.
        wet: contaminants that soak through cloth (those that ask for disinfection).
    """
    worn = {wearing.component.id: wearing.component for wearing in wearings}
    for wearing in wearings:
        if find_kind(wearing.component.kind).layer is not Layer.SHELL:
            continue
        soaking = [remark for remark in wearing.remarks if _soaks(remark, wet)]
        if soaking:
            beneath = _worn_beneath(wearing, worn) or layers.of(wearing.component)
            for remark in soaking:
                yield from (_through(wearing, remark, below) for below in beneath)


def _soaks(remark: Remark, wet: frozenset[ContaminantId]) -> bool:
    on_it = remark.knowledge in (Knowledge.KNOWN, Knowledge.SUSPECTED)
    return remark.contaminant in wet and on_it and remark.reached_skin is not Answer.NO


def _worn_beneath(wearing: Wearing, worn: Mapping[ComponentId, Component]) -> list[Component]:
    """List the layers of that garment that its wearer named as worn, whoever's they are."""
    named = dict.fromkeys(one for person in wearing.people for one in person.worn or ())
    return [worn[one] for one in named if one in worn and _beneath(worn[one], wearing.component)]


def _beneath(other: Component, shell: Component) -> bool:
    kind = find_kind(other.kind)
    return kind.layer in _BENEATH_SHELL and kind.element is find_kind(shell.kind).element


def _belong_together(one: Component, other: Component) -> bool:
    if one.set and other.set:
        return one.set == other.set
    return one.owner is not None and one.owner == other.owner


def _through(wearing: Wearing, remark: Remark, below: Component) -> Exposure:
    """Put on a layer what soaked through, as well known as on the shell if it reached the skin."""
    reached = remark.reached_skin is Answer.YES
    call: Call = wearing.call
    contaminant = ContaminantId(str(remark.contaminant))
    zone = closest_zone(wearing.people)
    return Exposure(
        component=below.id,
        contaminant=contaminant,
        knowledge=remark.knowledge if reached else Knowledge.SUSPECTED,
        call=call.id,
        zone=zone,
        reached_skin=remark.reached_skin,
        finding=tell(
            Bearing.REQUIRES if reached else Bearing.ASKS,
            "exposure.beneath.reached" if reached else "exposure.beneath.unknown",
            stated("remark", remark.said_by) if reached else _UNTIL_SAID,
            call,
            contaminant=contaminant,
            component=wearing.component.id,
            said_by=remark.said_by,
        ),
    )
