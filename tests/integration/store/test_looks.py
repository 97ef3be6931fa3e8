"""Whoever sees what a person was exposed to is kept, and the person can see who did."""

import re
from http import HTTPStatus

import pytest
from django.test import Client
from django.urls import reverse
from tests.integration.known_people import show_factor, signed_in
from tests.integration.store_databases import Databases
from tests.web.pages import send
from tests.web.records import account

from sootline.storage.models import Look, User


@pytest.fixture
def officer(databases: Databases) -> Client:
    """Sit at a record with a call in it, as its safety officer."""
    client = account(databases, owners=("219", "223"))
    _, where, _ = send(client, "/call/", title="car fire", began="00:01", rode=["219", "223"])
    for _ in range(2):
        _, where, _ = send(client, where, places=["inside"], smoke="yes")
    return client


def _call(client: Client) -> str:
    html = client.get(reverse("call")).content.decode()
    return str(re.findall(r'class="calls" href="/call/([^"]+)/"', html)[0])


def _looked(client: Client, route: str, **kwargs: str) -> set[tuple[str, str, str]]:
    """Return whose looks at whom a page leaves, none having been noted before."""
    before = set(Look.objects.values_list("pk", flat=True))
    answer = client.get(reverse(route, kwargs=kwargs))
    assert answer.status_code == HTTPStatus.OK
    rows = Look.objects.exclude(pk__in=before)
    return set(rows.values_list("actor", "member", "what"))


@pytest.mark.parametrize(
    ("route", "kwargs", "seen"),
    [
        ("call-one", {"call": "*"}, {"219", "223"}),
        ("person", {"member": "223"}, {"223"}),
        ("needs", {}, {"219", "223"}),
    ],
)
def test_a_page_leaves_its_look(
    officer: Client, route: str, kwargs: dict[str, str], seen: set[str]
) -> None:
    """Who, at whom, on which screen."""
    if "call" in kwargs:
        kwargs = {"call": _call(officer)}

    looked = _looked(officer, route, **kwargs)

    assert looked == {("118", member, route.removesuffix("-one")) for member in seen}


@pytest.mark.usefixtures("officer")
def test_taking_a_call_in_is_a_look_too() -> None:
    """Whoever is asked where somebody was sees what was said so far."""
    found = set(Look.objects.values_list("actor", "member", "what"))

    assert {("118", "219", "call-person"), ("118", "223", "call-person")} <= found


def test_the_page_of_a_piece_is_a_look_at_its_owner(officer: Client) -> None:
    """Why it needs what it needs tells what its owner was in."""
    from sootline.storage.models import ComponentRow  # noqa: PLC0415

    piece = ComponentRow.objects.filter(owner="223").values_list("pk", flat=True)[0]

    assert _looked(officer, "piece", piece=piece) == {("118", "223", "piece")}


def test_drawing_a_page_again_is_the_same_look(officer: Client) -> None:
    """Within a quarter of an hour it is noted once."""
    assert _looked(officer, "person", member="219")
    assert not _looked(officer, "person", member="219")


@pytest.mark.usefixtures("officer")
def test_nobodys_look_at_their_own_is_noted() -> None:
    """It is theirs."""
    own = signed_in(User.objects.make("223", None, ["gear-officer"], member="223"))

    assert not _looked(own, "person", member="223")


def test_a_member_sees_who_looked_and_at_nobody_elses(officer: Client) -> None:
    """One's own list needs no right but to be signed in; others' takes the auditor's."""
    officer.get(reverse("person", kwargs={"member": "223"}))
    own = signed_in(User.objects.make("223", None, ["member"], member="223"))
    auditor = signed_in(User.objects.make("aud", None, ["auditor"], member="900"))
    page = reverse("looks-of", kwargs={"member": "223"})

    assert "<td>118</td>" in own.get(reverse("looks")).content.decode()
    assert own.get(page).status_code == HTTPStatus.FORBIDDEN
    assert "<td>118</td>" in auditor.get(page).content.decode()
    assert show_factor(officer).get(page).status_code == HTTPStatus.FORBIDDEN
