"""What comes into the register with a list, held against the adopted edition?"""

import datetime as dt

import pytest

from sootline.core.basis import BadInputError, EditionId, MemberId
from sootline.core.job.jobs import Member
from sootline.core.roster import Field, Mapping, Row, Table
from sootline.tasks.import_roster import Imported, Register, import_roster
from sootline.wiring.rules import RULES

TODAY = dt.date(2026, 3, 1)
TABLE = Table(
    name="list.csv",
    header=("serial", "kind", "member", "crew", "made"),
    rows=(
        Row(number=2, cells=("C1", "coat", "M1", "E2", "2015")),
        Row(number=3, cells=("C2", "coat", "M2", "E2", "2020")),
    ),
)


def taken_in(*, edition: str | None = "nfpa-1851/2020", known: Register | None = None) -> Imported:
    """Take the list in."""
    return import_roster(
        RULES,
        TABLE,
        Mapping(),
        today=TODAY,
        edition=EditionId(edition) if edition else None,
        known=known or Register(),
    )


def test_gear_past_its_life_by_the_edition_is_held() -> None:
    """The adopted edition says how long; shell and liner of the coat of 2015 are held.

    Source: the ten-year life of the US care standard's 2020 edition, as the rule file cites it.
    """
    got = taken_in()

    assert [due.component for due in got.intake.past] == ["C1", "C1/coat-liner"]
    assert [bool(piece.state.open_holds) for piece in got.register.components] == [
        True,
        True,
        False,
        False,
    ]


def test_without_an_edition_nothing_is_held_and_that_is_said() -> None:
    """No text speaks, so no age is judged."""
    got = taken_in(edition=None)

    assert got.intake.past == ()
    assert "roster.note.no_lifetime" in [note.message for note in got.intake.findings]


def test_members_come_in_unless_they_are_recorded() -> None:
    """A member who is known already is not added again."""
    known = Register(members=(Member(id=MemberId("M1")),))

    got = taken_in(known=known)

    assert [(member.id, member.crew) for member in got.register.members] == [("M2", "E2")]


def test_how_the_list_was_read_is_remembered() -> None:
    """The next list of this form is read the same way."""
    fields = [column.field for column in taken_in().mapping.columns]

    assert fields == [Field.SERIAL, Field.KIND, Field.MEMBER, Field.CREW, Field.MADE]


def test_an_unknown_edition_is_refused() -> None:
    """There is no default edition."""
    with pytest.raises(BadInputError):
        taken_in(edition="nfpa-1851/1066")
