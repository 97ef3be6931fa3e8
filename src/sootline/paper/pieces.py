"""How are pieces named on a sheet?"""

from collections import defaultdict
from collections.abc import Iterable

from sootline.core.gear import Component
from sootline.paper.engine import Facts
from sootline.paper.speaking import Said, Speaker, joined


def called(component: Component, speaker: Speaker) -> Said:
    """Name a piece by its kind and its number."""
    return joined([speaker.name("kind", component.kind), [component.id]], " ")


def by_owner(components: Iterable[Component], speaker: Speaker) -> list[Facts]:
    """Return pieces row by row: whose, which, and where they are if that is on record."""
    rows: dict[tuple[str, str], list[Component]] = defaultdict(list)
    for component in components:
        where = component.state.holder or component.state.place or ""
        rows[component.owner or "", where].append(component)
    return [
        {
            "owner": owner,
            "pieces": joined([called(component, speaker) for component in there]),
            "where": where,
        }
        for (owner, where), there in rows.items()
    ]
