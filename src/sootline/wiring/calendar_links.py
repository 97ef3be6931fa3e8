"""Which private address has somebody's calendar, and whose is an address? Framework started."""

from django.conf import settings
from django.core.signing import BadSignature, Signer

from sootline.storage.models import User
from sootline.tasks.rights import Right, may

_SALT = "sootline.calendar"
_DEMO = "demo"


def link_of(user: object) -> str:
    """Return the private part of an address; another password makes another."""
    if not isinstance(user, User):
        return _signer("").sign(_DEMO)
    return _signer(user.password).sign(str(user.pk))


def owner_of(link: str) -> object | None:
    """Return whose address it is; None where it is nobody's.

    An account that is closed, or may no longer see gear, has none. In the demonstration the owner
    is its name.
    """
    name = link.partition(":")[0]
    if settings.DEMO:
        return _DEMO if name == _DEMO and _holds(link, "") else None
    user = User.objects.filter(pk=name, is_active=True).first() if name.isdecimal() else None
    if user is None or not may(user.roles, Right.SEE_GEAR):
        return None
    return user if _holds(link, user.password) else None


def _holds(link: str, password: str) -> bool:
    try:
        _signer(password).unsign(link)
    except BadSignature:
        return False
    return True


def _signer(password: str) -> Signer:
    return Signer(salt=f"{_SALT}.{password}")
