"""The power goes while entries are written: what was acknowledged is there afterwards."""

import pytest
from tests.conftest import COULD_NOT
from tests.integration.store_databases import Databases
from tests.integration.store_disk import Disk, install
from tests.integration.store_power import cut_power


@pytest.fixture
def disk() -> Disk:
    """Put a disk that notes every write under SQLite."""
    found = install()
    if found is None:
        pytest.skip(f"{COULD_NOT}: this Python's SQLite cannot be reached from outside")
    return found


def test_power_cuts_at_the_shipped_settings(databases: Databases, disk: Disk) -> None:
    """Sixty cuts while entries are written: none lost, nothing damaged."""
    found = cut_power(databases, disk, cuts=60, seed=11, synchronous="FULL")

    assert (found.losing, found.corrupt) == (0, 0)
    assert found.acked > 1000
    assert found.torn >= 10


@pytest.mark.parametrize("weaker", ["NORMAL", "OFF"])
def test_power_cuts_at_weaker_settings(databases: Databases, disk: Disk, weaker: str) -> None:
    """The same cuts lose entries where the log is not synced at each commit."""
    found = cut_power(databases, disk, cuts=30, seed=11, synchronous=weaker)

    assert found.losing + found.corrupt > 0
