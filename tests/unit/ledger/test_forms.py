"""Drafts and payloads: what is refused, and how older forms are read."""

import dataclasses
from collections.abc import Callable

import pytest
from tests.ledger_cases import SHELL, draft, recorded, span

from sootline.core.basis import BadInputError, DeviceId, MemberId, UnreadableValueError
from sootline.core.ledger import EntryKind, Established, ItemKind, Payload, Second, item, parse_item
from sootline.core.ledger.acts import Act, exchange, lock_member, start_load
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold
from sootline.core.ledger.forms import FORMS

K = EntryKind
SPLIT = "e\u0301"
ACT = Act(
    idem="act-1",
    occurred=span("04:20"),
    device=DeviceId("phone-a"),
    actor=MemberId("201"),
    established=Established.PIN,
)


def messages(make: Callable[[], object]) -> list[str]:
    """Return the last part of every fault's message."""
    with pytest.raises(BadInputError) as error:
        make()
    return [fault.message.rpartition(".")[2] for fault in error.value.faults]


def test_a_draft_lists_everything_wrong_with_it() -> None:
    """A blank actor, and a correction of nothing."""
    good = draft(K.CORRECTED, "04:20", corrects=1, reason="x", withdrawn=True)
    change = {"actor": " ", "corrects": None, "erases": 2, "form": 9}
    assert messages(lambda: dataclasses.replace(good, **change)) == [  # type: ignore[arg-type]
        "blank",
        "corrects",
        "erases",
        "form",
    ]


def test_a_payload_says_what_its_kind_demands() -> None:
    """A check without a name is no check; an unknown office releases nothing."""
    assert messages(lambda: draft(K.TOUCH_CHECKED, "04:20", by=" ")) == ["missing"]
    release = {"cause": "powder", "by": "x", "office": "mayor"}
    assert messages(lambda: draft(K.HOLD_RELEASED, "04:20", payload_of=release)) == ["word"]


def test_a_payload_is_an_object() -> None:
    """A list names nothing."""
    good = draft(K.HUNG, "04:20")
    assert messages(lambda: dataclasses.replace(good, payload="[]")) == ["no_object"]


def test_a_payload_has_a_limit() -> None:
    """A photograph is kept beside the record, not inside."""
    assert messages(lambda: draft(K.NOTED, "04:20", said="x" * 300_000)) == ["large"]


def test_texts_of_a_header_are_composed() -> None:
    """The same accent, typed in two ways, is the same person."""
    one = draft(K.HUNG, "04:20", actor=SPLIT, device=SPLIT, key=SPLIT)
    assert (one.actor, one.device, one.idem) == ("\u00e9",) * 3
    assert Second(person=MemberId(SPLIT), established=Established.PIN).person == "\u00e9"


@pytest.mark.parametrize("text", ["0412", "coat:0412", "component:", "component: "])
def test_things_have_a_kind_and_a_name(text: str) -> None:
    """A number alone may be a piece, a bag or a locker."""
    with pytest.raises(UnreadableValueError):
        parse_item(text)


def test_a_thing_has_a_name() -> None:
    """Nothing is written about nothing."""
    with pytest.raises(UnreadableValueError):
        item(ItemKind.BAG, " ")


def test_a_span_of_time_goes_forward() -> None:
    """It cannot end before it begins."""
    with pytest.raises(UnreadableValueError):
        span("05:00", "04:00")


def test_an_older_form_is_read_through_its_upcasters() -> None:
    """One step at a time; the bytes stay as they were written."""

    def renamed(payload: Payload) -> Payload:
        return {"place": payload["rack"]}

    def numbered(payload: Payload) -> Payload:
        return {**payload, "level": 1}

    entries = recorded([draft(K.HUNG, "04:20", rack="3")])
    (fact,) = read_facts(
        entries,
        forms={**FORMS, K.HUNG: 3},
        upcasters={(K.HUNG, 1): renamed, (K.HUNG, 2): numbered},
    )
    assert fact.payload == {"place": "3", "level": 1}
    assert entries[0].payload == '{"rack":"3"}'


def test_a_newer_form_is_refused_not_guessed() -> None:
    """Only a newer program knows what it means."""
    entries = recorded([draft(K.HUNG, "04:20")])
    assert messages(lambda: read_facts(entries, forms={**FORMS, K.HUNG: 0})) == ["unknown"]


def test_an_exchange_is_two_entries_or_none() -> None:
    """Each piece gets the other's holder, and names the other piece."""
    mine, theirs = exchange(ACT, ("0412", "202"), ("0413", "201"))  # type: ignore[arg-type]
    folded = fold(recorded([mine, theirs]))
    facts = [piece.history[0].settled.fact.payload for piece in folded.pieces]
    assert facts == [{"holder": "202", "with": "0413"}, {"holder": "201", "with": "0412"}]


@pytest.mark.parametrize("other", [("0412", "201"), ("0413", "202")])
def test_an_exchange_needs_two_of_each(other: tuple[str, str]) -> None:
    """Nobody swaps with themselves, or one coat for itself."""
    assert messages(lambda: exchange(ACT, ("0412", "202"), other)) == ["one"]  # type: ignore[arg-type]


def test_one_act_locks_everything_of_a_member() -> None:
    """Each piece is secured once, and the act itself is on record."""
    drafts = lock_member(
        ACT, MemberId("201"), ["0412", "0413", "0412"], by="inv", reason="serious injury"  # type: ignore[list-item]
    )  # fmt: skip
    assert [(one.kind, one.item) for one in drafts] == [
        (K.MEMBER_LOCKED, "member:201"),
        (K.EVIDENCE_TAKEN, "component:0412"),
        (K.EVIDENCE_TAKEN, "component:0413"),
    ]
    assert {piece.state.custody for piece in fold(recorded(drafts)).pieces} == {"evidence"}


@pytest.mark.parametrize("level", [None, "advanced"])
def test_a_load_names_each_piece_in_an_entry_of_its_own(level: str | None) -> None:
    """So that a piece's export shows nobody else's."""
    drafts = start_load(
        ACT, "W-1", ["0412", "0413"], machine="washer 1", by="131", level=level  # type: ignore[list-item]
    )  # fmt: skip
    folded = fold(recorded(drafts))
    assert folded.loads[0].pieces == (SHELL, "component:0413")
    assert len({one.idem for one in drafts}) == 3
