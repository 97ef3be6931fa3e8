"""Where are accounts kept? To be imported once the framework is started."""

from uuid import uuid4

from sootline.core.basis import DeviceId, MemberId
from sootline.core.ledger import ClockSource, EntryKind, Established, ItemKind, Occurred, item
from sootline.core.ledger.acts import Act
from sootline.storage.accounts import (
    close_account,
    find_account,
    make_account,
    set_password,
    set_roles,
)
from sootline.wiring.store import now, open_store

__all__ = [
    "close_account",
    "find_account",
    "make_account",
    "note_offices",
    "set_password",
    "set_roles",
]

_CONSOLE = "console"


def note_offices(name: str) -> None:
    """Write into the record which offices an account has from now on.

    Whoever sits at the console is known to the machine, not to the record.
    """
    user = find_account(name)
    act = Act(
        idem=f"offices-{uuid4()}",
        occurred=Occurred.at(now(), ClockSource.SERVER),
        device=DeviceId(_CONSOLE),
        actor=MemberId(_CONSOLE),
        established=Established.NOT_KNOWN,
    )
    offices = ", ".join(user.roles) if user.is_active else ""
    said = {"role": offices or "none", "account": user.name}
    thing = item(ItemKind.MEMBER, user.member)
    open_store().append([act.entry(EntryKind.ROLE_CHANGED, thing, said)])
