"""What goes over a network that others can read, and what a session's cookie may do."""

import os
import subprocess
import sys
from http import HTTPStatus
from pathlib import Path
from typing import Any

import pytest
from django.contrib.sessions.models import Session
from django.test import Client, override_settings
from django.urls import reverse
from tests.integration.known_people import GOOD, signed_in
from tests.integration.store_databases import Databases

from sootline.storage.accounts import make_account, set_roles
from sootline.storage.models import User
from sootline.wiring.people import people_policy
from sootline.wiring.store import open_store, prepare

_SHOW = (
    "from sootline.project import settings as s; "
    "print(s.SESSION_COOKIE_NAME, s.SESSION_COOKIE_SECURE, s.SESSION_COOKIE_HTTPONLY, "
    "s.SESSION_COOKIE_SAMESITE, s.CSRF_COOKIE_NAME, s.CSRF_COOKIE_SECURE, s.CSRF_COOKIE_HTTPONLY, "
    "s.DEVICE_COOKIE_NAME, s.SECURE_SSL_REDIRECT)"
)


@pytest.fixture(autouse=True)
def _one(databases: Databases) -> None:
    databases.fresh("sqlite")
    prepare(open_store())


def _status(address: str, **meta: Any) -> int:  # noqa: ANN401
    client = Client(SERVER_NAME="localhost", REMOTE_ADDR=address, **meta)
    return client.get(reverse("sign-in")).status_code


@pytest.mark.parametrize("address", ["127.0.0.1", "127.0.0.1:41234", "::1", "[::1]:41234"])
def test_this_machine_may_do_without(address: str) -> None:
    """With its port or without, as servers write it."""
    assert _status(address) == HTTPStatus.OK


@pytest.mark.parametrize(
    "address", ["192.168.1.20", "10.0.0.4:5000", "fe80::1", "2001:db8::7", "", "localhost"]
)
def test_plain_http_from_beyond_is_refused(address: str) -> None:
    """Nothing is shown, not even the sign-in: its answer would be read on the way."""
    assert _status(address) == HTTPStatus.FORBIDDEN


def test_a_proxy_on_this_machine_does_not_hide_where_it_came_from() -> None:
    """What it brings in over plain http came over somebody's network."""
    assert _status("127.0.0.1", HTTP_X_FORWARDED_FOR="192.168.1.20") == HTTPStatus.FORBIDDEN


def test_https_is_taken_from_everywhere() -> None:
    """The same address, over https."""
    client = Client(SERVER_NAME="localhost", REMOTE_ADDR="192.168.1.20")

    assert client.get(reverse("sign-in"), secure=True).status_code == HTTPStatus.OK


def test_where_it_was_switched_on_every_page_says_so() -> None:
    """Then it is taken, under a banner."""
    client = Client(SERVER_NAME="localhost", REMOTE_ADDR="192.168.1.20")
    with override_settings(PLAIN_HTTP=True):
        html = client.get(reverse("sign-in")).content.decode()

    assert 'class="banner" role="status"' in html


def _settings(folder: Path, **environment: str) -> str:
    known = {**os.environ, "SOOTLINE_DATA": str(folder), **environment}
    command = [sys.executable, "-c", _SHOW]
    return subprocess.run(
        command, env=known, capture_output=True, text=True, check=True, timeout=60
    ).stdout.strip()


def test_cookies_over_https(tmp_path: Path) -> None:
    """Secure, out of reach of scripts, for this host alone; http is sent on to https."""
    assert _settings(tmp_path, SOOTLINE_TLS="1") == (
        "__Host-session True True Lax __Host-csrf True True __Host-device True"
    )


def test_cookies_on_this_machine(tmp_path: Path) -> None:
    """The same without what only https can have."""
    assert _settings(tmp_path, SOOTLINE_TLS="") == (
        "session False True Lax csrf False True device False"
    )


def _sign_in(client: Client) -> None:
    client.post(reverse("sign-in"), {"username": "maren", "password": GOOD})


def test_a_session_planted_before_the_sign_in_is_none_after() -> None:
    """The session goes on under a name nobody knew before."""
    make_account("Maren", GOOD, ["auditor"], member="118")
    client = Client(SERVER_NAME="localhost")
    planted = client.session
    planted["x"] = 1
    planted.save()
    client.cookies["session"] = planted.session_key or ""

    _sign_in(client)

    assert client.cookies["session"].value != planted.session_key
    assert not Session.objects.filter(pk=planted.session_key).exists()


def test_a_session_ends_at_a_set_moment() -> None:
    """Whatever is done in it: the policy's hours after the sign-in."""
    make_account("Maren", GOOD, ["auditor"], member="118")
    client = Client(SERVER_NAME="localhost")
    _sign_in(client)
    ends = client.session.get_expiry_date()

    client.get(reverse("account"))
    session = client.session
    session["touched"] = True
    session.save()

    assert client.session.get_expiry_date() == ends
    assert abs(client.session.get_expiry_age() - people_policy().session.total_seconds()) < 60


def test_signing_out_everywhere() -> None:
    """Every session of the account ends, and nobody else's."""
    user = make_account("Maren", GOOD, ["auditor"], member="118")
    other = signed_in(make_account("Other", GOOD, ["auditor"], member="119"))
    phones = [signed_in(user) for _ in range(3)]

    phones[0].post(reverse("account-do", kwargs={"deed": "end"}))

    found = [client.get(reverse("account")).status_code for client in (*phones, other)]
    assert found == [302, 302, 302, 200]


def test_every_form_needs_its_token() -> None:
    """A form another site sends in somebody's name is refused."""
    user = make_account("Maren", GOOD, ["administrator"], member="118")
    client = Client(SERVER_NAME="localhost", enforce_csrf_checks=True)
    client.force_login(user, backend="django.contrib.auth.backends.ModelBackend")
    for route, kwargs in (("account-do", {"deed": "end"}), ("second-factor", {}), ("devices", {})):
        answer = client.post(reverse(route, kwargs=kwargs), {"name": "x", "place": "y"})
        assert answer.status_code == HTTPStatus.FORBIDDEN

    assert Session.objects.exists()


def test_nobody_is_there_by_default() -> None:
    """No account, no password: the first administrator is made on the console."""
    assert not User.objects.exists()


def test_an_office_given_counts_from_the_next_request() -> None:
    """Without signing in anew."""
    client = signed_in(make_account("Maren", GOOD, ["member"], member="118"))
    path = reverse("looks-of", kwargs={"member": "223"})
    before = client.get(path).status_code

    set_roles("maren", ["auditor"])

    assert (before, client.get(path).status_code) == (HTTPStatus.FORBIDDEN, HTTPStatus.OK)
