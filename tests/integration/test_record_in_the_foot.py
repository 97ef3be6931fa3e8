"""A sheet drawn from the record says how far it reached, so that a later change can be found."""

import datetime as dt
from dataclasses import replace

from tests.paper_night import page
from tests.paper_reading import text_of

from sootline.core.basis import InstallationId
from sootline.core.ledger import Anchor
from sootline.paper.page import Page
from sootline.paper.radio import print_radio_sheet
from sootline.tasks.who_can_ride import who_can_ride
from sootline.wiring.demo import demo_job
from sootline.wiring.rules import RULES

ANCHOR = Anchor(
    installation=InstallationId("tarn-hollow"),
    n=418,
    hash="ab" * 32,
    root="7f0000013f54dcc1" + "0" * 48,
    at=dt.datetime(2026, 3, 1, 8, tzinfo=dt.UTC),
)


def _printed(paper: Page) -> str:
    answer = who_can_ride(RULES, demo_job())
    return text_of(print_radio_sheet(answer.riding.now, answer.now, paper))


def test_the_foot_of_every_page_names_entries_words_and_hash() -> None:
    """Entries, the words to speak, and the last hash in full."""
    found = _printed(replace(page("en"), record=ANCHOR))

    assert "recordat418entries:lusab-babad-gutih-tugad" in found
    assert "ab" * 32 in found


def test_a_sheet_of_a_job_file_names_no_record() -> None:
    """There is none behind it."""
    assert "recordat" not in _printed(page("en"))
