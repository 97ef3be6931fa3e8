"""How are people known at a screen? To be imported once the framework is started."""

from django.conf import settings

from sootline.core.basis import MemberId
from sootline.core.ledger.kinds import Established
from sootline.files.people_policy import read_people_policy
from sootline.storage.accounts import end_sessions, find_account, list_accounts
from sootline.storage.devices import (
    StationDevice,
    enrol_device,
    find_device,
    list_devices,
    people_at,
    revoke_device,
)
from sootline.storage.guesses import MustWaitError, count_guess, forget_guesses
from sootline.storage.looks import LookStore
from sootline.storage.models import Device, User
from sootline.storage.pins import is_first, is_pin, set_pin
from sootline.storage.second_factors import (
    check_code,
    codes_left,
    draw_salt,
    factor_of,
    remove_factor,
    secret_of,
    set_up,
)
from sootline.storage.stations import OneStation
from sootline.tasks.looks import Looks
from sootline.tasks.people_policy import PeoplePolicy
from sootline.wiring.store import now

__all__ = [
    "Device",
    "Established",
    "MustWaitError",
    "StationDevice",
    "User",
    "check_code",
    "codes_left",
    "count_guess",
    "draw_salt",
    "end_sessions",
    "enrol_device",
    "factor_of",
    "find_account",
    "find_device",
    "forget_guesses",
    "is_first",
    "is_pin",
    "list_accounts",
    "list_devices",
    "looks",
    "people_at",
    "people_policy",
    "remove_factor",
    "revoke_device",
    "secret_of",
    "sees_member",
    "set_pin",
    "set_up",
    "shows_attachment",
]


def looks() -> Looks:
    """Return where looks at health data are kept."""
    return LookStore(now)


def people_policy() -> PeoplePolicy:
    """Return the department's policy on how people are known."""
    return read_people_policy(settings.DATA_DIR)


def sees_member(user: object, member: MemberId) -> bool:
    """Whether a member is none of another station's, for an account of one."""
    station = user.station if isinstance(user, User) else ""
    return not station or member not in OneStation("default", station).strangers


def shows_attachment(user: object, digest: str) -> bool:
    """Whether an account may see a photo or a paper: its station alone, where it has one."""
    station = user.station if isinstance(user, User) else ""
    return not station or OneStation("default", station).shows_attachment(digest)
