"""What would change if the department adopted another edition, and for which of its pieces?"""

from collections.abc import Sequence
from dataclasses import dataclass

from sootline.core.basis import EditionId
from sootline.core.gear import Component, find_kind
from sootline.core.gear.sources import kind_traits
from sootline.core.rulebook import Difference, compare_editions
from sootline.tasks.ports import Rules
from sootline.tasks.show_rules import EditionListed, summarise


@dataclass(frozen=True, kw_only=True)
class RulesCompared:
    """Two editions and every topic on which they differ.

    Args:
        pieces: how many components were looked at.
    """

    before: EditionListed
    after: EditionListed
    differences: tuple[Difference, ...]
    pieces: int


def compare_rules(
    rules: Rules, before: EditionId, after: EditionId, components: Sequence[Component] = ()
) -> RulesCompared:
    """Compare two editions.

    Args:
        components: the department's pieces; each difference names those it reaches.

    Raises:
        BadInputError: no such edition, or a component of an unknown kind.
    """
    old, new = rules.edition(before), rules.edition(after)
    pieces = [
        (component.id, kind_traits(find_kind(component.kind), component.traits))
        for component in components
    ]
    found = compare_editions(old, new, pieces)
    return RulesCompared(
        before=summarise(old), after=summarise(new), differences=found, pieces=len(pieces)
    )
