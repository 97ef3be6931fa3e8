"""The screens are tested on the demonstration, and on a record of the tests' own."""

from collections.abc import Iterator

import pytest
from django.test import Client, override_settings
from playwright.sync_api import Browser
from tests.conftest import COULD_NOT
from tests.integration.store_databases import Databases, set_up
from tests.web.browser import browsing, chromium

set_up()


@pytest.fixture(scope="session")
def databases() -> Iterator[Databases]:
    """Where fresh databases come from."""
    made = Databases()
    yield made
    made.close()


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Chromium."""
    program = chromium()
    if program is None:
        pytest.skip(f"{COULD_NOT}: Chromium is not installed (make services)")
    with browsing(program) as started:
        yield started


@pytest.fixture
def demo(databases: Databases) -> Iterator[Client]:
    """Sit at the demonstration; what was entered is taken back at the end."""
    # Only once the framework is set up.
    from sootline.wiring.demo_desk import demo_desks  # noqa: PLC0415

    databases.fresh("sqlite")
    with override_settings(DEMO=True):
        yield Client(SERVER_NAME="localhost")
    while demo_desks().undo():
        pass
