"""Which component is at the wash room's door, of which kind, with which decision?"""

from dataclasses import dataclass

from sootline.core.basis import ComponentId, Confidence, EditionId, Ground, Quantity, RuleId
from sootline.core.care.decisions import Decision
from sootline.core.gear.components import Component
from sootline.core.gear.kinds import Kind
from sootline.core.gear.sources import kind_traits


@dataclass(frozen=True, kw_only=True)
class Goods:
    """One component with everything that decides on its company."""

    component: Component
    kind: Kind
    decision: Decision

    @property
    def id(self) -> ComponentId:
        """Which component it is."""
        return self.component.id

    @property
    def traits(self) -> frozenset[str]:
        """What a rule may be confined to: the kind, element, layer, and traits of both."""
        return kind_traits(self.kind, self.component.traits)

    @property
    def set_layer(self) -> str:
        """Whose set it belongs to, or itself where nobody knows."""
        return self.component.set or self.component.owner or self.component.id

    @property
    def mass(self) -> Quantity | None:
        """What it counts in a drum: weighed, otherwise the heaviest of its kind."""
        if self.component.mass is not None:
            return self.component.mass
        return self.kind.mass[1] if self.kind.mass else None


def entered(rule: str) -> Ground:
    """Return the ground of a fact about the wash room as the department entered it."""
    return Ground(
        rule=RuleId(rule),
        edition=EditionId("statement"),
        source="the wash room as entered",
        confidence=Confidence.STATED,
    )


def practice(rule: str) -> Ground:
    """Return the ground of a habit of the trade that no text publishes."""
    return Ground(
        rule=RuleId(rule),
        edition=EditionId("practice/laundry"),
        source="common practice, no published source",
        confidence=Confidence.PRACTICE,
    )
