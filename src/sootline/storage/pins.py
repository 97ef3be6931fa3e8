"""Is this the person's PIN, and how does a person come by one?"""

import datetime as dt

from django.contrib.auth.hashers import check_password, make_password

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.storage.guesses import count_guess, forget_guesses
from sootline.storage.models import Pin, User
from sootline.tasks.pins import check_pin


def set_pin(user: User, pin: str, now: dt.datetime, *, least: int, first: bool = False) -> None:
    """Give an account a PIN.

    Args:
        least: the fewest digits.
        first: somebody else chose it for the person, who must change it at the first use.

    Raises:
        BadInputError: it will not do, or is the one that must be changed.
    """
    check_pin(pin, least=least, known=user.member)
    old = Pin.objects.filter(user=user).first()
    if old is not None and old.first and not first and check_password(pin, old.digest):
        raise BadInputError([Fault(place="pin", message=MessageId("accounts.pin.same"))])
    Pin.objects.update_or_create(
        user=user, defaults={"digest": make_password(pin), "first": first, "since": now}
    )
    forget_guesses(_subject(user))


def is_pin(user: User, typed: str, now: dt.datetime) -> bool:
    """Whether this is an account's PIN.

    Raises:
        MustWaitError: too many wrong guesses in a row, at whichever device.
    """
    row = Pin.objects.filter(user=user).first()
    if row is None:
        return False
    count_guess(_subject(user), now)
    if not check_password(typed, row.digest):
        return False
    forget_guesses(_subject(user))
    return True


def is_first(user: User) -> bool:
    """Whether an account's PIN was chosen by somebody else."""
    return Pin.objects.filter(user=user, first=True).exists()


def _subject(user: User) -> str:
    return f"pin:{user.pk}"
