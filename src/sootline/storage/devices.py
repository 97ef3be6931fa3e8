"""Which devices of the station stay signed in, and is this one of them?"""

import datetime as dt
import re
import secrets
import unicodedata
from dataclasses import dataclass
from hashlib import sha256

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.storage.models import Device, User

_TOKEN_BYTES = 32
_SEEN_EVERY = dt.timedelta(minutes=1)
_LONGEST = 80


@dataclass(frozen=True, kw_only=True)
class StationDevice:
    """A device as a request sees it: it reads, and is nobody.

    Args:
        station: the only station whose gear it shows; blank shows all.
        renew: whether its cookie is to be handed out anew.
    """

    id: str
    name: str
    place: str
    station: str
    renew: bool = False
    # What templates and the framework ask of whoever is there.
    is_authenticated: bool = False
    is_active: bool = True
    member: str = ""
    roles: tuple[str, ...] = ()
    pk: None = None


def enrol_device(
    name: str, place: str, station: str, *, by: str, now: dt.datetime
) -> tuple[Device, str]:
    """Enrol a device.

    Returns:
        its row, and the token that its cookie holds and nobody else.

    Raises:
        BadInputError: it has no name or no place.
    """
    given = {"name": name.strip(), "place": place.strip()}
    faults = [
        Fault(place=field, message=MessageId("accounts.device.blank"))
        for field, text in given.items()
        if not 0 < len(text) <= _LONGEST
    ]
    if faults:
        raise BadInputError(faults)
    token = secrets.token_urlsafe(_TOKEN_BYTES)
    row = Device.objects.create(
        id=_fresh_id(given["name"]), **given, station=station.strip(), digest=_digest(token),
        enrolled_at=now, enrolled_by=by, seen_at=now,
    )  # fmt: skip
    return row, token


def find_device(identity: str, token: str, now: dt.datetime) -> StationDevice | None:
    """Return the device a cookie speaks of; None where it was revoked or never was.

    When it was last seen is kept to the minute.
    """
    row = Device.objects.filter(pk=identity, revoked_at=None).first()
    if row is None or not secrets.compare_digest(row.digest, _digest(token)):
        return None
    renew = row.seen_at.date() != now.date()
    if now - row.seen_at >= _SEEN_EVERY:
        Device.objects.filter(pk=row.pk).update(seen_at=now)
    return StationDevice(
        id=row.pk, name=row.name, place=row.place, station=row.station, renew=renew
    )


def list_devices() -> list[Device]:
    """List devices: those that count first, then the revoked ones."""
    rows = Device.objects.order_by("name", "pk")
    return sorted(rows, key=lambda one: one.revoked_at is not None)


def revoke_device(identity: str, *, by: str, now: dt.datetime) -> bool:
    """Let a device count no more, from its next request; return whether it counted."""
    counting = Device.objects.filter(pk=identity, revoked_at=None)
    return counting.update(revoked_at=now, revoked_by=by) == 1


def people_at(device: StationDevice) -> list[User]:
    """List whose accounts may act at a device: open ones with a PIN, of its station or of all."""
    users = User.objects.filter(is_active=True, pin__isnull=False).order_by("member")
    if device.station:
        users = users.filter(station__in=("", device.station))
    return list(users)


def _fresh_id(name: str) -> str:
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    stem = re.sub(r"[^a-z0-9]+", "-", plain.casefold()).strip("-")[:40] or "device"
    identity, number = stem, 1
    while Device.objects.filter(pk=identity).exists():
        number += 1
        identity = f"{stem}-{number}"
    return identity


def _digest(token: str) -> str:
    return sha256(token.encode()).hexdigest()
