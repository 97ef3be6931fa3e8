"""No station sees what is another's alone: every route, every office, looking and sending."""

import datetime as dt
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from http import HTTPStatus

import pytest
from django.test import Client
from django.urls import URLPattern, URLResolver, get_resolver, reverse
from tests.integration.known_people import signed_in, with_factor
from tests.integration.store_databases import Databases
from tests.web.records import act

from sootline.core.basis import CallId, ComponentId, DateSpan, MemberId
from sootline.core.exposure.calls import Call, Presence
from sootline.core.gear import Component
from sootline.core.job.jobs import Member
from sootline.core.job.things import DepartmentFacts
from sootline.core.ledger import ItemKind, item
from sootline.storage.attachments import AttachmentStore
from sootline.storage.models import Look, User
from sootline.storage.register import RegisterStore
from sootline.storage.remembered import RememberedRegister, remember
from sootline.tasks.record_call import record_call
from sootline.tasks.register_gear import register_components
from sootline.tasks.register_things import describe_department, register_things
from sootline.tasks.rights import Role
from sootline.web.routes import ROUTES
from sootline.wiring.demo import demo_job
from sootline.wiring.store import open_book, open_store, prepare

_STATIONS = ("7", "9")
_ONES = "QX"
# Routes that are about no station: one's own account, the device, whether the program is well.
_NOWHERE = {"sign-out", "account-do", "second-factor"}


@dataclass(frozen=True, kw_only=True)
class Side:
    """What one station has, under names that nothing else on a page has.

    Args:
        mark: stands in each of its names.
    """

    station: str
    mark: str

    @property
    def member(self) -> str:
        """Whom it has."""
        return f"{self.mark}-21"

    @property
    def piece(self) -> str:
        """What the member has."""
        return f"{self.mark}-0401"

    @property
    def call(self) -> str:
        """Where the member was."""
        return f"{self.mark}-call"


_SIDES = tuple(Side(station=one, mark=f"{_ONES}{one}{one}") for one in _STATIONS)


def _gear(side: Side) -> list[Component]:
    came = DateSpan.parse(str(dt.datetime.now(dt.UTC).date().replace(day=1)))
    shell, hood = (
        next(one for one in demo_job().components if one.kind == kind)
        for kind in ("coat-shell", "hood")
    )
    return [
        replace(one, id=ComponentId(name), owner=MemberId(side.member), set=None, made=came,
                in_service=came, records=())
        for one, name in ((shell, side.piece), (hood, f"{side.mark}-0402"))
    ]  # fmt: skip


@pytest.fixture(scope="module", autouse=True)
def _record(databases: Databases) -> None:
    """Make a record of two stations, each with a member, gear and a call nobody else was at."""
    databases.fresh("sqlite")
    prepare(open_store())
    book, job = open_book(), demo_job()
    describe_department(book, act("dep"), DepartmentFacts(department=job.department))
    for side in _SIDES:
        register_things(book, act(f"m{side.mark}"),
                        [Member(id=MemberId(side.member), crew=f"{side.mark}-engine")])  # fmt: skip
        register_components(book, act(f"g{side.mark}"), _gear(side), station=side.station)
        at = dt.datetime.now(dt.UTC).replace(microsecond=0) - dt.timedelta(hours=3)
        call = Call(id=CallId(side.call), at=at, title=f"{side.mark}-fire",
                    people=(Presence(member=MemberId(side.member)),))  # fmt: skip
        record_call(book, act(f"c{side.mark}"), call)
        for role in Role:
            name = f"{role.value}@{side.station}"
            with_factor(User.objects.make(name, None, [role.value], member=f"{name}",
                                          station=side.station))  # fmt: skip


def _patterns(found: list[URLPattern | URLResolver]) -> Iterator[URLPattern]:
    for one in found:
        if isinstance(one, URLPattern):
            yield one
        else:
            yield from _patterns(one.url_patterns)


def _addresses(side: Side) -> Iterator[tuple[str, str, bool]]:
    """List an address for every route, with a station's own names in it where it takes any.

    Yields:
        route, address, and whether it names something of the station.
    """
    named = {
        "call": side.call,
        "member": side.member,
        "piece": side.piece,
        "key": f"{side.member}/coat",
    }
    for pattern in _patterns(get_resolver().url_patterns):
        converters = pattern.pattern.converters
        # A photo's name is a digest, an account's a person's.
        named["name"] = "x" if pattern.name == "photo" else f"officer@{side.station}"
        values = {
            name: named.get(name, 1 if type(one).__name__ == "IntConverter" else "x")
            for name, one in converters.items()
        }
        about = bool(set(converters) & {"call", "member", "piece", "key"})
        yield str(pattern.name), reverse(str(pattern.name), kwargs=values), about


def _clients() -> Iterator[tuple[Side, Side, Role, Client]]:
    for side, other in (_SIDES, _SIDES[::-1]):
        for role in Role:
            user = User.objects.get(name=f"{role.value}@{side.station}")
            yield side, other, role, signed_in(user, shown=True)


def test_no_page_names_what_is_another_stations() -> None:
    """Every route there is, by every office of both stations."""
    leaks, broken, seen = [], [], set()
    for side, other, role, client in _clients():
        for route, address, _ in _addresses(side):
            if route in _NOWHERE:
                continue
            answer = client.get(address)
            html = b"".join(answer) if answer.streaming else answer.content
            if other.mark.encode() in html:
                leaks.append((route, role.value, side.station))
            if answer.status_code >= HTTPStatus.INTERNAL_SERVER_ERROR:
                broken.append((route, role.value, answer.status_code))
            if side.mark.encode() in html and answer.status_code == HTTPStatus.OK:
                seen.add(route)

    assert leaks == []
    assert broken == []
    # The test would find nothing where nothing is shown.
    assert {"front", "people", "person", "piece", "history", "call-one", "needs"} <= seen


def test_no_address_of_another_station_opens_or_takes_anything() -> None:
    """Neither looking nor sending; nothing is written down by trying."""
    opened = []
    before = open_store().head()
    for side, other, role, client in _clients():
        for route, address, about in _addresses(other):
            if not about:
                continue
            for method in ("get", "post"):
                answer = getattr(client, method)(address)
                if answer.status_code in (HTTPStatus.OK, HTTPStatus.UNPROCESSABLE_ENTITY):
                    opened.append((route, method, role.value, side.station))

    assert opened == []
    assert open_store().head() == before


def test_looks_of_one_station_name_nobody_of_another() -> None:
    """Whatever was opened above, no look crosses from station to station."""
    for look in Look.objects.all():
        assert look.actor.endswith(f"@{look.member[2]}")


def test_every_route_was_tried() -> None:
    """The table of rights, route by route: none is left out of this test."""
    assert {route for route, _, _ in _addresses(_SIDES[0])} >= set(ROUTES)


@pytest.mark.parametrize("form", ["rows", "remembered"])
def test_lists_are_separated_where_they_are_read(form: str) -> None:
    """Components, people and calls; from the database and from memory alike."""
    for side, other in (_SIDES, _SIDES[::-1]):
        register = (
            RegisterStore(station=side.station)
            if form == "rows"
            else RememberedRegister(remember(), side.station)
        )
        listed = [
            *(known.component.id for known in register.components()),
            *(one.item for one in register.things(ItemKind.MEMBER)),
            *(one.item for one in register.things(ItemKind.CALL)),
        ]
        assert len([one for one in listed if side.mark in one]) == 4
        assert not any(other.mark in one for one in listed)


def test_a_call_of_both_shows_each_its_own_and_keeps_everybody() -> None:
    """What one station writes about it takes nobody of the other away."""
    name = CallId("of-both")
    at = dt.datetime.now(dt.UTC).replace(microsecond=0) - dt.timedelta(hours=2)
    people = tuple(Presence(member=MemberId(side.member)) for side in _SIDES)
    record_call(open_book(), act("both"), Call(id=name, at=at, title="both", people=people))
    user = User.objects.get(name=f"safety-officer@{_STATIONS[0]}")
    client = signed_in(user, shown=True)
    page = reverse("call-one", kwargs={"call": name})
    before = client.get(page).content.decode()
    path = reverse("call-person", kwargs={"call": name, "member": _SIDES[0].member})

    client.post(path, {"places": ["inside"], "smoke": "yes"})

    assert _SIDES[0].member in before
    assert _SIDES[1].member not in before
    life = open_book().register.thing(item(ItemKind.CALL, name))
    assert life is not None
    said = re.findall(rf"{_ONES}\d\d-21", str(life.facts["people"]))
    assert set(said) == {side.member for side in _SIDES}


def test_a_photo_of_another_stations_gear_is_absent() -> None:
    """By its hash alone nobody reaches it."""
    from sootline.core.ledger import EntryKind, component  # noqa: PLC0415
    from sootline.project import settings as shipped  # noqa: PLC0415

    kept = AttachmentStore(folder=shipped.DATA_DIR).keep(b"%PDF-1.7 q", now=dt.datetime.now(dt.UTC))
    said = {"sha256": kept.sha256}
    piece = component(ComponentId(_SIDES[1].piece))
    open_store().append([act("photo").entry(EntryKind.ATTACHED, piece, said)])
    path = reverse("attachment", kwargs={"digest": kept.sha256})

    found = [
        signed_in(User.objects.get(name=f"auditor@{station}")).get(path).status_code
        for station in _STATIONS
    ]

    assert found == [HTTPStatus.NOT_FOUND, HTTPStatus.OK]
