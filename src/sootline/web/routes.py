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
        account: whether it is about an account, of which a demonstration has none.
        whole: whether it is about every station, and refused to an account of one.
        device: whether a station device reads it, and sends to it by name and PIN.
    """

    see: Right | None = None
    send: Right | None = None
    open: bool = False
    sends: bool = True
    account: bool = False
    device: bool = False
    whole: bool = False


def _own(*, sends: bool = True) -> Access:
    """Return what a page about one's own account asks for: that somebody is signed in."""
    return Access(sends=sends, account=True)


def _guards(right: Right, *, sends: bool = True) -> Access:
    """Return what a page about other people's accounts, or what they did, asks for."""
    return Access(see=right, send=right if sends else None, sends=sends, account=True)


def _wholes(right: Right, *, sends: bool = True, account: bool = False) -> Access:
    """Return what a page about the whole department asks for."""
    send = right if sends else None
    return Access(see=right, send=send, sends=sends, account=account, whole=True)


def _looks(right: Right) -> Access:
    return Access(see=right, sends=False)


def _works(see: Right, send: Right) -> Access:
    return Access(see=see, send=send)


def _hangs(see: Right, send: Right | None = None) -> Access:
    """Return what a page asks for that a station device on the wall also shows."""
    return Access(see=see, send=send, sends=send is not None, device=True)


_R = Right
ROUTES: Mapping[str, Access] = MappingProxyType(
    {
        "healthz": Access(open=True, sends=False),
        "come-in": Access(open=True, sends=False),
        "sign-in": Access(open=True),
        "sign-out": Access(),
        "light": Access(open=True),
        "account": _own(sends=False),
        "account-do": _own(),
        "second-factor": _own(),
        "looks": _own(sends=False),
        "looks-of": _guards(_R.SEE_LOOKS, sends=False),
        "accounts": _wholes(_R.ADMINISTER, sends=False, account=True),
        "accounts-do": _wholes(_R.ADMINISTER, account=True),
        "devices": _guards(_R.RUN_STATION),
        "device-revoke": _guards(_R.RUN_STATION),
        "first-pin": _guards(_R.RUN_STATION),
        "attachment": _looks(_R.SEE_HISTORY),
        "front": _hangs(_R.SEE_READINESS),
        "wall": _hangs(_R.SEE_READINESS),
        "radio": _hangs(_R.SEE_READINESS),
        "call": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "call-person": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "call-hazards": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "call-one": _looks(_R.SEE_EXPOSURE),
        "needs": _looks(_R.SEE_GEAR),
        "wash": _hangs(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "wash-better": _hangs(_R.SEE_GEAR),
        "wash-plan": _hangs(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "wash-changed": _hangs(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "wash-load": _hangs(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "wash-advance": _hangs(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "drying": _hangs(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "machines": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "costs": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "check": _hangs(_R.SEE_GEAR, _R.CHECK),
        "check-one": _hangs(_R.SEE_GEAR, _R.CHECK),
        "check-build": _hangs(_R.SEE_GEAR, _R.CHECK),
        "piece-soil": _looks(_R.SEE_GEAR),
        "piece-code": _works(_R.SEE_GEAR, _R.SEE_GEAR),
        "pieces": _looks(_R.SEE_GEAR),
        "piece": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "people": _looks(_R.SEE_GEAR),
        "person": _looks(_R.SEE_GEAR),
        "person-looked": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "due": _looks(_R.SEE_GEAR),
        "due-today": _looks(_R.SEE_GEAR),
        "due-month": _looks(_R.SEE_GEAR),
        "due-month-sheet": _looks(_R.SEE_GEAR),
        # The address itself is the key; it is looked at in the view.
        "calendar": Access(open=True, sends=False),
        "between": _looks(_R.SEE_GEAR),
        "inspect": _looks(_R.SEE_GEAR),
        "inspect-plan": _works(_R.SEE_GEAR, _R.CHECK),
        "inspect-day": _works(_R.SEE_GEAR, _R.CHECK),
        "inspect-sheet": _looks(_R.SEE_GEAR),
        "inspect-typed": _works(_R.SEE_GEAR, _R.CHECK),
        "inspect-one": _works(_R.SEE_GEAR, _R.CHECK),
        "repairs": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "repair": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "contractor": _looks(_R.SEE_GEAR),
        "shipment-send": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "shipment": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "shipment-confirm": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "shipment-invoice": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "shipment-manifest": _looks(_R.SEE_GEAR),
        "recalls": _looks(_R.SEE_GEAR),
        "recall-new": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "recall": _looks(_R.SEE_GEAR),
        "recall-sheet": _looks(_R.SEE_GEAR),
        "recall-seen": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "recall-done": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "recall-close": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "stores": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "fit": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "fit-measure": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "handover": _works(_R.SEE_GEAR, _R.REPORT),
        "call-guests": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "guests": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "hold": _works(_R.SEE_GEAR, _R.END_HOLDS),
        "hold-disinfected": _works(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "hold-survey": _works(_R.SEE_GEAR, _R.END_HOLDS),
        "check-then": _works(_R.SEE_GEAR, _R.CHECK),
        "person-new": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "person-first-day": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "person-tried": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "person-exchange": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "person-leaves": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        # Whose gear it is may say so; of others it takes the right to see gear.
        "person-elsewhere": _works(_R.SEE_OWN, _R.REPORT),
        "paper": _looks(_R.SEE_GEAR),
        "paper-sheet": _looks(_R.SEE_GEAR),
        "rules": _works(_R.SEE_GEAR, _R.MANAGE_GEAR),
        "rules-compare": _looks(_R.SEE_GEAR),
        "history": _looks(_R.SEE_HISTORY),
        "history-verify": _looks(_R.SEE_HISTORY),
        "history-export": _wholes(_R.EXPORT, sends=False),
        "more": _hangs(_R.SEE_READINESS),
        "photo": _hangs(_R.SEE_GEAR),
        "pocket": _hangs(_R.SEE_GEAR),
        "later-now": _hangs(_R.SEE_READINESS),
        "later-call": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "later-person": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "later-hazards": _works(_R.SEE_EXPOSURE, _R.RECORD_CALLS),
        "later-load": _hangs(_R.SEE_GEAR, _R.WORK_WASH_ROOM),
        "later-check": _hangs(_R.SEE_GEAR, _R.CHECK),
        "later-hold": _works(_R.SEE_GEAR, _R.CHECK),
        "later-handover": _works(_R.SEE_GEAR, _R.REPORT),
        "question": _works(_R.SEE_GEAR, _R.REPORT),
        "undo": _hangs(_R.SEE_READINESS, _R.REPORT),
    }
)
