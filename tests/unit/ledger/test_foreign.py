"""Entries of another department: taken in untouched, once, and folded under our own name."""

import dataclasses
import json

import pytest
from tests.ledger_cases import SHELL, Book, at, draft, span

from sootline.core.basis import BadInputError, DeviceId, InstallationId, ItemId, MemberId
from sootline.core.gear import CareStage, Custody
from sootline.core.ledger import (
    Draft,
    Entry,
    EntryKind,
    Established,
    append,
    canonical,
    foreign_draft,
    read_payload,
    taken_entry,
    verify_chain,
)
from sootline.core.ledger.folding import fold
from sootline.core.ledger.hashing import entry_hash
from sootline.core.ledger.lives import Effect

K = EntryKind
D05 = InstallationId("d-05")


def take(entry: Entry, about: ItemId | None = None) -> Draft:
    """Return the draft by which 201 takes an entry in."""
    return foreign_draft(
        entry,
        device=DeviceId("desk"),
        actor=MemberId("201"),
        established=Established.SIGNED_IN,
        about=about,
    )


def theirs() -> Book:
    """Return another department's record about its own number 0412."""
    book = Book(D05)
    book.add(
        draft(K.REGISTERED, "00:10", state={"custody": "hook", "stage": "checked"}, name="e\u0301"),
        draft(K.WORN, "04:00", member="d5-7", call="c-9", actor="d5-1"),
    )
    return book


def test_a_foreign_entry_keeps_its_bytes() -> None:
    """Whoever holds the other record can find it there: same texts, same hash, same place."""
    other, ours = theirs(), Book()
    ours.add(take(other.entries[1]))
    assert ours.entries[0].read_header().occurred == span("04:00")
    payload = ours.entries[0].payload
    assert payload is not None
    taken = taken_entry(read_payload(payload))
    assert (taken.origin, taken.entry) == (D05, other.entries[1])


def test_two_departments_numbers_are_not_taken_for_one() -> None:
    """Their 0412 is called by its origin until somebody says what it is here."""
    other, ours = theirs(), Book()
    ours.add(*(take(entry) for entry in other.entries))
    folded = fold(ours.entries)
    assert [piece.item for piece in folded.pieces] == ["component:d-05/0412"]
    assert folded.pieces[0].state.stage is CareStage.WORN
    assert folded.pieces[0].exposures[0].member == "d5-7"


def test_an_entry_taken_in_twice_stands_once() -> None:
    """The same file read again adds nothing."""
    other, ours = theirs(), Book()
    entry = ours.add(take(other.entries[1]))
    again = append(ours.head, take(other.entries[1]), now=at("09:00"), salt=bytes(16),
                   same_key=entry)  # fmt: skip
    assert again.repeated


def test_a_foreign_fact_folds_into_our_own_piece() -> None:
    """A loan that was worn there is worn here."""
    other, ours = theirs(), Book()
    ours.add(draft(K.REGISTERED, "00:10", state={"custody": "loan", "stage": "checked"}))
    ours.add(take(other.entries[1], SHELL))
    piece = fold(ours.entries).piece(SHELL)
    assert (piece.state.stage, piece.state.custody) == (CareStage.WORN, Custody.LOAN)


def test_a_correction_follows_from_the_other_department() -> None:
    """They withdrew it; it is withdrawn here once their correction is taken in."""
    other, ours = theirs(), Book()
    other.add(draft(K.CORRECTED, "05:00", corrects=2, reason="typing", withdrawn=True))
    ours.add(*(take(entry) for entry in other.entries))
    history = fold(ours.entries).pieces[0].history
    assert [line.effect for line in history] == [Effect.TOOK, Effect.WITHDRAWN]


def test_we_may_correct_what_they_wrote_for_ourselves() -> None:
    """Our correction names our own entry; their bytes stay."""
    other, ours = theirs(), Book()
    ours.add(*(take(entry) for entry in other.entries))
    thing = ours.entries[1].read_header().item
    ours.add(draft(K.CORRECTED, "09:00", thing=thing, corrects=2, reason="x", withdrawn=True))
    assert fold(ours.entries).pieces[0].history[1].effect is Effect.WITHDRAWN


def test_an_entry_that_came_through_a_third_department_keeps_its_origin() -> None:
    """What they had from a third is unpacked to the end."""
    other, between, ours = theirs(), Book(InstallationId("d-17")), Book()
    between.add(take(other.entries[1]))
    ours.add(take(between.entries[0], SHELL))
    fact = fold(ours.entries).piece(SHELL).history[0].settled.fact
    assert (fact.origin, fact.origin_seq, fact.kind) == (D05, 2, K.WORN)


def test_their_doubtful_clock_is_theirs() -> None:
    """A fact that they flagged folds at the last time they trusted."""
    other, ours = theirs(), Book()
    other.now = at("08:00").replace(year=2036)
    other.add(draft(K.BAGGED, "09:00"))
    ours.add(take(other.entries[2], SHELL))
    fact = fold(ours.entries).piece(SHELL).history[0].settled.fact
    assert (fact.earliest, fact.flags) == (at("08:00"), ("clock-ahead",))


def test_their_future_is_our_now() -> None:
    """Stated for later than we took it in: their clock is fast; it counts as recorded here."""
    other, ours = theirs(), Book()
    other.now = at("12:00")
    other.add(draft(K.BAGGED, "11:00"))
    ours.add(take(other.entries[2], SHELL))
    fact = fold(ours.entries).piece(SHELL).history[0].settled.fact
    assert (fact.earliest, fact.flags) == (at("08:00"), ("occurred-ahead",))


@pytest.mark.parametrize("part", ["hash", "payload", "header"])
def test_a_damaged_entry_is_not_taken_in(part: str) -> None:
    """It does not match itself."""
    entry = theirs().entries[1]
    changed = {
        "hash": dataclasses.replace(entry, hash="0" * 64),
        "payload": dataclasses.replace(entry, payload='{"member":"d5-8"}'),
        "header": dataclasses.replace(entry, header=entry.header.replace("d5-1", "d5-2")),
    }
    with pytest.raises(BadInputError):
        take(changed[part])


def unknown(entry: Entry, old: str, new: str) -> Entry:
    """Return an entry as a later program might have written it."""
    header = entry.header.replace(old, new)
    return dataclasses.replace(entry, header=header, hash=entry_hash(header))


def test_an_unknown_version_is_refused_not_guessed() -> None:
    """A format of the future is not taken in."""
    with pytest.raises(BadInputError) as error:
        take(unknown(theirs().entries[1], '"v":1', '"v":2'))
    assert error.value.faults[0].message == "ledger.header.version"


def smuggled(entry: Entry) -> Book:
    """Return our record with a foreign entry that this program cannot read."""
    ours = Book()
    draft_ = take(theirs().entries[1], SHELL)
    payload = {**json.loads(draft_.payload), "header": entry.header, "hash": entry.hash}
    ours.add(dataclasses.replace(draft_, payload=canonical(payload)))
    return ours


@pytest.mark.parametrize(
    ("old", "new"), [('"v":1', '"v":2'), ('"worn"', '"flown"'), ('"form":1', '"form":9')]
)
def test_what_an_older_program_cannot_read_becomes_a_question(old: str, new: str) -> None:
    """Taken in by a newer program, read by an older: kept, intact, and asked about."""
    ours = smuggled(unknown(theirs().entries[1], old, new))
    piece = fold(ours.entries).piece(SHELL)
    (question,) = piece.questions
    assert question.finding.message == "ledger.ask.unreadable"
    assert (piece.state.stage, verify_chain(ours.entries).intact) == (CareStage.TO_CHECK, True)


def test_an_erased_foreign_entry_is_asked_about() -> None:
    """What it was nobody can see any more."""
    ours = Book()
    ours.add(take(theirs().entries[1], SHELL))
    ours.erase(1)
    assert len(fold(ours.entries).piece(SHELL).questions) == 1


@pytest.mark.parametrize(
    ("part", "value"),
    [
        ("hash", "0" * 64),
        ("origin", "d-06"),
        ("seq", 3),
        ("payload", '{"member":"d5-8"}'),
        ("salt", None),
        ("salt", "no hex"),
        ("header", "{"),
    ],
)
def test_verifying_looks_inside_foreign_entries(part: str, value: object) -> None:
    """A changed byte of theirs shows in our record too."""
    ours = Book()
    good = take(theirs().entries[1], SHELL)
    payload = json.loads(good.payload) | {part: value}
    ours.add(dataclasses.replace(good, payload=canonical(payload)))
    result = verify_chain(ours.entries)
    assert {damage.kind for damage in result.damages} == {"foreign"}
    assert (result.first_bad, result.foreign) == (1, 1)


def test_a_payload_without_an_entry_is_damage() -> None:
    """Something else stands where the entry should be."""
    ours = Book()
    ours.add(dataclasses.replace(take(theirs().entries[1]), payload='{"header":"x","origin":"y"}'))
    (damage,) = verify_chain(ours.entries).damages
    assert (damage.kind, damage.said) == ("foreign", "unreadable")
    assert fold(ours.entries).pieces[0].questions


def test_an_erased_foreign_payload_is_not_looked_into() -> None:
    """There is nothing to look at; that it is missing is told as such."""
    other, ours = theirs(), Book()
    other.erase(2)
    ours.add(take(other.entries[1], SHELL))
    assert verify_chain(ours.entries).intact
    assert fold(ours.entries).piece(SHELL).exposures[0].member == ""
    ours.erase(1)
    assert [damage.kind for damage in verify_chain(ours.entries).damages] == ["payload-missing"]
