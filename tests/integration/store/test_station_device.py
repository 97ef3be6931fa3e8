"""A device of the station: it stays signed in as itself, and each act takes a name and a PIN."""

import re
from collections.abc import Iterator
from http import HTTPStatus

import pytest
from django.contrib.sessions.models import Session
from django.test import Client, override_settings
from django.urls import reverse
from tests.integration.known_people import GOOD, show_factor, signed_in, with_factor
from tests.integration.store_databases import Databases
from tests.web.records import account

from sootline.core.basis import BadInputError
from sootline.core.ledger import EntryKind
from sootline.storage.accounts import make_account, set_roles
from sootline.storage.models import Device, Guesses, Pin, User
from sootline.storage.pins import set_pin
from sootline.wiring.people import enrol_device, find_device, people_policy
from sootline.wiring.store import now, open_store

PIN = "480913"


@pytest.fixture(scope="module", autouse=True)
def quick_hashes() -> Iterator[None]:
    """Hash passwords fast: how that is done is another test's matter, and slow on purpose."""
    with override_settings(PASSWORD_HASHERS=["django.contrib.auth.hashers.MD5PasswordHasher"]):
        yield


@pytest.fixture
def officer(databases: Databases) -> Client:
    """Sit at a record with a department in it, as an officer who has shown a second factor."""
    client = account(databases, roles=("officer", "safety-officer"))
    with_factor(User.objects.get(name="118"))
    return show_factor(client)


@pytest.fixture
def device(officer: Client) -> Client:
    """Stand before an enrolled device; 219 helps in the wash room and has a PIN."""
    helper = make_account("219", GOOD, ["helper"], member="219")
    set_pin(helper, PIN, now(), least=6)
    officer.post(reverse("devices"), {"name": "Wash-room tablet", "place": "Wash room"})
    return officer


def _person(name: str = "219") -> str:
    return str(User.objects.get(name=name).pk)


def _begun(client: Client, path: str, **typed: str) -> str:
    html = client.post(path, typed).content.decode()
    return str(re.findall(r'name="_begun" value="([^"]+)"', html)[0])


def _act(client: Client, path: str, pin: str = PIN, **typed: str) -> int:
    """Do something at a device by name and PIN; return the status."""
    begun = _begun(client, path, **typed)
    sent = {**typed, "_begun": begun, "_name": _person(), "_pin": pin, "_go": "1"}
    return client.post(path, sent).status_code


def test_enrolling_signs_the_officer_out_and_the_device_in(device: Client) -> None:
    """It shows the grid and the wash room, not who was in what, and nobody's account."""
    routes = ("front", "wash", "check", "call", "people", "account", "accounts")
    seen = {route: device.get(reverse(route)).status_code for route in routes}

    assert not Session.objects.exists()
    assert (seen["front"], seen["wash"], seen["check"]) == (200, 200, 200)
    assert {seen[route] for route in ("call", "people", "account", "accounts")} == {302}
    assert "Wash-room tablet" in device.get(reverse("front")).content.decode()


def test_its_cookie_is_out_of_reach_of_scripts_and_kept_as_a_hash(device: Client) -> None:
    """A copy of the store does not make a device."""
    cookie = device.cookies["device"]
    token = cookie.value.split(":")[0].split(" ")[-1]

    assert (cookie["httponly"], cookie["samesite"]) == (True, "Lax")
    assert int(cookie["max-age"]) > 300 * 24 * 3600
    assert Device.objects.get().digest not in cookie.value
    assert len(token) >= 43


def test_an_act_is_recorded_with_the_person_and_the_device(device: Client) -> None:
    """The entry says who, that it was by PIN, and at which device."""
    status = _act(device, reverse("wash-plan"), goal="all-done")

    assert status == HTTPStatus.FOUND
    planned = [one.read_header() for one in open_store().entries()][-1]
    assert (planned.actor, planned.established.value, planned.device) == (
        "219", "pin", "wash-room-tablet",
    )  # fmt: skip
    assert planned.kind in set(EntryKind)


def test_every_act_asks_anew(device: Client) -> None:
    """The one before says nothing of who stands there now."""
    path = reverse("wash-plan")
    assert _act(device, path, goal="all-done") == HTTPStatus.FOUND

    again = device.post(path, {"goal": "all-done"})

    assert again.status_code == HTTPStatus.FORBIDDEN
    assert "_begun" in again.content.decode()


def test_what_was_typed_comes_along_from_tile_to_pad(device: Client) -> None:
    """Every page on the way holds it; each key is a round where no script runs."""
    path = reverse("wash-plan")
    typed = {"goal": "deadline", "by": "07:30"}
    begun = _begun(device, path, **typed)
    html = ""
    pin = ""
    for digit in PIN:
        sent = {**typed, "_begun": begun, "_name": _person(), "_pin": pin, "_digit": digit}
        html = device.post(path, sent).content.decode()
        pin = re.findall(r'name="_pin"[^>]*value="(\d*)"', html)[0]

    assert pin == PIN
    assert 'name="goal" value="deadline"' in html
    assert 'name="by" value="07:30"' in html


def test_only_those_who_may_are_offered(device: Client) -> None:
    """A member who never works in the wash room is no tile there; nor is one without a PIN."""
    member = make_account("223", GOOD, ["member"], member="223")
    set_pin(member, PIN, now(), least=6)
    make_account("224", GOOD, ["helper"], member="224")

    html = device.post(reverse("wash-plan"), {"goal": "all-done"}).content.decode()

    assert re.findall(r'name="_name" value="\d+">([^<]+)<', html) == ["219"]


def test_a_name_that_was_not_offered_does_nothing(device: Client) -> None:
    """Sent by hand, it is asked again."""
    member = make_account("223", GOOD, ["member"], member="223")
    set_pin(member, PIN, now(), least=6)
    path = reverse("wash-plan")
    begun = _begun(device, path)
    sent = {"_begun": begun, "_name": str(member.pk), "_pin": PIN, "_go": "1", "goal": "all-done"}

    assert device.post(path, sent).status_code == HTTPStatus.FORBIDDEN
    assert not any(one.read_header().actor == "223" for one in open_store().entries())


def test_guessing_at_a_pin_waits(device: Client) -> None:
    """After five wrong ones in a row the right one is not looked at, at any device."""
    path = reverse("wash-plan")
    statuses = [_act(device, path, pin="000001", goal="all-done") for _ in range(6)]

    assert statuses == [403] * 5 + [429]
    assert _act(device, path, goal="all-done") == HTTPStatus.TOO_MANY_REQUESTS
    assert Guesses.objects.get(subject=f"pin:{_person()}").failures == 5


def test_a_first_pin_is_changed_before_it_counts(device: Client) -> None:
    """The act waits until the person has chosen one that nobody else knows."""
    set_pin(User.objects.get(name="219"), "771199", now(), least=6, first=True)
    path = reverse("wash-plan")
    begun = _begun(device, path, goal="all-done")
    sent = {"goal": "all-done", "_begun": begun, "_name": _person(), "_pin": "771199", "_go": "1"}
    asked = device.post(path, sent)
    same = device.post(path, {**sent, "_new": "771199", "_again": "771199"})
    differ = device.post(path, {**sent, "_new": "480913", "_again": "480914"})
    done = device.post(path, {**sent, "_new": "480913", "_again": "480913"})

    assert (asked.status_code, same.status_code, differ.status_code) == (403, 422, 422)
    assert done.status_code == HTTPStatus.FOUND
    assert not Pin.objects.get(user__name="219").first


def test_what_nobody_finished_is_closed_and_the_device_stays(
    device: Client, monkeypatch: pytest.MonkeyPatch
) -> None:
    """After the idle time of the policy the PIN page of before leads back to the grid."""
    path = reverse("wash-plan")
    begun = _begun(device, path, goal="all-done")
    later = now().timestamp() + people_policy().idle.total_seconds() + 1
    monkeypatch.setattr("django.core.signing.time.time", lambda: later)
    sent = {"goal": "all-done", "_begun": begun, "_name": _person(), "_pin": PIN, "_go": "1"}

    answer = device.post(path, sent)

    assert (answer.status_code, answer.headers["Location"]) == (302, reverse("front"))
    assert device.get(reverse("wash")).status_code == HTTPStatus.OK


def test_a_screen_left_alone_goes_back_by_itself(device: Client) -> None:
    """Without a script: the page says so in its header."""
    seconds = int(people_policy().idle.total_seconds())

    assert device.get(reverse("wash")).headers["Refresh"] == f"{seconds}; url=/"


def test_an_account_signed_in_at_a_device_ends_when_idle(device: Client) -> None:
    """A shared screen is no place for twelve hours."""
    device.force_login(User.objects.get(name="118"),
                       backend="django.contrib.auth.backends.ModelBackend")  # fmt: skip
    device.get(reverse("call"))

    assert device.session.get_expiry_age() == people_policy().idle.total_seconds()


def test_a_revoked_device_is_out_at_its_next_request(device: Client) -> None:
    """Also for who copied its cookie, and for an act already begun."""
    path = reverse("wash-plan")
    stolen = Client(SERVER_NAME="localhost")
    stolen.cookies["device"] = device.cookies["device"].value
    assert stolen.get(reverse("wash")).status_code == HTTPStatus.OK
    begun = _begun(stolen, path, goal="all-done")
    officer = signed_in(User.objects.get(name="118"), shown=True)

    officer.post(reverse("device-revoke", kwargs={"device": "wash-room-tablet"}))

    sent = {"goal": "all-done", "_begun": begun, "_name": _person(), "_pin": PIN, "_go": "1"}
    assert stolen.post(path, sent).status_code == HTTPStatus.FOUND
    assert stolen.get(reverse("wash")).headers["Location"].startswith(reverse("sign-in"))
    assert not any(one.read_header().actor == "219" for one in open_store().entries())


@pytest.mark.parametrize("change", ["another token", "unsigned", "empty"])
def test_a_made_up_cookie_is_no_device(device: Client, change: str) -> None:
    """Neither the name of a device nor its signature alone is enough."""
    value = device.cookies["device"].value
    made_up = {"another token": "x" + value, "unsigned": value.split(":")[0], "empty": ""}[change]
    client = Client(SERVER_NAME="localhost")
    client.cookies["device"] = made_up

    assert client.get(reverse("wash")).status_code == HTTPStatus.FOUND


def test_an_office_taken_away_counts_at_once(device: Client) -> None:
    """Whoever no longer works in the wash room is no tile at the next act."""
    path = reverse("wash-plan")
    begun = _begun(device, path, goal="all-done")
    set_roles("219", ["member"])
    sent = {"goal": "all-done", "_begun": begun, "_name": _person(), "_pin": PIN, "_go": "1"}

    assert device.post(path, sent).status_code == HTTPStatus.FORBIDDEN


@pytest.mark.usefixtures("officer")
def test_when_it_was_last_seen() -> None:
    """It is listed with that, to the minute; and the token is looked at in full."""
    row, token = enrol_device("Tablet", "Wash room", "", by="118", now=now())

    assert find_device(row.pk, token, now()) is not None
    assert find_device(row.pk, token[:-1], now()) is None
    assert enrol_device("Tablet", "Bay", "", by="118", now=now())[0].pk == "tablet-2"
    with pytest.raises(BadInputError):
        enrol_device(" ", "Bay", "", by="118", now=now())


def test_a_device_shows_its_own_station_alone(officer: Client) -> None:
    """And an officer of one station enrols none for another."""
    user = User.objects.get(name="118")
    user.station = "2"
    user.save()
    form = {"name": "Tablet", "place": "Bay", "station": "1"}

    officer.post(reverse("devices"), form)

    assert Device.objects.get().station == "2"


def test_a_member_enrols_nothing(databases: Databases) -> None:
    """Nor does a helper."""
    client = account(databases, roles=("member", "helper"))

    assert client.post(reverse("devices"), {"name": "x", "place": "y"}).status_code == 403
    assert not Device.objects.exists()
