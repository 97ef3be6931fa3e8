"""A record with accounts for the browser to sign in to: `python -m tests.web.recorded FOLDER`."""

import datetime as dt
import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

from playwright.sync_api import Page

from sootline.core.basis import DateSpan
from sootline.tasks.second_factor import code_at, step_at

NAME, PASSWORD = "maren", "brass-kettle-lantern-42x"
PIN = "480913"
HELPERS = ("213", "219", "223", "224")


def make_record(folder: Path) -> None:
    """Make it in a process of its own: the framework is set up once in each."""
    environment = {**os.environ, "SOOTLINE_DATA": str(folder)}
    environment.pop("DATABASE_URL", None)
    environment.pop("DJANGO_SETTINGS_MODULE", None)
    command = [sys.executable, "-m", "tests.web.recorded", str(folder)]
    subprocess.run(command, env=environment, check=True, timeout=120)


def sign_in(page: Page, address: str) -> None:
    """Sign the officer in."""
    page.goto(f"{address}/sign-in/")
    page.get_by_label("Name").fill(NAME)
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Sign in").click()


def secret_on(page: Page) -> bytes:
    """Return the secret a set-up page shows for typing by hand."""
    from base64 import b32decode  # noqa: PLC0415

    text = page.locator(".stages .number").first.text_content() or ""
    return b32decode(re.sub(r"\s", "", text))


def code_of(secret: bytes) -> str:
    """Return the code an authenticator shows now."""
    return code_at(secret, step_at(dt.datetime.now(dt.UTC)))


def set_up_factor(page: Page) -> bytes:
    """Set up an authenticator on the page that is open; return its secret."""
    secret = secret_on(page)
    page.get_by_label("Code of the authenticator").fill(code_of(secret))
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Take this phone").click()
    return secret


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
    from sootline.wiring.people import set_pin  # noqa: PLC0415
    from sootline.wiring.store import now, open_book, open_store, prepare  # noqa: PLC0415

    prepare(open_store())
    book, job = open_book(), demo_job()
    whole = DepartmentFacts(department=job.department, guides=job.guides,
                            wash_room=job.wash_room, riding=job.riding)  # fmt: skip
    describe_department(book, act("department"), whole)
    register_things(book, act("members"), job.members)
    came = DateSpan.parse(str(dt.datetime.now(dt.UTC).date().replace(day=1)))
    gear = [replace(one, made=came, in_service=came, records=()) for one in job.components
            if one.owner in HELPERS]  # fmt: skip
    register_components(book, act("gear"), gear)
    accounts.make_account(NAME, PASSWORD, ["administrator", "gear-officer", "safety-officer"],
                          member="118")  # fmt: skip
    for name in HELPERS:
        helper = accounts.make_account(name, PASSWORD, ["helper"], member=name)
        set_pin(helper, PIN, now(), least=6)


if __name__ == "__main__":
    main()
