"""The county's recall from the database, to the unit, and a year's facts after a replay."""

from django.db import transaction
from tests.integration.store_acts import store_in
from tests.integration.store_databases import Database
from tests.spec.test_dunmarrow_record import JOB, NOW
from tests.unit.tasks.memory_book import act

from sootline.core.upkeep.recalls import Affected
from sootline.storage.projecting import replay
from sootline.storage.register import RegisterStore
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.match_recall import match_recalls
from sootline.tasks.recording import Book
from sootline.tasks.take_in_job import take_in_job


def test_the_countys_recall_from_the_store(database: Database) -> None:
    """4 affected, 5 possible, 1 gone, 5 not; the same after every row is made anew."""
    store = store_in(database, now=lambda: NOW)
    book = Book(ledger=store, register=RegisterStore())
    take_in_job(book, act("job"), JOB)
    job = assemble_job(book.register, now=NOW)
    (found,) = match_recalls(job).notices

    assert dict(found.counts) == {
        Affected.AFFECTED: 4,
        Affected.POSSIBLE: 5,
        Affected.NOT_AFFECTED: 5,
        Affected.GONE: 1,
    }
    assert {"D05", "D17", "m99"} <= set(found.tell)
    with transaction.atomic():
        replay("default")
    assert assemble_job(book.register, now=NOW) == job
