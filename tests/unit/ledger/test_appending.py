"""Appending: place, key, clock, and what cannot be corrected or erased."""

import datetime as dt

import pytest
from tests.ledger_cases import DAY, SHELL, TARN_HOLLOW, Book, at, draft, load, span

from sootline.core.basis import (
    BadInputError,
    InstallationId,
    ItemId,
    MemberId,
    UnreadableValueError,
)
from sootline.core.ledger import (
    ClockFlag,
    Draft,
    EntryKind,
    Established,
    ItemKind,
    KeyReusedError,
    OvertakenError,
    Second,
    append,
    append_all,
    begin,
    component,
    head_after,
    item,
)
from sootline.core.ledger.hashing import BEGINNING, payload_digest

K = EntryKind
SALT = bytes(range(16))


def flags_of(book: Book) -> tuple[ClockFlag, ...]:
    """Return what is wrong with the last entry's times."""
    return book.entries[-1].read_header().flags


def test_entries_join_on_to_one_another() -> None:
    """Sequences are dense from 1, and each names the hash before it."""
    book = Book()
    book.add(draft(K.HUNG, "04:20"), draft(K.DRIED, "06:20"))
    first, second = (entry.read_header() for entry in book.entries)
    assert (first.seq, first.prev) == (1, BEGINNING)
    assert (second.seq, second.prev) == (2, book.entries[0].hash)
    assert head_after(book.head, book.entries[1]) == book.head


def test_the_header_says_everything_but_the_payload() -> None:
    """Who, when, by which clock and device, about what; and the digest of the rest."""
    done = append(begin(TARN_HOLLOW), draft(K.HUNG, "04:20", place="rack 3"), now=at("08:00"),
                  salt=SALT)  # fmt: skip
    header = done.entry.read_header()
    assert (header.installation, header.item, header.kind) == (TARN_HOLLOW, SHELL, K.HUNG)
    assert (header.device, header.actor, header.established) == ("phone-a", "201", Established.PIN)
    assert (header.recorded_at, header.occurred) == (at("08:00"), span("04:20"))
    assert header.payload_digest == payload_digest(SALT, '{"place":"rack 3"}')
    assert "rack 3" not in done.entry.header
    assert not done.entry.erased


def test_the_same_key_with_the_same_words_is_the_same_request() -> None:
    """A phone that asks again after a lost answer gets the first answer, and adds nothing."""
    book = Book()
    entry = book.add(draft(K.HUNG, "04:20", key="k"))
    again = append(book.head, draft(K.HUNG, "04:20", key="k"), now=at("09:00"), salt=SALT,
                   same_key=entry)  # fmt: skip
    assert (again.entry, again.head, again.repeated) == (entry, book.head, True)


@pytest.mark.parametrize(
    "other",
    [
        draft(K.HUNG, "04:21", key="k"),
        draft(K.DRIED, "04:20", key="k"),
        draft(K.HUNG, "04:20", key="k", place="rack 4"),
    ],
)
def test_the_same_key_with_other_words_is_refused(other: Draft) -> None:
    """Two different things cannot be one request."""
    book = Book()
    entry = book.add(draft(K.HUNG, "04:20", key="k"))
    with pytest.raises(KeyReusedError) as error:
        append(book.head, other, now=at("09:00"), salt=SALT, same_key=entry)
    assert error.value.entry == entry


def test_a_key_of_an_erased_entry_is_still_known() -> None:
    """What was erased cannot be compared; the header decides alone."""
    book = Book()
    book.add(draft(K.NOTED, "04:20", key="k", said="x"))
    book.erase(1)
    other = draft(K.NOTED, "04:20", key="k", said="y")
    assert append(book.head, other, now=at("09:00"), salt=SALT, same_key=book.entries[0]).repeated


def test_an_editor_who_was_overtaken_sees_the_other_entry() -> None:
    """Somebody else wrote about the same piece first."""
    book = Book()
    first, second = book.add(draft(K.HUNG, "04:20")), book.add(draft(K.DRIED, "06:20"))
    mine = draft(K.TOUCH_CHECKED, "07:00", by="118", after=first.seq)
    with pytest.raises(OvertakenError) as error:
        append(book.head, mine, now=at("08:00"), salt=SALT, last_of_item=second)
    assert error.value.entry == second


def test_an_editor_who_saw_the_last_entry_goes_on() -> None:
    """Nothing came between."""
    book = Book()
    last = book.add(draft(K.HUNG, "04:20"))
    mine = draft(K.DRIED, "07:00", after=last.seq)
    assert append(book.head, mine, now=at("08:00"), salt=SALT, last_of_item=last).entry.seq == 2


def test_an_act_is_appended_whole() -> None:
    """Several drafts follow each other in one step."""
    drafts = [draft(K.HUNG, "04:20", thing=component(name)) for name in ("1", "2")]
    done = append_all(begin(TARN_HOLLOW), drafts, now=at("08:00"), salts=[SALT, SALT])
    assert [one.entry.seq for one in done] == [1, 2]
    assert done[1].entry.read_header().prev == done[0].entry.hash


@pytest.mark.parametrize(
    ("now", "flags"),
    [
        (at("08:00"), ()),
        (at("08:00") + dt.timedelta(hours=24), ()),
        (at("07:00"), (ClockFlag.BACK,)),
        (at("08:00") - dt.timedelta(days=1), (ClockFlag.BACK, ClockFlag.FUTURE)),
        (at("08:00").replace(year=1970), (ClockFlag.BACK, ClockFlag.FUTURE)),
        (at("08:00").replace(year=2036), (ClockFlag.AHEAD,)),
        (at("08:00") + dt.timedelta(hours=24, seconds=1), (ClockFlag.AHEAD,)),
    ],
)
def test_a_doubtful_clock_flags_and_refuses_nothing(
    now: dt.datetime, flags: tuple[ClockFlag, ...]
) -> None:
    """A clock that went back, or jumped, is told; the entry stands where it was written."""
    book = Book()
    book.add(draft(K.HUNG, "04:20"))
    book.now = now
    book.add(draft(K.DRIED, "05:20"))
    assert flags_of(book) == flags
    assert book.entries[-1].seq == 2


def test_clocks_set_back_for_winter_flag_nothing() -> None:
    """02:30 comes twice that night; with its offset it is two moments."""
    book = Book()
    book.now = dt.datetime.fromisoformat("2026-10-25T02:50:00+02:00")
    book.add(draft(K.HUNG, "04:20"))
    book.now = dt.datetime.fromisoformat("2026-10-25T02:10:00+01:00")
    book.add(draft(K.DRIED, "05:20"))
    assert flags_of(book) == ()


def test_another_clock_vouches_for_a_quiet_week() -> None:
    """A heartbeat was seen an hour ago: no jump, only quiet."""
    book = Book()
    book.add(draft(K.HUNG, "04:20"))
    book.now = at("08:00") + dt.timedelta(days=7)
    book.add(draft(K.DRIED, "05:20"), seen=book.now - dt.timedelta(hours=1))
    assert flags_of(book) == ()


def test_a_person_ends_the_doubt_about_a_clock() -> None:
    """After a jump every entry is flagged until somebody says that the clock is right."""
    book = Book()
    book.add(draft(K.HUNG, "04:20"))
    book.now = at("08:00") + dt.timedelta(days=40)
    book.add(draft(K.DRIED, "05:20"))
    book.add(draft(K.NOTED, "05:20", said="x"))
    assert flags_of(book) == (ClockFlag.AHEAD,)
    assert book.entries[-1].read_header().trusted_at == at("08:00")
    book.add(draft(K.CLOCK_CONFIRMED, "05:20", thing=department(), by="201"))
    book.add(draft(K.NOTED, "05:20", said="y"))
    assert flags_of(book) == ()


def department() -> ItemId:
    """Return the department as a thing of the record."""
    return item(ItemKind.DEPARTMENT, "tarn-hollow")


def test_what_is_said_to_happen_later_than_now_is_flagged() -> None:
    """A device whose clock runs ahead cannot move a fact into the future."""
    book = Book()
    book.add(draft(K.HUNG, "09:30"))
    assert flags_of(book) == (ClockFlag.FUTURE,)


def refused(book: Book, one: Draft) -> str:
    """Return why a draft cannot be appended."""
    with pytest.raises(BadInputError) as error:
        book.add(one)
    return error.value.faults[0].message.rpartition(".")[2]


def test_only_an_entry_that_is_there_is_corrected() -> None:
    """A correction points at an entry of the record."""
    head = begin(TARN_HOLLOW)
    one = draft(K.CORRECTED, "05:00", corrects=1, reason="typing", withdrawn=True)
    with pytest.raises(BadInputError) as error:
        append(head, one, now=at("08:00"), salt=SALT)
    assert error.value.faults[0].message == "ledger.append.no_target"


def test_a_correction_stays_with_its_thing() -> None:
    """A wrong piece is put right inside the correction, not beside it."""
    book = Book()
    book.add(draft(K.HUNG, "04:20"))
    other = component("0413")
    one = draft(K.CORRECTED, "05:00", thing=other, corrects=1, reason="typing", withdrawn=True)
    assert refused(book, one) == "other_item"


def test_a_correction_says_what_its_kind_demands() -> None:
    """New words are held to the same form as the old ones."""
    book = Book()
    book.add(draft(K.TOUCH_CHECKED, "04:20", by="118"))
    one = draft(K.CORRECTED, "05:00", corrects=1, reason="typing", payload={"said": "dry"})
    assert refused(book, one) == "missing"


def erasure(seq: int, second: str = "118") -> Draft:
    """Return the draft of an erasure by 201 and somebody else."""
    other = Second(person=MemberId(second), established=Established.PIN)
    return draft(K.ERASED, "07:00", erases=seq, second=other, reason="court order")


def test_an_erasure_is_never_erased_or_corrected() -> None:
    """Nobody erases in silence."""
    book = Book()
    book.add(draft(K.NOTED, "04:20", said="x"), erasure(1))
    assert refused(book, erasure(2)) == "erasure_stays"


def test_what_is_erased_is_not_erased_again() -> None:
    """There is nothing left."""
    book = Book()
    book.add(draft(K.NOTED, "04:20", said="x"))
    book.erase(1)
    assert refused(book, erasure(1)) == "erased_already"


def test_one_person_cannot_be_both() -> None:
    """An erasure takes two different people."""
    with pytest.raises(BadInputError) as error:
        erasure(1, second="201")
    assert error.value.faults[0].message == "ledger.draft.same_person"


def test_a_record_has_a_name() -> None:
    """An anchor without it would fit any record."""
    with pytest.raises(BadInputError):
        begin(InstallationId(" "))


def test_a_salt_has_sixteen_bytes() -> None:
    """A short one could be guessed."""
    with pytest.raises(ValueError, match="16"):
        append(begin(TARN_HOLLOW), draft(K.HUNG, "04:20"), now=at("08:00"), salt=b"short")


def test_now_has_its_offset() -> None:
    """A moment without one happens twice on the night the clocks go back."""
    with pytest.raises(UnreadableValueError):
        append(begin(TARN_HOLLOW), draft(K.HUNG, "04:20"), now=DAY.replace(tzinfo=None), salt=SALT)


def test_loads_are_things_of_their_own() -> None:
    """A load's entry is not written about a piece."""
    with pytest.raises(BadInputError):
        draft(K.LOAD_FAILED, "05:20")
    assert draft(K.LOAD_FAILED, "05:20", thing=load("W-9")).item == "load:W-9"
