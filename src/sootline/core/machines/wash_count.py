"""How often was a component washed, beside what is published about many washes?

The count is shown and nothing follows from it: no strength, no life, no retirement. It is never a
reason to leave out a wash that is needed.
"""

from collections.abc import Iterator

from sootline.core.basis import Bearing, ComponentId, Finding, finding
from sootline.core.machines.grounds import as_entered
from sootline.core.rulebook import Rulebook, voices

MARKER = "wash.marker_cycles"


def mark_washes(
    component: ComponentId, count: int | None, rulebook: Rulebook
) -> tuple[Finding, ...]:
    """Put a wash count beside the published marker, and beside the department's own figure.

    Args:
        count: washes recorded; None is not known.
    """
    if count is None:
        ground = as_entered("component.wash_count")
        return (finding(Bearing.ASKS, "machine.washes.unknown", ground, component=component),)
    return tuple(_beside(component, count, rulebook))


def _beside(component: ComponentId, count: int, rulebook: Rulebook) -> Iterator[Finding]:
    for spoken in voices(rulebook, MARKER, frozenset()):
        marker = spoken.rule.value
        if not isinstance(marker, int):
            continue
        own = spoken.edition == rulebook.policy.id
        reached = "reached" if count >= marker else "below"
        message = f"machine.washes.policy_{reached}" if own else f"machine.washes.{reached}"
        values = {"component": component, "count": count, "marker": marker}
        bearing = Bearing.WARNS if own and count >= marker else Bearing.NOTES
        yield finding(bearing, message, spoken.ground, **values)
