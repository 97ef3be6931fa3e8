"""Acts, kills, power cuts, locks, full disks, clock jumps and retries, drawn by chance."""

import os
import random

import pytest
from tests.conftest import COULD_NOT
from tests.integration.store_databases import Databases
from tests.integration.store_disk import install
from tests.integration.store_machine import run_faults


def test_faults_in_any_order(databases: Databases) -> None:
    """Whatever happens in whichever order, what was acknowledged stands once, in its place.

    SOOTLINE_SEED repeats a run; the seed is printed.
    """
    disk = install()
    if disk is None:
        pytest.skip(f"{COULD_NOT}: this Python's SQLite cannot be reached from outside")
    number = int(os.environ.get("SOOTLINE_SEED") or random.SystemRandom().randrange(2**32))

    run_faults(databases, disk, runs=15, steps=25, number=number)
