"""Accounts of the tests' own, with a second factor, a PIN, or a station device."""

import datetime as dt
from typing import TYPE_CHECKING

from django.test import Client

from sootline.tasks.second_factor import code_at, step_at

if TYPE_CHECKING:
    from sootline.storage.models import User

GOOD = "brass-kettle-lantern-42x"
SALT = "5a" * 20
BACKEND = "django.contrib.auth.backends.ModelBackend"


def with_factor(user: "User") -> "User":
    """Give an account a second factor none of whose codes was used."""
    # Only once the framework is set up.
    from sootline.storage.models import SecondFactor  # noqa: PLC0415

    since = dt.datetime(2026, 1, 1, tzinfo=dt.UTC)
    SecondFactor.objects.create(user=user, salt=SALT, since=since, last_step=0)
    return user


def show_factor(client: Client) -> Client:
    """Let the client's session have shown the second factor already."""
    session = client.session
    session["second-factor"] = SALT
    session.save()
    return client


def code_now(*, salt: str = SALT, steps: int = 0) -> str:
    """Return the code an authenticator shows now.

    Args:
        steps: later than now; negative is earlier.
    """
    from sootline.storage.second_factors import secret_of  # noqa: PLC0415

    return code_at(secret_of(salt), step_at(dt.datetime.now(dt.UTC)) + steps)


def signed_in(user: "User", *, shown: bool = False) -> Client:
    """Return a client signed in to an account.

    Args:
        shown: whether its second factor was shown.
    """
    client = Client(SERVER_NAME="localhost", raise_request_exception=False)
    client.force_login(user, backend=BACKEND)
    return show_factor(client) if shown else client
