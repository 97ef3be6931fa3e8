"""How does a handover read: each way of not being on the hook, member by member?"""

from collections import defaultdict

from sootline.core.gear import Component
from sootline.tasks.desk import Desk, Report
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


def signed_handover(desk: Desk) -> Report | None:
    """Return the newest handover that was signed, as far as the desk still shows it."""
    found = (one for one in reversed(desk.reports) if dict(one.values).get("taker"))
    return next(found, None)


def names_of(desk: Desk) -> tuple[str, str]:
    """Return who handed over and who took over last; empty where nobody did."""
    signed = signed_handover(desk)
    told = dict(signed.values) if signed else {}
    return told.get("giver", ""), told.get("taker", "")
