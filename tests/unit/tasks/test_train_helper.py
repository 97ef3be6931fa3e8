"""An untrained helper is a warning, never a refusal. Common practice, no published source."""

import datetime as dt
import json

import pytest
from tests.unit.tasks.memory_book import MAREN, act, book

from sootline.core.basis import BadInputError, Bearing, DateSpan, MemberId
from sootline.core.ledger import EntryKind, ItemKind, item
from sootline.tasks.recording import Book
from sootline.tasks.train_helper import (
    Training,
    Work,
    record_training,
    trainings_of,
    warn_untrained,
)

TODAY = dt.date(2026, 3, 1)


def _trained(made: Book, key: str, *, work: Work = Work.WASHING, until: str = "unknown") -> None:
    training = Training(
        member=MAREN,
        work=work,
        on=DateSpan.parse("2025-02"),
        by="206",
        until=DateSpan.parse(until),
        source="class list 7",
    )
    record_training(made, act(key), training)


def test_what_was_recorded_is_read_back() -> None:
    """The last training of each work, with who gave it and until when it counts."""
    made = book()
    _trained(made, "a", until="2025-12-31")
    _trained(made, "b", until="2027-12-31")
    _trained(made, "c", work=Work.SORTING)

    found = {one.work: str(one.until) for one in trainings_of(made.register, MAREN)}

    assert found == {Work.WASHING: "2027-12-31", Work.SORTING: "unknown"}


@pytest.mark.parametrize(
    ("until", "messages"),
    [("unknown", []), ("2026-03-01", []), ("2026-02-28", ["tasks.training.ended"]),
     ("2026-02", ["tasks.training.ended"])],
)  # fmt: skip
def test_a_training_that_ended_warns(until: str, messages: list[str]) -> None:
    """From the day after its last, at its earliest reading."""
    made = book()
    _trained(made, "a", until=until)

    found = warn_untrained(made.register, [MAREN], Work.WASHING, on=TODAY)

    assert [one.message for one in found] == messages


def test_each_untrained_helper_is_named() -> None:
    """Trained for sorting is not trained for washing; a stranger was trained for nothing."""
    made = book()
    _trained(made, "a", work=Work.SORTING)

    found = warn_untrained(made.register, [MAREN, MemberId("999")], Work.WASHING, on=TODAY)

    assert [(one.bearing, one.value("member"), one.value("work")) for one in found] == [
        (Bearing.WARNS, "118", "washing"),
        (Bearing.WARNS, "999", "washing"),
    ]


def test_a_training_for_something_else_is_left_alone() -> None:
    """What another program wrote under a topic of its own stops nothing."""
    made = book()
    other = act("x").entry(EntryKind.TRAINED, item(ItemKind.MEMBER, MAREN), {"topic": "pump"})
    made.ledger.append([other])

    assert trainings_of(made.register, MAREN) == ()
    assert "pump" in json.dumps(dict(made.register.thing(other.item).facts))  # type: ignore[union-attr]


@pytest.mark.parametrize(("member", "by"), [("999", "206"), (MAREN, " ")])
def test_who_was_trained_and_by_whom_must_be_said(member: str, by: str) -> None:
    """A helper the record does not know, or a training nobody gave."""
    training = Training(member=MemberId(member), work=Work.DRYING, on=DateSpan(), by=by)

    with pytest.raises(BadInputError):
        record_training(book(), act("a"), training)
