"""Every route stands in the table of rights, and every request is held to it."""

from collections.abc import Iterator
from http import HTTPStatus

import pytest
from django.test import Client, override_settings
from django.urls import URLPattern, URLResolver, get_resolver, reverse
from tests.integration.known_people import show_factor, with_factor
from tests.integration.store_databases import Databases

from sootline.storage.models import User
from sootline.tasks.rights import GUARDED, RIGHTS, Right, Role, may
from sootline.web.access import can
from sootline.web.routes import ROUTES

GOOD = "brass-kettle-lantern-42x"


def _patterns(found: list[URLPattern | URLResolver]) -> Iterator[URLPattern]:
    for one in found:
        if isinstance(one, URLPattern):
            yield one
        else:
            yield from _patterns(one.url_patterns)


def _routes() -> dict[str, str]:
    """Return an address for every route there is."""
    found = {}
    for pattern in _patterns(get_resolver().url_patterns):
        converters = pattern.pattern.converters
        words = {name: type(one).__name__ for name, one in converters.items()}
        values = {name: 1 if kind == "IntConverter" else "x" for name, kind in words.items()}
        found[str(pattern.name)] = reverse(str(pattern.name), kwargs=values)
    return found


@pytest.fixture(scope="module", autouse=True)
def _one(databases: Databases) -> None:
    databases.fresh("sqlite")
    for role in Role:
        with_factor(User.objects.make(role.value, None, [role.value], member=role.value))
    User.objects.make("nobody", None, ["king"], member="0")


def _client(name: str | None, *, shown: bool = True) -> Client:
    client = Client(raise_request_exception=False, SERVER_NAME="localhost")
    if name is not None:
        user = User.objects.get(name=name)
        client.force_login(user, backend="django.contrib.auth.backends.ModelBackend")
        if shown:
            show_factor(client)
    return client


def test_every_route_stands_in_the_table() -> None:
    """No route is without its row, and no row without its route."""
    assert set(_routes()) == set(ROUTES)


def test_every_office_has_rights() -> None:
    """Each office has a row, and each right somebody."""
    assert set(RIGHTS) == set(Role)
    assert frozenset().union(*RIGHTS.values()) == set(Right)


def test_only_named_offices_see_health_data() -> None:
    """What a person was in is for the safety and the infection officer.

    Source: common practice, no published source.
    """
    seeing = {role for role in Role if may([role], Right.SEE_EXPOSURE)}

    assert seeing == {Role.SAFETY_OFFICER, Role.INFECTION_OFFICER}


@pytest.mark.parametrize("name", [None, "nobody", *(role.value for role in Role)])
def test_the_matrix(name: str | None) -> None:
    """Every office at every route, looking and sending: refused exactly where the table says."""
    client = _client(name)
    roles = [name] if name else []
    wrong = []
    for route, address in _routes().items():
        access = ROUTES[route]
        if access.open or route == "sign-out":
            continue
        for method, rights in (("get", [access.see]), ("post", [access.see, access.send])):
            status = getattr(client, method)(address).status_code
            allowed = all(may(roles, right) for right in rights if right)
            if method == "post" and not access.sends:
                good = status == HTTPStatus.METHOD_NOT_ALLOWED
            elif name is None:
                good = status == HTTPStatus.FOUND
            elif allowed:
                good = status not in (HTTPStatus.FORBIDDEN, HTTPStatus.UNAUTHORIZED)
            else:
                good = status == HTTPStatus.FORBIDDEN
            if not good:
                wrong.append((route, method, status))

    assert wrong == []


@pytest.mark.parametrize("role", [role.value for role in Role])
def test_what_takes_a_second_factor(role: str) -> None:
    """Whatever could undo or carry off much asks for it first, at every such route."""
    client = _client(role, shown=False)
    wrong = []
    for route, address in _routes().items():
        access = ROUTES[route]
        for method, rights in (("get", {access.see}), ("post", {access.see, access.send})):
            if not rights & GUARDED or not all(may([role], one) for one in rights if one):
                continue
            if method == "post" and not access.sends:
                continue
            answer = getattr(client, method)(address)
            if answer.status_code != HTTPStatus.FORBIDDEN or b"_code" not in answer.content:
                wrong.append((route, method, answer.status_code))

    assert wrong == []


def test_which_rights_take_a_second_factor() -> None:
    """To administer, correct others' entries, retire, export; and to run the station's devices."""
    assert {right.value for right in GUARDED} == {
        "administer", "correct-others", "retire", "export", "run-station",
    }  # fmt: skip
    assert Right.REPORT not in GUARDED


@pytest.mark.parametrize("method", ["put", "patch", "delete", "options", "trace"])
def test_other_methods_are_refused(method: str) -> None:
    """Nothing but looking and sending is known."""
    answer = getattr(_client("officer"), method)(reverse("front"))

    assert answer.status_code == HTTPStatus.METHOD_NOT_ALLOWED


def test_a_route_that_is_missing_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """Forgetting a row opens nothing."""
    left = {name: row for name, row in ROUTES.items() if name != "front"}
    monkeypatch.setattr("sootline.web.access.ROUTES", left)

    assert _client("officer").get(reverse("front")).status_code == HTTPStatus.FORBIDDEN


def test_an_office_taken_away_counts_at_once() -> None:
    """The next request is refused."""
    user = User.objects.make("once", None, ["auditor"], member="7")
    client = _client("once")
    address = reverse("attachment", kwargs={"digest": "x"})
    assert client.get(address).status_code == HTTPStatus.NOT_FOUND

    user.roles = []
    user.save()

    assert client.get(address).status_code == HTTPStatus.FORBIDDEN


@override_settings(DEMO=True)
def test_a_demonstration_asks_nobody() -> None:
    """The invented department is shown without signing in."""
    address = reverse("attachment", kwargs={"digest": "x"})

    assert _client(None).get(address).status_code == HTTPStatus.NOT_FOUND
    assert can(None, Right.ADMINISTER)


def test_what_a_page_may_show() -> None:
    """A page asks the same table."""
    assert can(User.objects.get(name="auditor"), Right.SEE_HISTORY)
    assert not can(User.objects.get(name="auditor"), Right.EXPORT)
    assert not can(None, Right.SEE_OWN)


def test_nothing_stays_in_a_cache() -> None:
    """Pages say so."""
    assert _client(None).get(reverse("sign-in")).headers["Cache-Control"] != ""
    assert _client(None).get(reverse("healthz")).headers["Cache-Control"] == "no-store"
