"""Who has a second factor, is this its code, and how does it come and go?

The secret is derived from the installation's secret and a salt in the store: a copy of the database
or a backup alone tells no codes.
"""

import datetime as dt
import hmac
import secrets

from django.conf import settings
from django.contrib.auth.hashers import check_password, make_password
from django.db import transaction

from sootline.storage.guesses import count_guess, forget_guesses
from sootline.storage.models import RecoveryCodeRow, SecondFactor, User
from sootline.tasks.second_factor import (
    SECRET_BYTES,
    RecoveryCode,
    draw_recovery_codes,
    find_step,
    read_recovery_code,
)

_SALT_BYTES = 20


def draw_salt() -> str:
    """Draw what a new secret is derived with."""
    return secrets.token_hex(_SALT_BYTES)


def secret_of(salt: str, key: str | None = None) -> bytes:
    """Return the secret that belongs to a salt.

    Args:
        key: an earlier secret of the installation; None is the present one.
    """
    used = settings.SECRET_KEY if key is None else key
    message = f"sootline second factor {salt}".encode()
    return hmac.digest(used.encode(), message, "sha256")[:SECRET_BYTES]


def factor_of(user: User) -> SecondFactor | None:
    """Return an account's second factor."""
    return SecondFactor.objects.filter(user=user).first()


def set_up(user: User, salt: str, code: str, now: dt.datetime) -> tuple[RecoveryCode, ...]:
    """Take in a new authenticator once it shows a right code; the old one counts no more.

    Returns:
        its recovery codes, which nobody can be shown again; none where the code is not right.

    Raises:
        MustWaitError: too many wrong guesses in a row.
    """
    subject = _subject(user)
    count_guess(subject, now)
    step = find_step(secret_of(salt), code, now, last=0)
    if step is None:
        return ()
    codes = draw_recovery_codes()
    with transaction.atomic():
        SecondFactor.objects.filter(user=user).delete()
        SecondFactor.objects.create(user=user, salt=salt, since=now, last_step=step)
        _keep_codes(user, codes)
    forget_guesses(subject)
    return codes


def check_code(user: User, typed: str, now: dt.datetime) -> bool:
    """Whether a code is the authenticator's newest, or a recovery code; each counts once.

    Raises:
        MustWaitError: too many wrong guesses in a row.
    """
    factor = factor_of(user)
    if factor is None:
        return False
    count_guess(_subject(user), now)
    right = _take_step(factor, typed, now) or _take_recovery_code(user, typed)
    if right:
        forget_guesses(_subject(user))
    return right


def remove_factor(user: User) -> bool:
    """Take an account's second factor and its recovery codes away; return whether it had one."""
    with transaction.atomic():
        RecoveryCodeRow.objects.filter(user=user).delete()
        gone, _ = SecondFactor.objects.filter(user=user).delete()
    forget_guesses(_subject(user))
    return bool(gone)


def codes_left(user: User) -> int:
    """Return how many recovery codes are unused."""
    return RecoveryCodeRow.objects.filter(user=user).count()


def _take_step(factor: SecondFactor, typed: str, now: dt.datetime) -> bool:
    """Use up a code; of two requests with the same one only one comes through."""
    for key in (settings.SECRET_KEY, *settings.SECRET_KEY_FALLBACKS):
        step = find_step(secret_of(factor.salt, key), typed, now, last=factor.last_step)
        if step is not None:
            open_still = SecondFactor.objects.filter(
                pk=factor.pk, salt=factor.salt, last_step__lt=step
            )
            return open_still.update(last_step=step) == 1
    return False


def _take_recovery_code(user: User, typed: str) -> bool:
    code = read_recovery_code(typed)
    if code is None:
        return False
    row = RecoveryCodeRow.objects.filter(user=user, number=code.number).first()
    if row is None or not check_password(code.text, row.digest):
        return False
    return RecoveryCodeRow.objects.filter(pk=row.pk).delete()[0] == 1


def _keep_codes(user: User, codes: tuple[RecoveryCode, ...]) -> None:
    RecoveryCodeRow.objects.filter(user=user).delete()
    RecoveryCodeRow.objects.bulk_create(
        RecoveryCodeRow(user=user, number=code.number, digest=make_password(code.text))
        for code in codes
    )


def _subject(user: User) -> str:
    return f"second-factor:{user.pk}"
