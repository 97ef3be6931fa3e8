"""Accounts are made on the console; passwords are long and not the house's own words."""

from collections.abc import Callable

import pytest
from django.contrib.sessions.backends.db import SessionStore
from django.contrib.sessions.models import Session
from tests.integration.store_acts import NOON
from tests.integration.store_databases import Database, Databases

from sootline.core.basis import BadInputError, MemberId
from sootline.storage.accounts import (
    close_account,
    end_sessions,
    find_account,
    make_account,
    set_password,
    set_roles,
)
from sootline.storage.looks import looks_at, note_look
from sootline.storage.models import User

GOOD = "brass-kettle-lantern-42x"


@pytest.fixture(autouse=True)
def _one(databases: Databases) -> None:
    databases.fresh("sqlite")


def _messages(act: Callable[[], object]) -> list[str]:
    with pytest.raises(BadInputError) as raised:
        act()
    return [fault.message for fault in raised.value.faults]


def test_an_account() -> None:
    """It is found by its name however that is typed, and its password is kept as Argon2id."""
    made = make_account(" Maren ", GOOD, ["administrator"], member="118", station="2")

    found = find_account("MAREN")

    assert (found.pk, found.member, found.station) == (made.pk, "118", "2")
    assert found.password.startswith("argon2$argon2id$")
    assert found.check_password(GOOD)


@pytest.mark.parametrize(
    ("password", "message"),
    [
        ("x" * 14, "accounts.password.length"),
        ("ab" * 101, "accounts.password.length"),
        ("aaaaaaaaaaaaaaaaaa", "accounts.password.words"),
        ("Sootline-Captain-2026!", "accounts.password.words"),
        ("maren118maren118maren", "accounts.password.words"),
        ("firefighter1234567", "accounts.password.words"),
    ],
)
def test_passwords_that_will_not_do(password: str, message: str) -> None:
    """Too short, too long, one sign, words of the house or of the person.

    Source of the length: NIST SP 800-63B-4, 3.1.1.2 (15 signs where it is the only factor).
    """
    assert message in _messages(lambda: make_account("Maren", password, [], member="118"))


@pytest.mark.parametrize("password", ["correct horse battery", "ñandú y pingüino 🧥🧥", GOOD])
def test_passwords_of_any_signs(password: str) -> None:
    """Spaces and every script may be used, and nothing asks for digits or capitals."""
    assert make_account("Maren", password, []).check_password(password)


def test_a_common_password() -> None:
    """The list of common passwords that comes with the framework is asked too."""
    assert "accounts.password.common" in _messages(lambda: make_account("M", "password1", []))


def test_everything_wrong_is_listed() -> None:
    """A name in use, an office there is not, a short password: all at once."""
    make_account("Maren", GOOD, [])

    said = _messages(lambda: make_account("maren", "short", ["king"]))

    assert set(said) >= {"accounts.taken", "accounts.no_such_role", "accounts.password.length"}


@pytest.mark.parametrize("name", ["", " ", "x" * 81])
def test_names_that_will_not_do(name: str) -> None:
    """A blank or endless name is none."""
    assert _messages(lambda: make_account(name, GOOD, [])) == ["accounts.name"]


def test_nobody_of_that_name() -> None:
    """An account that is not there is said to be so."""
    assert _messages(lambda: find_account("Nobody")) == ["accounts.no_such"]


def _signed_in(user: User) -> None:
    session = SessionStore()
    session["_auth_user_id"] = str(user.pk)
    session.save()


def test_another_password_ends_sessions() -> None:
    """Whoever was signed in by the old one no longer is; others stay."""
    maren, other = make_account("Maren", GOOD, []), make_account("Other", GOOD, [])
    _signed_in(maren)
    _signed_in(other)

    set_password("maren", "another-brass-kettle-9")

    assert find_account("maren").check_password("another-brass-kettle-9")
    assert Session.objects.count() == 1
    assert end_sessions(other) == 1


def test_a_bad_password_changes_nothing() -> None:
    """The old one stays."""
    make_account("Maren", GOOD, [])

    assert _messages(lambda: set_password("maren", "short")) == ["accounts.password.length"]
    assert find_account("maren").check_password(GOOD)


def test_somebody_must_administer() -> None:
    """The last administrator can neither be closed nor lose the office."""
    make_account("Maren", GOOD, ["administrator"])

    assert _messages(lambda: close_account("maren")) == ["accounts.last_administrator"]
    assert _messages(lambda: set_roles("maren", ["officer"])) == ["accounts.last_administrator"]
    assert _messages(lambda: set_roles("maren", ["king"])) == [
        "accounts.no_such_role", "accounts.last_administrator",
    ]  # fmt: skip

    make_account("Second", GOOD, ["administrator"])
    close_account("maren")
    assert not find_account("maren").is_active


def test_other_offices() -> None:
    """They are kept in one order."""
    make_account("Maren", GOOD, ["officer"])

    assert set_roles("maren", ["officer", "helper"]).roles == ["helper", "officer"]


def test_looks_are_kept(database: Database) -> None:
    """Who looked at what a member was exposed to can be listed, the newest first."""
    for actor in ("500", "501"):
        note_look(MemberId(actor), MemberId("118"), "exposures", at=NOON)

    assert [look.actor for look in looks_at(MemberId("118"))] == ["501", "500"]
    assert list(looks_at(MemberId("119"))) == []
    assert database.folder.exists()
