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
    component: ComponentId, count: int | None, rulebook: Rulebook, *, recorded: int = 0
) -> tuple[Finding, ...]:
    """Put a wash count beside the published marker, and beside the department's own figure.

    Args:
        count: washes so far; None is not known.
        recorded: washes that somebody wrote down, which it had at the least.
    """
    if count is None and not recorded:
        ground = as_entered("component.wash_count")
        return (finding(Bearing.ASKS, "machine.washes.unknown", ground, component=component),)
    return tuple(_beside(component, count, recorded, rulebook))


def _beside(
    component: ComponentId, count: int | None, recorded: int, rulebook: Rulebook
) -> Iterator[Finding]:
    least = recorded if count is None else count
    for spoken in voices(rulebook, MARKER, frozenset()):
        marker = spoken.rule.value
        if not isinstance(marker, int):
            continue
        own = spoken.edition == rulebook.policy.id
        short = "below" if count is not None else "recorded"
        reached = "reached" if least >= marker else short
        message = f"machine.washes.policy_{reached}" if own else f"machine.washes.{reached}"
        values = {"component": component, "count": least, "marker": marker}
        bearing = Bearing.WARNS if own and least >= marker else Bearing.NOTES
        yield finding(bearing, message, spoken.ground, **values)
