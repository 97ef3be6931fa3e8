"""The second factor: asked once, never twice by one code, and nothing typed is lost on the way."""

import re
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from http import HTTPStatus

import pytest
from django.db import connection
from django.test import Client, override_settings
from django.urls import reverse
from tests.integration.known_people import GOOD, SALT, code_now, signed_in, with_factor
from tests.integration.store_databases import Database, Databases

from sootline.storage.accounts import make_account
from sootline.storage.guesses import MustWaitError
from sootline.storage.models import RecoveryCodeRow, SecondFactor, User
from sootline.storage.second_factors import check_code, secret_of
from sootline.tasks.second_factor import code_at, step_at
from sootline.wiring.accounts import reset_factor
from sootline.wiring.store import now, open_store, prepare


@pytest.fixture(scope="module", autouse=True)
def quick_hashes() -> Iterator[None]:
    """Hash passwords fast: how that is done is another test's matter, and slow on purpose."""
    with override_settings(PASSWORD_HASHERS=["django.contrib.auth.hashers.MD5PasswordHasher"]):
        yield


@pytest.fixture
def maren(databases: Databases) -> User:
    """Make a store with one administrator in it."""
    databases.fresh("sqlite")
    prepare(open_store())
    return make_account("Maren", GOOD, ["administrator", "gear-officer"], member="118")


def _typed(html: str, name: str) -> list[str]:
    return re.findall(rf'name="{name}" value="([^"]*)"', html)


def test_setting_up_shows_ten_codes_once_and_goes_on(maren: User) -> None:
    """The authenticator's first code takes it in; what waited for it is sent on."""
    client, path = signed_in(maren), reverse("devices")
    asked = client.post(path, {"name": "Tablet", "place": "Wash room"}).content.decode()
    assert _typed(asked, "_back") == [path]
    first = client.post(reverse("second-factor"), {"_back": path, "name": "Tablet"})
    assert "<svg" in first.content.decode()
    salt = client.session["second-factor-salt"]

    shown = client.post(
        reverse("second-factor"),
        {"_back": path, "name": "Tablet", "place": "Wash room", "_password": GOOD,
         "_new_code": code_now(salt=salt)},
    ).content.decode()  # fmt: skip

    codes = re.findall(r'<li class="number">([^<]+)</li>', shown)
    assert len(codes) == RecoveryCodeRow.objects.count() == 10
    assert (_typed(shown, "name"), _typed(shown, "place")) == (["Tablet"], ["Wash room"])
    assert f'action="{path}"' in shown
    assert client.get(path).status_code == HTTPStatus.OK
    assert codes[0] not in client.get(reverse("account")).content.decode()


@pytest.mark.parametrize(("password", "steps"), [("wrong", 0), (GOOD, 5)])
def test_setting_up_takes_the_password_and_a_right_code(
    maren: User, password: str, steps: int
) -> None:
    """A screen that somebody left, or a picture that was not scanned, sets nothing up."""
    client = signed_in(maren)
    client.get(reverse("second-factor"))
    code = code_now(salt=client.session["second-factor-salt"], steps=steps)

    answer = client.post(reverse("second-factor"), {"_password": password, "_new_code": code})

    assert answer.status_code == HTTPStatus.UNPROCESSABLE_ENTITY
    assert not SecondFactor.objects.exists()


def test_another_phone_needs_the_present_one(maren: User) -> None:
    """With the password alone nobody puts an own phone in place of the account's."""
    client = signed_in(with_factor(maren))

    answer = client.get(reverse("second-factor"))

    assert answer.status_code == HTTPStatus.FORBIDDEN
    assert b"_code" in answer.content


def test_what_was_typed_is_done_once_the_code_is_right(maren: User) -> None:
    """The page carries every field; with the code the very act goes through."""
    make_account("Other", GOOD, ["member"], member="219")
    client, path = (
        signed_in(with_factor(maren)),
        reverse("accounts-do", kwargs={"deed": "offices", "name": "other"}),
    )
    asked = client.post(path, {"roles": ["officer", "inspector"]})
    html = asked.content.decode()
    assert asked.status_code == HTTPStatus.FORBIDDEN
    assert _typed(html, "roles")[:2] == ["officer", "inspector"]

    done = client.post(path, {"roles": ["officer", "inspector"], "_code": code_now()})

    assert done.status_code == HTTPStatus.FOUND
    assert User.objects.get(name="other").roles == ["inspector", "officer"]
    last = list(open_store().entries())[-1].read_header()
    assert (last.actor, last.established.value) == ("118", "second-factor")


def test_it_is_asked_for_once_a_session(maren: User) -> None:
    """A page that was looked for opens, and so does the next."""
    client, path = signed_in(with_factor(maren)), reverse("accounts")

    answer = client.post(path, {"_code": code_now(), "_then": "look"})

    assert (answer.status_code, answer.headers["Location"]) == (HTTPStatus.FOUND, path)
    assert client.get(path).status_code == HTTPStatus.OK
    assert client.get(reverse("devices")).status_code == HTTPStatus.OK
    assert signed_in(maren).get(path).status_code == HTTPStatus.FORBIDDEN


def test_a_code_that_was_seen_cannot_be_used_again(maren: User) -> None:
    """Replayed in another session within its half minute, it counts no more."""
    with_factor(maren)
    code, path = code_now(), reverse("accounts")
    assert signed_in(maren).post(path, {"_code": code, "_then": "look"}).status_code == 302

    again = signed_in(maren).post(path, {"_code": code, "_then": "look"})

    assert again.status_code == HTTPStatus.FORBIDDEN


def test_of_many_requests_with_one_code_one_comes_through(database: Database) -> None:
    """Sent eight times at once, it counts once; on both databases."""
    prepare(open_store())
    user = with_factor(User.objects.make("maren", None, [], member="118"))
    code = code_now()

    def check(_: int) -> bool:
        try:
            return check_code(user, code, now())
        except MustWaitError:
            return False
        finally:
            connection.close()

    with ThreadPoolExecutor(8) as pool:
        found = list(pool.map(check, range(8)))

    assert sum(found) == 1
    assert database.vendor in ("sqlite", "postgresql")


def test_guessing_at_codes_waits(maren: User) -> None:
    """After five wrong ones in a row even the right one is not looked at."""
    with_factor(maren)
    client, path = signed_in(maren), reverse("accounts")
    for _ in range(5):
        client.post(path, {"_code": "000000", "_then": "look"})

    answer = client.post(path, {"_code": code_now(), "_then": "look"})

    assert answer.status_code == HTTPStatus.FORBIDDEN
    assert "Too many wrong tries" in answer.content.decode()


def test_a_recovery_code_stands_in_once(maren: User) -> None:
    """It is kept as a hash alone, and gone when it was used."""
    client = signed_in(maren)
    client.get(reverse("second-factor"))
    code = code_now(salt=client.session["second-factor-salt"])
    html = client.post(reverse("second-factor"), {"_password": GOOD, "_new_code": code})
    recovery = re.findall(r'<li class="number">([^<]+)</li>', html.content.decode())[4]
    path, sent = reverse("accounts"), {"_code": recovery.upper(), "_then": "look"}

    statuses = [signed_in(maren).post(path, sent).status_code for _ in range(2)]

    assert statuses == [HTTPStatus.FOUND, HTTPStatus.FORBIDDEN]
    assert RecoveryCodeRow.objects.count() == 9
    assert not RecoveryCodeRow.objects.filter(digest__contains=recovery).exists()


def test_the_session_has_another_name_once_the_code_was_shown(maren: User) -> None:
    """Whoever planted or saw the old name has nothing of it."""
    client = signed_in(with_factor(maren))
    before = client.session.session_key
    client.post(reverse("accounts"), {"_code": code_now(), "_then": "look"})
    planted = Client(SERVER_NAME="localhost")
    planted.cookies["session"] = str(before)

    assert client.session.session_key != before
    assert planted.get(reverse("accounts")).headers["Location"].startswith(reverse("sign-in"))


def test_the_console_takes_it_away(maren: User) -> None:
    """For a lost phone: every session ends, and the account sets up another."""
    client = signed_in(with_factor(maren), shown=True)
    assert client.get(reverse("accounts")).status_code == HTTPStatus.OK

    reset_factor("maren")

    assert client.get(reverse("account")).status_code == HTTPStatus.FOUND
    assert b"_back" in signed_in(maren, shown=True).get(reverse("accounts")).content


def test_an_administrator_does_not_take_away_an_own_one(maren: User) -> None:
    """A stolen session would only have to ask."""
    client = signed_in(with_factor(maren), shown=True)

    path = reverse("accounts-do", kwargs={"deed": "factor", "name": "maren"})

    assert client.post(path).status_code == HTTPStatus.UNPROCESSABLE_ENTITY
    assert SecondFactor.objects.exists()


def test_the_store_alone_tells_no_codes(maren: User) -> None:
    """What the tables hold is no secret: that takes the installation's own."""
    row = with_factor(maren).factor
    here = step_at(now())

    assert code_at(bytes.fromhex(row.salt), here) != code_now()
    with override_settings(SECRET_KEY="another"):  # noqa: S106  # of the test's own
        assert secret_of(SALT) != secret_of(SALT, "yet another")


def test_a_new_secret_key_keeps_second_factors(maren: User) -> None:
    """While the old key stands among the old ones, codes made by it count."""
    from django.conf import settings  # noqa: PLC0415

    user, code, old = with_factor(maren), code_now(), settings.SECRET_KEY
    with override_settings(SECRET_KEY="another", SECRET_KEY_FALLBACKS=[old]):  # noqa: S106
        assert check_code(user, code, now())


def test_no_backup_holds_it() -> None:
    """Second factors, PINs and devices are set up anew after a restore, and say so nowhere else."""
    from sootline.storage.backups import _OTHERS  # noqa: PLC0415

    assert {form.__name__ for form in _OTHERS} == {"User", "Look", "Attachment"}
