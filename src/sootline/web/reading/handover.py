"""How does a handover read: each way of not being on the hook, member by member?"""

from collections import defaultdict

from sootline.core.gear import Component
from sootline.tasks.hand_over import Handover

Rows = list[tuple[str, list[Component], str]]


def read_handover(handover: Handover) -> list[tuple[str, Rows]]:
    """Return each way with the pieces by owner, and where they are if that is on record."""
    found = []
    for left, pieces in handover.exceptions:
        rows: dict[tuple[str, str], list[Component]] = defaultdict(list)
        for one in pieces:
            holder = one.state.holder if one.state.holder != one.owner else None
            where = str(holder or one.state.place or "")
            rows[one.owner or one.set or "", where].append(one)
        listed = [(owner, there, where) for (owner, where), there in rows.items()]
        found.append((left.value, listed))
    return found
