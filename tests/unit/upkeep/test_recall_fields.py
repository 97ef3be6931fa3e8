"""How each field of a record stands to what a notice says of it."""

import datetime as dt
from dataclasses import replace

import pytest

from sootline.core.basis import ComponentId, DateSpan, KindId, UnreadableValueError
from sootline.core.exposure import Answer
from sootline.core.gear import Component, Label
from sootline.core.upkeep.recalls import (
    Action,
    Affected,
    LotSpan,
    Match,
    Notice,
    NoticeClosed,
    Sighting,
    Step,
    close_notice,
    match_notice,
)

AT = dt.datetime(2026, 3, 1, 9, tzinfo=dt.UTC)
LINER = Component(
    id=ComponentId("1"),
    kind=KindId("coat-liner"),
    label=Label(maker="Aldmere Gear", style="R7-L", lot="2103-B"),
    made=DateSpan.parse("2021-03"),
)
NOTICE = Notice(
    id="n",
    issuer="Aldmere",
    title="seam tape",
    kinds=(LINER.kind,),
    makers=("Aldmere Gear",),
    styles=("R7-L",),
    made=DateSpan.parse("2021-01-01..2021-06-30"),
    lots=(LotSpan(first="2102", last="2104", beginning=True),),
    except_lots=(LotSpan(first="2104-C"),),
)


def match(
    label: dict[str, object] | None = None, *, notice: Notice = NOTICE, made: str = "2021-03"
) -> Match:
    """Hold one liner against a notice."""
    facts = {**LINER.label.__dict__, **(label or {})}
    piece = replace(LINER, label=Label(**facts), made=DateSpan.parse(made))
    (found,) = match_notice(notice, (piece,))
    return found


@pytest.mark.parametrize(
    ("label", "affected", "message"),
    [
        ({}, Affected.AFFECTED, "recall.lot.in"),
        ({"maker": "aldmere  gear"}, Affected.AFFECTED, "recall.maker.in"),
        ({"maker": "Aldmere"}, Affected.POSSIBLE, "recall.maker.slip"),
        ({"maker": "A1dmereGear"}, Affected.POSSIBLE, "recall.maker.slip"),
        ({"maker": "Ostrey"}, Affected.NOT_AFFECTED, "recall.maker.out"),
        ({"maker": "Ostrey", "readable": False}, Affected.POSSIBLE, "recall.maker.unreadable"),
        ({"style": " "}, Affected.POSSIBLE, "recall.style.missing"),
        ({"style": "r7 l"}, Affected.AFFECTED, "recall.style.in"),
        ({"style": "R7-I"}, Affected.POSSIBLE, "recall.style.slip"),
        ({"lot": "2106-A"}, Affected.POSSIBLE, "recall.disagree"),
        ({"lot": "2106-A", "readable": False}, Affected.POSSIBLE, "recall.lot.unreadable"),
        ({"lot": "2104-C"}, Affected.NOT_AFFECTED, "recall.lot.excepted"),
        ({"lot": "2104-C", "readable": False}, Affected.POSSIBLE, "recall.lot.maybe_excepted"),
        ({"lot": "2104-?"}, Affected.POSSIBLE, "recall.lot.maybe_excepted"),
        ({"lot": "21"}, Affected.POSSIBLE, "recall.lot.slip"),
        ({"lot": "210\u2026"}, Affected.POSSIBLE, "recall.lot.slip"),
        ({"lot": "2103..."}, Affected.AFFECTED, "recall.lot.in"),
        ({"lot": "2104..."}, Affected.POSSIBLE, "recall.lot.maybe_excepted"),
        ({"lot": "..."}, Affected.POSSIBLE, "recall.lot.missing"),
    ],
)
def test_a_field_of_the_label(label: dict[str, object], affected: Affected, message: str) -> None:
    """Inside, a slip, missing, outside, on a label nobody can read, excepted."""
    found = match(label)

    assert found.affected is affected
    assert message in {str(reason.message) for reason in found.reasons}


@pytest.mark.parametrize(
    ("made", "affected", "message"),
    [
        ("2021-06", Affected.AFFECTED, "recall.made.in"),
        ("2021-06-15..2021-07-15", Affected.POSSIBLE, "recall.made.partly"),
        ("unknown", Affected.POSSIBLE, "recall.made.missing"),
        ("2020", Affected.POSSIBLE, "recall.disagree"),
    ],
)
def test_the_day_it_was_made(made: str, affected: Affected, message: str) -> None:
    """Known in part, not known, and against the lot."""
    found = match(made=made)

    assert found.affected is affected
    assert message in {str(reason.message) for reason in found.reasons}


def test_dates_that_contradict_each_other_rule_nothing_out() -> None:
    """Label and record say different years."""
    piece = replace(
        LINER, label=replace(LINER.label, made=DateSpan.parse("2022")), made=DateSpan.parse("2019")
    )
    (found,) = match_notice(NOTICE, (piece,))

    assert found.affected is Affected.POSSIBLE
    assert "recall.made.contradicts" in {str(reason.message) for reason in found.reasons}


def test_a_notice_that_is_silent_on_a_field_asks_nothing_of_it() -> None:
    """Kinds alone: everything of the kind is affected, without a stop."""
    notice = Notice(id="n", issuer="i", title="t", kinds=(LINER.kind,), stop_use=False)
    found = match({"lot": None, "style": None}, notice=notice)

    assert found.affected is Affected.AFFECTED
    assert found.reasons[-1].message == "recall.is.affected"
    assert notice.ground.in_force is None


def test_single_lots_and_spans_of_whole_lots() -> None:
    """Compared whole; longer or shorter ones are others; signs in the middle bound both ways."""
    span = LotSpan(first="A10", last="A29")

    assert [span.fit(lot).fit for lot in ("A10", "a-29", "A30", "A1", "A1...", "A100", "AZ5")] == [
        "in", "possibly", "out", "out", "possibly", "out", "possibly",
    ]  # fmt: skip
    with pytest.raises(UnreadableValueError):
        LotSpan(first="B", last="A")


def seen(minute: int, affected: Answer) -> Sighting:
    """Return a sighting at a minute."""
    at = AT + dt.timedelta(minutes=minute)
    return Sighting(notice="n", component=LINER.id, by="118", at=at, affected=affected)


@pytest.mark.parametrize(
    ("sightings", "unseen"),
    [
        ((seen(0, Answer.NO), seen(5, Answer.UNKNOWN)), True),
        ((seen(5, Answer.NO), seen(0, Answer.UNKNOWN)), False),
        ((replace(seen(0, Answer.NO), notice="other"),), True),
    ],
)
def test_the_last_sighting_for_this_notice_counts(
    sightings: tuple[Sighting, ...], unseen: bool
) -> None:
    """In order of time, whatever the order in which they were written down."""
    closure = close_notice(NOTICE, (match({"lot": None}),), sightings, ())

    assert bool(closure.unseen) is unseen


def test_of_two_words_at_one_moment_the_one_that_holds_it_counts() -> None:
    """Yes and no at once: it waits."""
    closure = close_notice(
        NOTICE, (match({"lot": None}),), (seen(0, Answer.YES), seen(0, Answer.NO)), ()
    )

    assert closure.waiting == (LINER.id,)


def test_nobody_does_nothing_and_a_notice_names_a_kind() -> None:
    """A name with each act; at least one kind."""
    with pytest.raises(UnreadableValueError):
        Action(notice="n", component=LINER.id, step=Step.PULLED, by=" ", at=AT)
    with pytest.raises(UnreadableValueError):
        NoticeClosed(notice="n", by="", at=AT)
    with pytest.raises(UnreadableValueError):
        Notice(id="n", issuer="i", title="t", kinds=())
