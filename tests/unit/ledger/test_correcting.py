"""Corrections: what counts after them, and that nothing disappears."""

import pytest
from tests.ledger_cases import SHELL, Book, at, draft, load

from sootline.core.basis import BadInputError
from sootline.core.gear import CareStage
from sootline.core.ledger import Draft, EntryKind, component
from sootline.core.ledger.correcting import Amended
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold, loads_of, touched
from sootline.core.ledger.lives import Effect, PieceLife

K = EntryKind
CHECKED = {"custody": "hook", "stage": "checked", "assembly": "assembled"}


def book() -> Book:
    """Return a record of one checked piece that was put on as worn."""
    new = Book()
    new.add(
        draft(K.REGISTERED, "01:00", state=CHECKED),
        draft(K.WORN, "04:00", member="201", call="c-1"),
    )
    return new


def put_right(seq: int, /, **said: object) -> Draft:
    """Return a correction."""
    return draft(
        K.CORRECTED, "06:00", corrects=seq, key=f"{seq}/{sorted(said.items())}", reason="typing",
        **said,  # type: ignore[arg-type]
    )  # fmt: skip


def life(kept: Book, thing: str = "0412") -> PieceLife:
    """Return what the record says of a piece."""
    return fold(kept.entries).piece(component(thing))


def test_what_never_happened_changes_nothing() -> None:
    """A withdrawn entry leaves the state as it was, and stays in the history."""
    kept = book()
    kept.add(put_right(2, withdrawn=True))
    told = life(kept)
    assert told.state.stage is CareStage.CHECKED
    assert [line.effect for line in told.history] == [Effect.TOOK, Effect.WITHDRAWN]
    assert told.history[1].settled.by == (3,)
    assert (told.exposures, told.records) == ((), ())


def test_a_correction_that_is_taken_back_leaves_the_first_word() -> None:
    """The withdrawal was the mistake: it was worn after all."""
    kept = book()
    kept.add(put_right(2, withdrawn=True), put_right(3, withdrawn=True))
    assert life(kept).state.stage is CareStage.WORN


def test_a_correction_of_a_correction_counts() -> None:
    """The last word about what was said stands, on top of the words before."""
    kept = book()
    kept.add(
        put_right(2, payload={"member": "202", "call": "c-1"}),
        put_right(3, payload={"member": "203", "call": "c-1"}),
    )
    told = life(kept)
    assert [exposure.member for exposure in told.exposures] == ["203"]
    assert told.history[1].settled.amended is Amended.CORRECTED
    assert told.history[1].settled.by == (3, 4)
    assert told.history[1].settled.written.payload["member"] == "201"


def test_a_withdrawal_of_a_correction_may_be_withdrawn_itself() -> None:
    """Three deep: it was not worn after all."""
    kept = book()
    kept.add(
        put_right(2, withdrawn=True), put_right(3, withdrawn=True), put_right(4, withdrawn=True)
    )
    assert life(kept).state.stage is CareStage.CHECKED


def test_a_wrong_load_is_put_right() -> None:
    """It was in W-2, which ended, and not in W-1."""
    kept = Book()
    kept.add(
        draft(K.REGISTERED, "01:00", state={**CHECKED, "custody": "wash-room", "stage": "to-wash"}),
        draft(K.PUT_IN_WASHER, "04:00", load="W-1"),
        draft(K.LOAD_ENDED, "05:00", thing=load("W-2")),
        put_right(2, payload={"load": "W-2"}),
    )
    assert loads_of(read_facts(kept.entries)) == {load("W-1"), load("W-2")}
    assert life(kept).state.stage is CareStage.WASHED
    assert [one.item for one in fold(kept.entries).loads] == [load("W-2")]


def test_a_withdrawn_correction_may_be_put_right_again() -> None:
    """Words after a withdrawal start afresh."""
    kept = book()
    kept.add(
        put_right(2, payload={"member": "202"}),
        put_right(3, withdrawn=True),
        put_right(3, payload={"member": "204"}),
    )
    assert [exposure.member for exposure in life(kept).exposures] == ["204"]


def test_later_corrections_add_to_earlier_ones() -> None:
    """One puts the person right, the next the time; both hold."""
    kept = book()
    when = {
        "earliest": at("03:30").isoformat(),
        "latest": at("03:30").isoformat(),
        "clock": "paper",
        "offset_s": None,
    }
    kept.add(put_right(2, payload={"member": "202"}), put_right(2, occurred=when))
    (exposure,) = life(kept).exposures
    assert (exposure.member, exposure.occurred.earliest) == ("202", at("03:30"))


def test_a_wrong_piece_is_put_right() -> None:
    """The entry counts for the right piece; the wrong one keeps the line, struck through."""
    kept = book()
    kept.add(put_right(2, item="component:0413"))
    assert life(kept).state.stage is CareStage.CHECKED
    assert [line.effect for line in life(kept).history] == [Effect.TOOK, Effect.WITHDRAWN]
    assert life(kept, "0413").state.stage is CareStage.WORN
    assert touched(read_facts(kept.entries)) == {SHELL, component("0413")}


def test_a_wrong_kind_is_put_right() -> None:
    """It was bagged, not worn."""
    kept = book()
    kept.add(put_right(2, kind="bagged"))
    told = life(kept)
    assert (told.state.stage, told.exposures) == (CareStage.TO_WASH, ())


def test_an_erased_correction_leaves_the_state_that_asks_for_more() -> None:
    """Nobody can know any more whether it was worn; it counts as worn, and somebody is asked."""
    kept = book()
    kept.add(put_right(2, withdrawn=True))
    kept.erase(3)
    told = life(kept)
    assert told.state.stage is CareStage.WORN
    assert told.history[1].effect is Effect.DEPENDS
    assert [question.entries for question in told.questions] == [(2,)]


def test_an_erased_correction_of_a_check_leaves_it_unchecked() -> None:
    """The check may have been taken back: unknown lowers nothing."""
    kept = Book()
    kept.add(
        draft(K.REGISTERED, "01:00", state={**CHECKED, "stage": "to-check"}),
        draft(K.TOUCH_CHECKED, "04:00", by="118"),
        put_right(2, withdrawn=True),
    )
    kept.erase(3)
    assert life(kept).state.stage is CareStage.TO_CHECK


def test_a_later_correction_does_not_end_the_doubt_of_an_erased_one() -> None:
    """It puts the name right; whether it happened at all nobody can tell any more."""
    kept = book()
    kept.add(put_right(2, withdrawn=True), put_right(2, payload={"member": "202"}))
    kept.erase(3)
    assert life(kept).history[1].settled.amended is Amended.DOUBTFUL


@pytest.mark.parametrize(
    "said",
    [
        {},
        {"withdrawn": True, "kind": "hung"},
        {"kind": "flew"},
        {"item": "0413"},
        {"payload": "text"},
        {"occurred": {"earliest": "04:20"}},
        {"occurred": {"earliest": 1, "latest": 1, "clock": "paper", "offset_s": 1}},
        {"occurred": {"earliest": at("04:20").isoformat(), "latest": at("04:20").isoformat(),
                      "clock": "sundial", "offset_s": None}},
        {"occurred": {"earliest": at("04:20").isoformat(), "latest": at("04:20").isoformat(),
                      "clock": "paper", "offset_s": True}},
    ],
)  # fmt: skip
def test_a_correction_must_say_something_that_can_be(said: dict[str, object]) -> None:
    """Neither nothing, nor what no entry could say."""
    with pytest.raises(BadInputError):
        put_right(2, **said)
