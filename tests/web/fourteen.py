"""A record of fourteen people with a set each: `python -m tests.web.fourteen FOLDER`."""

import datetime as dt
import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

from playwright.sync_api import Page

from sootline.core.basis import ComponentId, DateSpan, MemberId, SetId
from sootline.core.gear import Component, Custody, State
from sootline.core.job.jobs import Job, Member

NAME, PASSWORD = "maren", "brass-kettle-lantern-42x"
SETS = 14
PARTS = ("coat-shell", "coat-liner", "drag-device", "trouser-shell", "trouser-liner", "suspenders")


def make_fourteen(folder: Path) -> None:
    """Make it in a process of its own: the framework is set up once in each."""
    environment = {**os.environ, "SOOTLINE_DATA": str(folder)}
    environment.pop("DATABASE_URL", None)
    environment.pop("DJANGO_SETTINGS_MODULE", None)
    command = [sys.executable, "-m", "tests.web.fourteen"]
    subprocess.run(command, env=environment, check=True, timeout=180)


def enter(page: Page, address: str) -> None:
    """Sign the officer in."""
    page.goto(f"{address}/sign-in/")
    page.get_by_label("Name").fill(NAME)
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Sign in").click()


def people() -> tuple[Member, ...]:
    """Return fourteen people of one invented crew."""
    return tuple(
        Member(id=MemberId(f"{401 + at}"), crew="Engine 1", role="firefighter")
        for at in range(SETS)
    )


def gear(job: Job) -> tuple[Component, ...]:
    """Return a set for each of them, made after one of the demonstration's."""
    came = DateSpan.parse(str(dt.datetime.now(dt.UTC).date().replace(day=1)))
    patterns = {str(one.kind): one for one in job.components if one.owner == "223"}
    return tuple(
        replace(
            patterns[part],
            id=ComponentId(f"{member.id}{at}"),
            owner=member.id,
            set=SetId(f"set {member.id}"),
            made=came,
            in_service=came,
            records=(),
            state=State(custody=Custody.HOOK),
        )
        for member in people()
        for at, part in enumerate(PARTS)
    )


def main() -> None:
    """Fill the data directory the environment names."""
    from sootline.wiring.framework import start  # noqa: PLC0415

    start()
    # Only once the framework is set up.
    from tests.web.records import act  # noqa: PLC0415

    from sootline.core.job.things import DepartmentFacts  # noqa: PLC0415
    from sootline.tasks.register_gear import register_components  # noqa: PLC0415
    from sootline.tasks.register_things import (  # noqa: PLC0415
        describe_department,
        register_things,
    )
    from sootline.wiring import accounts  # noqa: PLC0415
    from sootline.wiring.demo import demo_job  # noqa: PLC0415
    from sootline.wiring.store import open_book, open_store, prepare  # noqa: PLC0415

    prepare(open_store())
    book, job = open_book(), demo_job()
    facts = DepartmentFacts(department=job.department, guides=job.guides, wash_room=job.wash_room)
    describe_department(book, act("department"), facts)
    register_things(book, act("members"), people())
    register_components(book, act("gear"), gear(job))
    accounts.make_account(NAME, PASSWORD, ["gear-officer", "safety-officer"], member="118")


if __name__ == "__main__":
    main()
