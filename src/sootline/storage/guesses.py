"""May somebody guess again, and how often did they guess wrong in a row?"""

import datetime as dt

from django.db import transaction

from sootline.core.basis import SootlineError
from sootline.storage.models import Guesses
from sootline.tasks.guessing import may_guess


class MustWaitError(SootlineError):
    """Too many wrong guesses in a row: this one is not looked at, right or wrong."""


def count_guess(subject: str, now: dt.datetime) -> None:
    """Count a guess as wrong before it is looked at, so that guesses at once count each.

    Raises:
        MustWaitError: it is too early for another one, or there were too many.
    """
    with transaction.atomic():
        Guesses.objects.get_or_create(subject=subject, defaults={"last_at": now})
        row = Guesses.objects.select_for_update().get(subject=subject)
        if row.failures and not may_guess(row.failures, row.last_at, now):
            raise MustWaitError(subject)
        row.failures += 1
        row.last_at = now
        row.save()


def forget_guesses(subject: str) -> None:
    """Begin anew after a right one; the row stays, as another guess may be waiting for it."""
    Guesses.objects.filter(subject=subject).update(failures=0)
