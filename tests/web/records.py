"""A record of the tests' own: an invented department, its people and gear, and an account."""

import datetime as dt
from collections.abc import Callable, Collection
from dataclasses import replace

from django.test import Client
from tests.integration.store_databases import Databases

from sootline.core.basis import DateSpan, DeviceId, MemberId
from sootline.core.gear import Component
from sootline.core.job.things import DepartmentFacts
from sootline.core.ledger import ClockSource, Established, Occurred
from sootline.core.ledger.acts import Act
from sootline.tasks.register_gear import register_components
from sootline.tasks.register_things import describe_department, register_things
from sootline.wiring.demo import demo_job

EVERYTHING = ("gear-officer", "safety-officer")


def account(
    databases: Databases,
    *,
    described: bool = True,
    owners: Collection[str] | None = None,
    roles: tuple[str, ...] = EVERYTHING,
    member: str = "118",
    password: str | None = None,
    rename: Callable[[Component], Component] = lambda one: one,
) -> Client:
    """Make a record and sign in to it.

    Args:
        described: whether the department was.
        owners: whose gear is registered; None is everybody's, empty is nobody and nothing.
        roles: the offices of the account.
        member: whose account it is.
        password: of the account; None signs in without one.
        rename: gives a piece another number.
    """
    # Only once the framework is set up.
    from sootline.storage.models import User  # noqa: PLC0415
    from sootline.wiring.store import open_book, open_store, prepare  # noqa: PLC0415

    databases.fresh("sqlite")
    prepare(open_store())
    book, job = open_book(), demo_job()
    peopled = owners is None or bool(owners)
    if described:
        whole = DepartmentFacts(department=job.department, guides=job.guides,
                                wash_room=job.wash_room, riding=job.riding)  # fmt: skip
        bare = DepartmentFacts(department=job.department)
        describe_department(book, act("department"), whole if peopled else bare)
    if peopled:
        gear = [
            _fresh(rename(one)) for one in job.components if owners is None or one.owner in owners
        ]
        register_things(book, act("members"), job.members)
        register_components(book, act("gear"), gear)
    user = User.objects.make(member, password, roles, member=member)
    client = Client(SERVER_NAME="localhost")
    client.force_login(user, backend="django.contrib.auth.backends.ModelBackend")
    return client


def _fresh(component: Component) -> Component:
    """Return a piece that came this month: nothing of it is due, whatever the clock says."""
    # The record reads the machine's clock, and so does what is due.
    came = DateSpan.parse(str(dt.datetime.now(dt.UTC).date().replace(day=1)))
    return replace(component, made=came, in_service=came, records=())


def act(key: str) -> Act:
    """Return an act of the officer."""
    moment = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)
    return Act(
        idem=key,
        occurred=Occurred.at(moment, ClockSource.SERVER),
        device=DeviceId("test"),
        actor=MemberId("118"),
        established=Established.SIGNED_IN,
    )
