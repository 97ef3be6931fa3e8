"""The eleven record items of an element, and which of them a record lacks.

Source: NFPA 1851, 2014 edition, topic "records", as articles about it list the items (in our own
words; confidence high): holder; date and condition of issue; maker and model; identification, lot
or serial number; month and year of manufacture; dates and findings of advanced inspections; dates
and findings of advanced cleaning; its reason and who did it; repairs with date, who and what;
date of retirement; date and method of disposal.
"""

import pytest
from tests.ledger_cases import SHELL, draft, load, recorded

from sootline.core.ledger import Draft, EntryKind
from sootline.core.ledger.folding import fold
from sootline.core.ledger.record_items import (
    RecordItem,
    RecordStanding,
    list_record_items,
    missing_items,
)

K, R = EntryKind, RecordItem
READY = {"custody": "hook", "stage": "checked", "assembly": "assembled", "life": "in-service"}
LABEL = {"maker": "an invented maker", "style": "K4", "serial": "771", "made": "2021-05"}
NEW = draft(K.REGISTERED, "00:10", state={**READY, "life": "reserve"}, **LABEL)  # type: ignore[arg-type]
OUT = draft(K.ISSUED, "01:00", holder="201", condition="new")


def missing(*drafts: Draft) -> tuple[RecordItem, ...]:
    """Return what the record lacks about the shell."""
    return missing_items(fold(recorded(drafts)).piece(SHELL))


def test_there_are_eleven_items() -> None:
    """As many as the edition counts."""
    assert len(RecordItem) == 11


def test_a_whole_record_lacks_nothing() -> None:
    """A piece issued, inspected, washed, mended, retired and disposed of, all written down."""
    every = (
        NEW,
        OUT,
        draft(K.INSPECTED_ADVANCED, "02:00", by="131", findings="none"),
        draft(
            K.WASH_WRITTEN_UP, "03:00", by="131", level="advanced", findings="none", reason="smoke"
        ),
        draft(K.REPAIRED, "04:00", by="a verified shop", said="cuff replaced"),
        draft(K.RETIRED, "05:00", by="chief", reason="ten years"),
        draft(K.DISPOSED, "06:00", by="chief", method="cut up", witness="118"),
    )
    listed = list_record_items(fold(recorded(every)).piece(SHELL))
    assert {one.standing for one in listed} == {RecordStanding.THERE}


def test_a_piece_in_reserve_need_not_have_been_issued() -> None:
    """What has not happened is not missing."""
    assert missing(NEW) == ()


def test_a_piece_in_service_was_issued_to_somebody() -> None:
    """Holder, date and condition are missing until somebody writes them down."""
    used = draft(K.REGISTERED, "00:10", state=READY, **LABEL)  # type: ignore[arg-type]
    assert missing(used) == (R.HOLDER, R.ISSUE)
    assert missing(used, draft(K.ISSUED, "01:00", holder="201")) == (R.ISSUE,)


@pytest.mark.parametrize(
    ("gone", "item"),
    [("maker", R.MAKER), ("style", R.MAKER), ("serial", R.IDENTIFICATION), ("made", R.MADE)],
)
def test_a_label_that_cannot_be_read_leaves_items_missing(gone: str, item: RecordItem) -> None:
    """Nothing is made up for them; a lot will do for a serial number."""
    label = {name: value for name, value in LABEL.items() if name != gone}
    state = {**READY, "life": "reserve"}
    assert missing(draft(K.REGISTERED, "00:10", state=state, label=label)) == (item,)


def test_an_inspection_without_findings_is_missing_them() -> None:
    """The date alone is half an item; the entry that lacks it is named."""
    life = fold(recorded([NEW, OUT, draft(K.INSPECTED_LINER, "02:00", by="131")])).piece(SHELL)
    (lacking,) = [one for one in list_record_items(life) if one.standing is RecordStanding.MISSING]
    assert (lacking.record_item, lacking.entries) == (R.INSPECTIONS, (3,))


def test_a_load_that_was_not_written_up_lacks_findings_and_reason() -> None:
    """A wash whose level nobody gave may have been an advanced one."""
    washed = (
        draft(K.RETURNED_SOILED, "02:00"),
        draft(K.PUT_IN_WASHER, "02:30", load="W-1"),
        draft(K.LOAD_ENDED, "03:30", thing=load("W-1"), by="131"),
    )
    assert missing(NEW, OUT, *washed) == (R.CLEANINGS, R.CLEANING_REASONS)


def test_a_routine_wash_need_not_be_explained() -> None:
    """The items are about advanced cleaning."""
    assert missing(NEW, OUT, draft(K.WASH_WRITTEN_UP, "03:00", by="201", level="routine")) == ()


def test_what_was_taken_back_proves_nothing() -> None:
    """An issue that never happened is no issue."""
    back = draft(K.CORRECTED, "02:00", corrects=2, reason="other coat", withdrawn=True)
    used = draft(K.REGISTERED, "00:10", state=READY, **LABEL)  # type: ignore[arg-type]
    assert R.HOLDER in missing(used, OUT, back)


def test_a_life_that_ended_says_how() -> None:
    """Registered as disposed of, without a date or a method."""
    ended = draft(K.REGISTERED, "00:10", state={**READY, "life": "disposed"}, **LABEL)  # type: ignore[arg-type]
    assert missing(ended, OUT)[-2:] == (R.RETIREMENT, R.DISPOSAL)
