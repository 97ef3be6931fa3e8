"""What the console does to an account: a first PIN, a lost phone, an end to its sessions."""

import io
from collections.abc import Iterator

import pytest
from django.contrib.sessions.models import Session
from django.test import override_settings
from tests.integration.known_people import GOOD, signed_in, with_factor
from tests.integration.store_databases import Databases

from sootline.cli.main import main
from sootline.core.basis import BadInputError
from sootline.files.people_policy import read_people_policy
from sootline.project import settings as shipped
from sootline.storage.accounts import find_account, make_account
from sootline.storage.models import Pin, SecondFactor
from sootline.storage.pins import is_first, is_pin
from sootline.wiring.store import now


@pytest.fixture(autouse=True)
def _one(databases: Databases) -> Iterator[None]:
    databases.fresh("sqlite")
    with override_settings(PASSWORD_HASHERS=["django.contrib.auth.hashers.MD5PasswordHasher"]):
        make_account("Maren", GOOD, ["administrator"], member="118")
        yield


def test_a_first_pin(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """It is read from a line, counts at once, and must be changed."""
    monkeypatch.setattr("sys.stdin", io.StringIO("480913\n"))

    assert main(["admin", "pin", "maren"]) == 0

    assert is_pin(find_account("maren"), "480913", now())
    assert is_first(find_account("maren"))
    assert "480913" not in capsys.readouterr().out


def test_a_first_pin_that_will_not_do(monkeypatch: pytest.MonkeyPatch) -> None:
    """It is refused as on a screen."""
    monkeypatch.setattr("sys.stdin", io.StringIO("123456\n"))

    assert main(["admin", "pin", "maren"]) == 2
    assert not Pin.objects.exists()


def test_a_lost_phone() -> None:
    """The second factor goes, and so does every session."""
    client = signed_in(with_factor(find_account("maren")), shown=True)

    assert main(["admin", "factor", "maren"]) == 0

    assert client.session.session_key
    assert not Session.objects.exists()
    assert not SecondFactor.objects.exists()


def test_an_end_to_every_session() -> None:
    """The account stays as it is."""
    signed_in(with_factor(find_account("maren")))

    assert main(["admin", "end", "maren"]) == 0

    assert not Session.objects.exists()
    assert SecondFactor.objects.exists()


def test_the_departments_own_policy() -> None:
    """A file in the data directory; one that cannot be read says so, with its name."""
    own = shipped.DATA_DIR / "people.toml"
    try:
        own.write_text('[[line]]\nid = "device.idle_min"\nvalue = 7\n', encoding="utf-8")
        read_people_policy.cache_clear()
        assert read_people_policy(shipped.DATA_DIR).idle.total_seconds() == 420
        own.write_text("[[line\n", encoding="utf-8")
        read_people_policy.cache_clear()
        with pytest.raises(BadInputError) as refused:
            read_people_policy(shipped.DATA_DIR)
        assert [fault.place for fault in refused.value.faults] == ["people.toml"]
    finally:
        own.unlink(missing_ok=True)
        read_people_policy.cache_clear()
