"""Coming in: patience without end is not given, papers are handed out safely, health is told."""

import json
import re
from collections.abc import Iterator
from http import HTTPStatus

import pytest
from django.core.cache import cache
from django.db import connection
from django.test import Client, override_settings
from django.urls import reverse
from tests.integration.store_acts import NOON
from tests.integration.store_databases import Database, Databases

from sootline.project import settings as shipped
from sootline.storage.accounts import make_account
from sootline.storage.attachments import AttachmentStore

GOOD = "brass-kettle-lantern-42x"


@pytest.fixture(scope="module", autouse=True)
def quick_hashes() -> Iterator[None]:
    """Hash passwords fast: how that is done is another test's matter, and slow on purpose."""
    with override_settings(PASSWORD_HASHERS=["django.contrib.auth.hashers.MD5PasswordHasher"]):
        yield


@pytest.fixture
def database(databases: Databases) -> Database:
    """Make a store with one auditor in it."""
    made = databases.fresh("sqlite")
    make_account("Maren", GOOD, ["auditor"], member="118")
    cache.clear()
    return made


def _client() -> Client:
    return Client(SERVER_NAME="localhost")


def _try(client: Client, name: str, password: str) -> int:
    form = {"username": name, "password": password}
    return client.post(reverse("sign-in"), form).status_code


@pytest.mark.usefixtures("database")
def test_signing_in_and_out() -> None:
    """The name may be typed in capitals; signing out ends it."""
    client = _client()
    assert _try(client, "MAREN", GOOD) == HTTPStatus.FOUND
    before = client.session.session_key

    client.post(reverse("sign-out"))

    assert before
    assert client.get(reverse("history")).status_code == HTTPStatus.FOUND


@pytest.mark.usefixtures("database")
def test_signing_in_goes_on_to_where_one_wanted() -> None:
    """But never to another site."""
    client = _client()
    form = {"username": "maren", "password": GOOD, "next": "https://elsewhere.example/"}

    answer = client.post(reverse("sign-in"), form)

    assert answer.headers["Location"] == reverse("front")


@pytest.mark.usefixtures("database")
def test_a_wrong_password() -> None:
    """It says that they do not match, and not which of the two is wrong."""
    answers = [
        _client().post(reverse("sign-in"), {"username": name, "password": "wrong"})
        for name in ("maren", "nobody")
    ]

    assert [answer.status_code for answer in answers] == [HTTPStatus.UNPROCESSABLE_ENTITY] * 2
    said = [
        re.sub(r'(data-token|value)="\w{64}"', "", answer.content.decode()) for answer in answers
    ]
    said = [text.replace("maren", "").replace("nobody", "") for text in said]
    assert said[0] == said[1]


@pytest.mark.usefixtures("database")
def test_an_account_waits_after_ten_failures() -> None:
    """Then even the right password waits; another account goes on."""
    make_account("Other", GOOD, ["auditor"])
    names = ("maren", "MAREN", " Maren")
    statuses = [_try(_client(), names[n % 3], "wrong") for n in range(10)]

    assert statuses[-1] == HTTPStatus.TOO_MANY_REQUESTS
    assert _try(_client(), "maren", GOOD) == HTTPStatus.TOO_MANY_REQUESTS
    assert _try(_client(), "other", GOOD) == HTTPStatus.FOUND


@pytest.mark.usefixtures("database")
def test_an_address_waits_after_thirty_failures() -> None:
    """Guessing at many names is slowed by the address it comes from."""
    statuses = [_try(_client(), f"name-{n % 6}", "wrong") for n in range(30)]

    assert statuses.count(HTTPStatus.TOO_MANY_REQUESTS) == 0
    assert _try(_client(), "maren", GOOD) == HTTPStatus.TOO_MANY_REQUESTS


def test_an_attachment_goes_out_as_a_download(database: Database) -> None:
    """A paper is never run by a browser; its name is ours."""
    kept = AttachmentStore(folder=shipped.DATA_DIR).keep(b"%PDF-1.7 x", now=NOON)
    client = _client()
    _try(client, "maren", GOOD)

    answer = client.get(reverse("attachment", kwargs={"digest": kept.sha256}))

    assert (answer.content, answer.headers["Content-Type"]) == (b"%PDF-1.7 x", "application/pdf")
    assert answer.headers["Content-Disposition"].startswith("attachment;")
    assert "sandbox" in answer.headers["Content-Security-Policy"]
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert database.vendor == "sqlite"


@pytest.mark.usefixtures("database")
def test_health() -> None:
    """A store that takes entries is well; one without a guard is read-only, and says no more."""
    well = _client().get(reverse("healthz"))
    assert (well.status_code, well.json()["amiss"]) == (HTTPStatus.OK, [])
    # No worker runs beside a test's client, and the page says so.
    assert (well.json()["status"], well.json()["worker"]) == ("slow-work-waits", "silent")

    with connection.cursor() as cursor:
        cursor.execute("DROP TRIGGER look_no_delete")
    answer = _client().get(reverse("healthz"))

    assert answer.status_code == HTTPStatus.SERVICE_UNAVAILABLE
    told = json.loads(answer.content)
    assert (told["status"], told["amiss"]) == ("read-only", ["store.guard_missing"])


@pytest.mark.usefixtures("database")
def test_headers_of_every_page() -> None:
    """No inline script, no frame, nothing from elsewhere."""
    policy = _client().get(reverse("sign-in")).headers["Content-Security-Policy"]

    rules = dict(rule.strip().split(" ", 1) for rule in policy.split(";"))
    assert (rules["default-src"], rules["script-src"], rules["frame-ancestors"]) == (
        "'none'", "'self'", "'none'",
    )  # fmt: skip
    assert "unsafe" not in policy
