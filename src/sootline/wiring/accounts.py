"""Where are accounts kept? To be imported once the framework is started."""

from uuid import uuid4

from sootline.core.basis import DeviceId, MemberId
from sootline.core.ledger import ClockSource, EntryKind, Established, ItemKind, Occurred, item
from sootline.core.ledger.acts import Act
from sootline.storage.accounts import (
    close_account,
    end_sessions,
    find_account,
    make_account,
    set_password,
    set_roles,
)
from sootline.storage.models import User
from sootline.storage.pins import set_pin
from sootline.storage.second_factors import remove_factor
from sootline.wiring.people import people_policy
from sootline.wiring.store import now, open_store

__all__ = [
    "close_account",
    "end_sessions",
    "find_account",
    "give_first_pin",
    "make_account",
    "note_offices",
    "reset_factor",
    "set_password",
    "set_roles",
]

_CONSOLE = "console"


def note_offices(name: str, *, by: object = None) -> None:
    """Write into the record which offices an account has from now on.

    Args:
        by: the account that changed them; whoever sits at the console is known to the machine,
            not to the record.
    """
    user = find_account(name)
    actor = by if isinstance(by, User) else None
    act = Act(
        idem=f"offices-{uuid4()}",
        occurred=Occurred.at(now(), ClockSource.SERVER),
        device=actor.device if actor else DeviceId(_CONSOLE),
        actor=MemberId(actor.member if actor else _CONSOLE),
        established=actor.established if actor else Established.NOT_KNOWN,
    )
    offices = ", ".join(user.roles) if user.is_active else ""
    said = {"role": offices or "none", "account": user.name}
    thing = item(ItemKind.MEMBER, user.member)
    open_store().append([act.entry(EntryKind.ROLE_CHANGED, thing, said)])


def give_first_pin(name: str, pin: str) -> None:
    """Give an account a PIN that its person must change when it is first used.

    Raises:
        BadInputError: there is no such account, or the PIN will not do.
    """
    least = people_policy().pin_digits
    set_pin(find_account(name), pin, now(), least=least, first=True)


def reset_factor(name: str) -> None:
    """Take an account's second factor away and end its sessions: its phone is lost.

    Raises:
        BadInputError: there is no such account.
    """
    user = find_account(name)
    remove_factor(user)
    end_sessions(user)
