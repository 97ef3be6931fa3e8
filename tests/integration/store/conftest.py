"""The store's tests run on every kind of database there is."""

from collections.abc import Iterator

import pytest
from tests.conftest import COULD_NOT
from tests.integration.store_databases import Database, Databases, set_up

set_up()


@pytest.fixture(scope="session")
def databases() -> Iterator[Databases]:
    """Where fresh databases come from."""
    made = Databases()
    yield made
    made.close()


@pytest.fixture(params=["sqlite", "postgresql"])
def database(request: pytest.FixtureRequest, databases: Databases) -> Database:
    """Make a fresh database of each kind, with the tables in it and nothing else."""
    if not databases.able(request.param):
        pytest.skip(f"{COULD_NOT}: no PostgreSQL server is installed (make services)")
    return databases.fresh(request.param)
