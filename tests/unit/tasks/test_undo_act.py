"""A list comes into the record as one act, and goes as one; nothing is lost by it."""

from dataclasses import replace

import pytest
from tests.unit.tasks.memory_book import COAT, MAREN, act, book, coat, last_about

from sootline.core.basis import BadInputError, ComponentId, DateSpan, MemberId
from sootline.core.gear import Component
from sootline.core.gear.records import Deed, Record
from sootline.core.job.jobs import Member
from sootline.core.ledger import EntryKind, component
from sootline.tasks.correct_entry import correct
from sootline.tasks.import_roster import Register
from sootline.tasks.recording import Book
from sootline.tasks.take_in_roster import take_in_roster
from sootline.tasks.undo_act import undo_act

OFFICER = MemberId("200")
NEW = MemberId("119")
WASHED = Record(deed=Deed.ADVANCED_CLEANING, on=DateSpan.parse("2026-02"), note="list")
CHECKED = Record(deed=Deed.LINER_INSPECTION, on=DateSpan.parse("2026-01-05"), by="206")
GIVEN = Record(deed=Deed.ISSUED, on=DateSpan.parse("2020"))


def _list(*pieces: Component, members: tuple[Member, ...] = (Member(id=NEW),)) -> Register:
    known = (Member(id=MAREN), *members)
    return Register(members=known, components=pieces or (coat(ComponentId("0413")),))


def _pieces(made: Book) -> list[str]:
    return [known.component.id for known in made.register.components()]


def test_a_list_is_one_act() -> None:
    """A new member and a new piece; who is there already is not registered again."""
    made = book()

    taken = take_in_roster(made, act("import-1"), _list(), station="2")

    assert (taken.members, taken.components, taken.deeds, taken.entries) == (1, 1, 0, 2)
    assert len(made.ledger.of_act(OFFICER, "import-1")) == 2
    assert _pieces(made) == [COAT, "0413"]


def test_the_same_list_again_adds_nothing() -> None:
    """It tells what it brought the first time."""
    made = book()
    first = take_in_roster(made, act("import-1"), _list())

    again = take_in_roster(made, act("import-1"), _list())

    assert again == replace(first, entries=0)


def test_deeds_of_a_piece_that_is_there_are_written_up() -> None:
    """What its record has already is not written twice; an issue on a list is none."""
    made = book()
    listed = replace(coat(), records=(WASHED, CHECKED, GIVEN))

    taken = take_in_roster(made, act("a"), _list(listed, members=()))
    (known,) = made.known(COAT)

    assert (taken.deeds, taken.components) == (2, 0)
    assert [(one.deed, str(one.on), one.by) for one in known.component.records] == [
        (Deed.ADVANCED_CLEANING, "2026-02", "not recorded"),
        (Deed.LINER_INSPECTION, "2026-01-05", "206"),
    ]


def test_a_list_with_nothing_new_is_said() -> None:
    """An act without entries is none."""
    with pytest.raises(BadInputError):
        take_in_roster(book(), act("a"), _list(coat(), members=()))


def test_undoing_withdraws_all_at_once() -> None:
    """Pieces and members are gone from the register, and every entry stays."""
    made = book()
    take_in_roster(made, act("import-1"), _list())
    before = made.ledger.head().seq

    done = undo_act(made, act("undo-1"), "import-1", of=OFFICER, reason="wrong list")

    assert (len(done), made.ledger.head().seq) == (2, before + 2)
    assert _pieces(made) == [COAT]
    assert [one.entry.read_header().corrects for one in done] == [before, before - 1]


def test_asked_twice_it_is_undone_once() -> None:
    """The same request gets the same corrections, also where one entry went before."""
    made = book()
    take_in_roster(made, act("import-1"), _list())
    correct(made, act("c"), last_about(made, ComponentId("0413")).seq, reason="x", withdrawn=True)

    first = undo_act(made, act("undo-1"), "import-1", of=OFFICER, reason="wrong list")
    again = undo_act(made, act("undo-1"), "import-1", of=OFFICER, reason="wrong list")

    assert len(first) == 1
    assert [one.entry for one in again] == [one.entry for one in first]


def test_what_was_undone_may_come_in_anew() -> None:
    """Under another key; the numbers are free again."""
    made = book()
    take_in_roster(made, act("import-1"), _list())
    undo_act(made, act("undo-1"), "import-1", of=OFFICER, reason="wrong list")

    taken = take_in_roster(made, act("import-2"), _list())

    assert taken.entries == 2
    assert _pieces(made) == [COAT, "0413"]


def test_what_was_used_since_is_not_taken_away() -> None:
    """The piece and the entry are named; once that is taken back too, the list may go."""
    made = book()
    take_in_roster(made, act("import-1"), _list())
    thing = component("0413")
    made.ledger.append([act("w").entry(EntryKind.WORN, thing, {"member": "118"})])

    with pytest.raises(BadInputError) as raised:
        undo_act(made, act("undo-1"), "import-1", of=OFFICER, reason="wrong list")

    (fault,) = raised.value.faults
    assert (fault.place, fault.message) == (thing, "tasks.undo.used")
    correct(made, act("c"), made.ledger.head().seq, reason="not worn", withdrawn=True)
    undo_act(made, act("undo-1"), "import-1", of=OFFICER, reason="wrong list")
    assert _pieces(made) == [COAT]


@pytest.mark.parametrize(("key", "reason"), [("other", "x"), ("import-1", " ")])
def test_no_such_act_or_no_reason(key: str, reason: str) -> None:
    """Nothing is withdrawn without saying which and why."""
    made = book()
    take_in_roster(made, act("import-1"), _list())

    with pytest.raises(BadInputError):
        undo_act(made, act("u"), key, of=OFFICER, reason=reason)


def test_an_act_is_undone_once() -> None:
    """A second undoing has nothing left to withdraw."""
    made = book()
    take_in_roster(made, act("import-1"), _list())
    undo_act(made, act("u"), "import-1", of=OFFICER, reason="wrong")

    with pytest.raises(BadInputError) as raised:
        undo_act(made, act("v"), "import-1", of=OFFICER, reason="wrong")

    assert raised.value.faults[0].message == "tasks.undo.undone"
