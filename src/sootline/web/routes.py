"""Who may see which address, and who may send something to it? Every route stands here.

A route that is missing is nobody's: it is refused, and a test fails.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from sootline.tasks.rights import Right


@dataclass(frozen=True, kw_only=True)
class Access:
    """What one route asks for.

    Args:
        see: the right to look (GET, HEAD); None asks for none.
        send: the right to send (POST); None where nothing can be sent.
        open: whether nobody needs to be signed in.
        sends: whether anything can be sent at all.
    """

    see: Right | None = None
    send: Right | None = None
    open: bool = False
    sends: bool = True


def _looks(right: Right) -> Access:
    return Access(see=right, sends=False)


def _works(see: Right, send: Right) -> Access:
    return Access(see=see, send=send)


_R = Right
ROUTES: Mapping[str, Access] = MappingProxyType(
    {
        "healthz": Access(open=True, sends=False),
        "sign-in": Access(open=True),
        "sign-out": Access(),
        "light": Access(open=True),
        "attachment": _looks(_R.SEE_HISTORY),
        "front": _looks(_R.SEE_READINESS),
        "wall": _looks(_R.SEE_READINESS),
        "radio": _looks(_R.SEE_READINESS),
        "call": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "call-person": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "call-hazards": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "call-one": _looks(_R.SEE_EXPOSURE),
        "needs": _looks(_R.SEE_GEAR),
        "wash": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "wash-plan": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "wash-load": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "wash-advance": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "check": _works(_R.SEE_GEAR, _R.CHECK),
        "check-one": _works(_R.SEE_GEAR, _R.CHECK),
        "check-build": _works(_R.SEE_GEAR, _R.CHECK),
        "pieces": _looks(_R.SEE_GEAR),
        "piece": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "people": _looks(_R.SEE_GEAR),
        "person": _looks(_R.SEE_GEAR),
        "person-looked": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "due": _looks(_R.SEE_GEAR),
        "handover": _looks(_R.SEE_GEAR),
        "paper": _looks(_R.SEE_GEAR),
        "paper-sheet": _looks(_R.SEE_GEAR),
        "rules": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "rules-compare": _looks(_R.SEE_GEAR),
        "history": _looks(_R.SEE_HISTORY),
        "more": _looks(_R.SEE_READINESS),
        "undo": _works(_R.SEE_HISTORY, _R.REPORT),
    }
)
