"""Folding: the part says what the whole says, and what is not certain never lowers anything."""

from itertools import permutations

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.ledger_cases import SHELL, draft, recorded, span
from tests.ledger_records import PLAIN, grown

from sootline.core.ledger import Draft, EntryKind, component
from sootline.core.ledger.exports import about
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold, fold_facts
from sootline.core.ledger.safest import asks_no_less

K = EntryKind
READY = {"custody": "wash-room", "stage": "to-check", "assembly": "assembled"}
START = draft(K.REGISTERED, "00:10", state=READY)


@settings(max_examples=60, deadline=None)
@given(seed=st.integers(0, 10**9), length=st.integers(1, 60))
def test_one_pieces_entries_are_enough_for_its_life(seed: int, length: int) -> None:
    """A screen that folds one piece shows what a replay of everything shows."""
    facts = read_facts(grown(seed, length).entries)
    whole = fold_facts(facts)
    for piece in whole.pieces:
        wanted = set(about(facts, piece.item))
        part = fold_facts(fact for fact in facts if fact.seq in wanted)
        assert part.piece(piece.item) == piece


@settings(max_examples=60, deadline=None)
@given(seed=st.integers(0, 10**9), length=st.integers(1, 60))
def test_no_entry_about_a_piece_is_lost(seed: int, length: int) -> None:
    """Every entry but the corrections stands in some piece's history."""
    facts = read_facts(grown(seed, length).entries)
    told = {line.seq for piece in fold_facts(facts).pieces for line in piece.history}
    assert told == {fact.seq for fact in facts if fact.kind is not K.CORRECTED}


def _overlapping(kinds: list[EntryKind]) -> list[Draft]:
    """Return facts of as many devices, all of one hour."""
    return [
        draft(kind, span("05:00", "06:00"), device=f"phone-{n}", actor=str(n), by="118")
        for n, kind in enumerate(kinds)
    ]


def _in_turn(kinds: tuple[EntryKind, ...]) -> list[Draft]:
    """Return the same facts one after another."""
    return [draft(kind, f"05:{n:02}", by="118") for n, kind in enumerate(kinds)]


@settings(max_examples=80, deadline=None)
@given(kinds=st.lists(st.sampled_from(PLAIN), min_size=2, max_size=4))
def test_overlapping_facts_ask_for_no_less_than_any_order(kinds: list[EntryKind]) -> None:
    """Whatever really happened, the state shown asks for at least as much care."""
    shown = fold(recorded([START, *_overlapping(kinds)])).piece(SHELL).state
    for order in permutations(kinds):
        real = fold(recorded([START, *_in_turn(order)])).piece(SHELL).state
        assert asks_no_less(shown, real)


@settings(max_examples=80, deadline=None)
@given(kinds=st.lists(st.sampled_from(PLAIN), min_size=2, max_size=4))
def test_overlaps_too_many_to_follow_ask_for_no_less_either(kinds: list[EntryKind]) -> None:
    """Nine more of the first kind cannot be followed; the rest may still have been in any order."""
    crowd = [kinds[0]] * 9
    shown = fold(recorded([START, *_overlapping([*kinds, *crowd])])).piece(SHELL).state
    for order in permutations(kinds):
        real = fold(recorded([START, *_in_turn((*order, *crowd))])).piece(SHELL).state
        assert asks_no_less(shown, real)


@settings(max_examples=60, deadline=None)
@given(kinds=st.lists(st.sampled_from(PLAIN), min_size=2, max_size=4), data=st.data())
def test_the_order_of_arrival_of_overlapping_facts_does_not_matter(
    kinds: list[EntryKind], data: st.DataObject
) -> None:
    """Phones may meet in any order."""
    drafts = _overlapping(kinds)
    arrived = data.draw(st.permutations(drafts))
    one = fold(recorded([START, *drafts])).piece(SHELL).state
    assert fold(recorded([START, *arrived])).piece(SHELL).state == one


@settings(max_examples=60, deadline=None)
@given(kinds=st.lists(st.sampled_from(PLAIN), max_size=6))
def test_no_wash_and_no_check_ends_a_hold(kinds: list[EntryKind]) -> None:
    """Only somebody entitled does."""
    held = draft(K.HOLD_OPENED, "01:00", cause="powder", question="care.ask.powder",
                 decider="safety-officer", deputy="chief")  # fmt: skip
    state = fold(recorded([START, held, *_in_turn(tuple(kinds))])).piece(component("0412")).state
    assert [hold.cause for hold in state.open_holds] == ["powder"]
