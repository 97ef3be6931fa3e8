"""Whatever stands in a list: no cell breaks the reading, and what is written comes back."""

import datetime as dt

from hypothesis import given, settings
from hypothesis import strategies as st

from sootline.core.basis import BadInputError, DateSpan, Fault, UnreadableValueError
from sootline.core.gear.components import Component
from sootline.core.roster import DateOrder, Field, Mapping, Row, Table, marked, read_list, unmarked
from sootline.core.roster.columns import Column
from sootline.core.roster.dates import read_date
from sootline.core.roster.kinds import KIND_WORDS
from sootline.core.roster.text import kept, skeleton
from sootline.core.roster.writing import GEAR_HEADER, gear_rows
from sootline.files.csv_out import csv_text
from sootline.files.csv_tables import csv_table
from sootline.files.tables import Wish

TODAY = dt.date(2026, 3, 1)
FIELDS = [field for field in Field if field not in (Field.EVENT, Field.DATE)]
CELLS = st.one_of(
    st.text(max_size=30),
    st.sampled_from(
        ["hood", "coat", "44R", "2016", "03/04/21", "44287", "unknown", "3 lb", "in use", "1E+5"]
    ),
    st.from_regex(r"[0-9/.\-]{1,12}", fullmatch=True),
)


def table_of(rows: list[list[str]]) -> tuple[Table, Mapping]:
    """Make a table with one column for everything a list can hold."""
    header = tuple(field.value for field in FIELDS)
    columns = tuple(Column(header=field.value, field=field) for field in FIELDS)
    table = Table(
        name="list.csv",
        header=header,
        rows=tuple(Row(number=n, cells=tuple(row)) for n, row in enumerate(rows, start=2)),
    )
    return table, Mapping(columns=columns)


@given(st.lists(st.lists(CELLS, min_size=len(FIELDS), max_size=len(FIELDS)), max_size=4))
def test_no_cell_breaks_the_reading(rows: list[list[str]]) -> None:
    """A list comes in or is refused with places; nothing else happens."""
    table, mapping = table_of(rows)

    faults: tuple[Fault, ...] = ()
    pieces: tuple[Component, ...] = ()
    try:
        pieces = read_list(table, mapping, today=TODAY).components
    except BadInputError as error:
        faults = error.faults

    assert all(fault.place.startswith("list.csv:") for fault in faults)
    assert len({piece.id for piece in pieces}) == len(pieces)


@given(st.text(max_size=40), st.sampled_from([None, *DateOrder]))
def test_no_text_breaks_the_reading_of_dates(text: str, order: DateOrder | None) -> None:
    """A text is a date or is refused."""
    try:
        span = read_date(text, today=TODAY, order=order)
    except UnreadableValueError:
        return
    assert span == DateSpan.parse(str(span))


@given(
    # Eight digits run together are a day for sure in two centuries only.
    st.dates(dt.date(1971, 1, 1), dt.date(2099, 12, 31)),
    st.sampled_from(["%Y-%m-%d", "%Y/%m/%d", "%d %B %Y", "%b %d, %Y", "%Y%m%d"]),
)
def test_a_day_written_any_sure_way_comes_back(day: dt.date, form: str) -> None:
    """Year first or with the month's name, a day is that day."""
    assert read_date(day.strftime(form), today=TODAY) == DateSpan.day(day)


@given(st.dates(dt.date(2000, 1, 1), dt.date(2026, 1, 1)))
def test_numbers_alone_are_read_only_when_sure(day: dt.date) -> None:
    """Refused just when exchanging day and month gives another real day."""
    try:
        read = read_date(f"{day.day}/{day.month}/{day.year}", today=TODAY).earliest
    except UnreadableValueError:
        assert day.day <= 12
        assert day.day != day.month
    else:
        assert read == day


@given(st.text(max_size=40))
def test_a_mark_comes_off_again(text: str) -> None:
    """Marking never loses a letter, and what is marked runs in no spreadsheet."""
    assert unmarked(marked(text)) == text
    assert not marked(text).startswith(("=", "+", "-", "@", "\t", "\r"))


@given(st.text(alphabet=st.characters(codec="utf-8"), max_size=40))
def test_a_kept_text_is_kept_again(text: str) -> None:
    """What was kept once is kept as it is, and looks like itself."""
    try:
        once = kept(text)
    except UnreadableValueError:
        return
    assert kept(once) == once
    assert skeleton(once) == skeleton(skeleton(once))


SERIALS = st.text(
    alphabet=st.characters(codec="utf-8", categories=["L", "N", "P", "S", "Zs"]),
    max_size=20,
)
PIECES = st.fixed_dictionaries(
    {
        Field.SERIAL: SERIALS,
        Field.KIND: st.sampled_from(sorted(KIND_WORDS)),
        Field.MEMBER: st.sampled_from(["", "M1", "m2", "spare", "=M3"]),
        Field.SET: st.sampled_from(["", "S1"]),
        Field.PLACE: st.sampled_from(["", "Station 1", "-1+1"]),
        Field.STATUS: st.sampled_from(
            ["", "in use", "reserve", "spare", "oos", "on hold", "lost", "retired", "evidence"]
        ),
        Field.CHEST: st.sampled_from(["", "44", "XL"]),
        Field.MAKER: st.sampled_from(["", "Cormorant; Sons, \"Ltd\""]),
        Field.LOT: SERIALS,
        Field.MADE: st.sampled_from(["", "2019-05-20", "05/2019", "2019", "..2019"]),
        Field.IN_SERVICE: st.sampled_from(["", "2020-01-01", "2020"]),
        Field.CLEANED: st.sampled_from(["", "2025-11-02"]),
        Field.MASS: st.sampled_from(["", "3.5 lb", "1.6 kg"]),
        Field.WASH_COUNT: st.sampled_from(["", "0", "7"]),
    }
)  # fmt: skip


@given(st.lists(PIECES, min_size=1, max_size=6))
@settings(max_examples=200)
def test_what_is_written_as_a_list_comes_back_the_same(pieces: list[dict[Field, str]]) -> None:
    """Import, export, import: the same pieces, whatever their serials look like."""
    rows = [[piece.get(field, "") for field in FIELDS] for piece in pieces]
    table, mapping = table_of(rows)
    try:
        first = read_list(table, mapping, today=TODAY).components
    except BadInputError:
        return  # a serial may hold what is no text; the others are enough

    text = csv_text(GEAR_HEADER, gear_rows(first))
    again = csv_table(text.encode(), "back.csv", Wish())

    assert read_list(again, Mapping(), today=TODAY).components == first


BAD = st.sampled_from(["2021-02-30", "44287", "03/04/21", "2031", "soon"])


@given(st.lists(st.tuples(st.booleans(), BAD), min_size=1, max_size=40))
def test_every_fault_is_listed(rows: list[tuple[bool, str]]) -> None:
    """As many faults as bad cells, each at its row, in order."""
    table = Table(
        name="list.csv",
        header=("kind", "made"),
        rows=tuple(
            Row(number=n, cells=("hood", bad if is_bad else "2020"))
            for n, (is_bad, bad) in enumerate(rows, start=2)
        ),
    )
    expected = [f"list.csv:{n}:made" for n, (is_bad, _) in enumerate(rows, start=2) if is_bad]

    try:
        read_list(table, Mapping(), today=TODAY)
        places = []
    except BadInputError as error:
        places = [fault.place for fault in error.faults]

    assert places == expected
