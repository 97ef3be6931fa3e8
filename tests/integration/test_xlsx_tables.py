"""Is a workbook read as it stands: dates of its own calendar, hidden and merged cells said?"""

import datetime as dt

import pytest
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from openpyxl.workbook import Workbook
from openpyxl.worksheet.datavalidation import DataValidation
from tests.integration import bad_tables as bad

from sootline.core.basis import BadInputError
from sootline.core.roster import Table
from sootline.files.tables import Wish
from sootline.files.xlsx_tables import xlsx_table

AS_IT_STANDS = Wish()


def read(content: bytes, wish: Wish = AS_IT_STANDS) -> Table:
    """Read a workbook."""
    return xlsx_table(content, "book.xlsx", wish)


def cells_of(*values: object, form: str | None = None, from_1904: bool = False) -> Table:
    """Read a workbook whose second row holds these values, perhaps in a number format."""

    def change(book: Workbook) -> None:
        if from_1904:
            book.epoch = CALENDAR_MAC_1904
        sheet = book.worksheets[0]
        sheet.delete_rows(1, 2)
        for column, value in enumerate(values, start=1):
            sheet.cell(1, column, f"c{column}")
            cell = sheet.cell(2, column)
            cell.value = value  # type: ignore[assignment]
            if form:
                cell.number_format = form

    return read(bad.workbook(change))


def sheet_of(rows: str) -> bytes:
    """Make a workbook whose sheet's part holds these rows, as text."""
    part = f"<worksheet><sheetData>{rows}</sheetData></worksheet>"
    return bad.rewritten(bad.workbook(), sheet=part.encode())


@pytest.mark.parametrize("from_1904", [False, True])
def test_a_date_is_a_day_of_the_workbooks_calendar(from_1904: bool) -> None:
    """Both calendars give the day that was typed, and say that it was a date.

    Source: ECMA-376 part 1, 18.17.4.1 (1900 and 1904 date bases); written by another library.
    """
    table = cells_of(dt.date(2021, 3, 1), from_1904=from_1904)

    assert table.rows[0].cells == ("2021-03-01",)
    assert table.rows[0].dated == (0,)


@pytest.mark.parametrize(
    "form", ["yyyy-mm-dd", "d/m/yy", "mmm-yy", "[$-409]d-mmm-yyyy;@", "m/d/yy"]
)
def test_any_format_that_shows_days_shows_a_date(form: str) -> None:
    """44287 is 1 April 2021.

    Source: ECMA-376 part 1, 18.17.4.1 and 18.8.30; the day's number from memory.
    """
    assert cells_of(44287, form=form).rows[0].cells == ("2021-04-01",)


@pytest.mark.parametrize("form", ["General", "0.00", '0 "days"', "[Red]0", "h:mm"])
def test_a_number_stays_a_number(form: str) -> None:
    """Words and colours in a format make no date of it."""
    assert cells_of(44287, form=form).rows[0].cells == ("44287",)


def test_a_date_with_a_time_keeps_it() -> None:
    """Noon is not thrown away; the list decides what to make of it."""
    got = cells_of(dt.datetime(2021, 3, 1, 12))  # noqa: DTZ001 - spreadsheets know no zones

    assert got.rows[0].cells == ("2021-03-01T12:00:00",)


@pytest.mark.parametrize(
    ("value", "form", "shown"),
    [
        (12, None, "12"),
        (12.5, None, "12.5"),
        (0.1, None, "0.1"),
        (-1, None, "-1"),
        (1e12, None, "1000000000000"),
        (42, "00000", "00042"),
        (True, None, "TRUE"),
        (False, None, "FALSE"),
        ("text", None, "text"),
        (None, None, ""),
    ],
)
def test_values_are_read_as_shown(value: object, form: str | None, shown: str) -> None:
    """Numbers with all their digits, and the zeros a format puts before a serial."""
    assert cells_of(value, "x", form=form).rows[0].cells[0] == shown


def test_hidden_and_merged_cells_are_said() -> None:
    """They are read as they stand; the officer learns of it."""

    def change(book: Workbook) -> None:
        sheet = book.worksheets[0]
        sheet.row_dimensions[2].hidden = True
        sheet.column_dimensions["B"].hidden = True
        sheet.merge_cells("C2:C4")
        book.create_sheet("old").sheet_state = "hidden"
        book.create_sheet("Spares")

    notes = {str(note.message): dict(note.values) for note in read(bad.workbook(change)).notes}

    assert notes["table.xlsx.sheet_read"]["sheet"] == "Gear"
    assert notes["table.xlsx.other_sheets"]["sheets"] == "Spares"
    assert notes["table.xlsx.hidden_sheets"]["sheets"] == "old"
    assert notes["table.xlsx.hidden_rows"]["places"] == "2"
    assert notes["table.xlsx.hidden_columns"]["places"] == "B"
    assert notes["table.xlsx.merged"]["places"] == "C2:C4"


def test_a_range_of_hidden_columns_is_one() -> None:
    """From the first to the last."""
    part = (
        '<worksheet><cols><col min="2" max="4" hidden="1"/><col min="x" hidden="1"/></cols>'
        '<sheetData><row><c t="str"><v>kind</v></c></row></sheetData></worksheet>'
    )
    notes = read(bad.rewritten(bad.workbook(), sheet=part.encode())).notes

    assert [note.value("places") for note in notes if note.message.endswith("hidden_columns")] == [
        "B:D"
    ]


def test_a_hidden_sheet_is_read_only_when_asked_for() -> None:
    """And then that is said."""

    def change(book: Workbook) -> None:
        book.worksheets[0].sheet_state = "hidden"
        book.create_sheet("Other")

    table = read(bad.workbook(change), Wish(sheet="Gear"))

    assert "table.xlsx.sheet_is_hidden" in [note.message for note in table.notes]


def test_a_title_above_the_heading_is_passed_over_when_told() -> None:
    """The row that names the columns can be said."""
    content = bad.workbook(lambda book: book.worksheets[0].insert_rows(1))

    assert read(content, Wish(header_row=2)).header_row == 2


def test_the_claimed_size_of_a_sheet_is_not_believed() -> None:
    """A sheet that claims a million rows has those it has."""
    content = bad.workbook()
    with_claim = bad.rewritten(
        content,
        sheet=b'<worksheet><dimension ref="A1:XFD1048576"/><sheetData><row r="1"><c r="A1" t="str">'
        b'<v>kind</v></c></row><row r="1048576"><c r="A1048576" t="str"><v>hood</v></c></row>'
        b"</sheetData></worksheet>",
    )

    assert [row.number for row in read(with_claim).rows] == [1_048_576]


def test_shared_strings_are_read_without_their_phonetic_part() -> None:
    """The text, in all its runs, and not how it is pronounced."""
    content = bad.rewritten(
        sheet_of('<row><c t="s"><v>0</v></c></row><row><c t="s"><v>1</v></c></row>'),
        **{
            "xl/sharedStrings.xml": b"<sst><si><t>ki</t><rPh><t>zz</t></rPh><r><t>nd</t></r></si>"
            b"<si><t>hood</t></si></sst>"
        },
    )

    table = read(content)

    assert (table.header, table.rows[0].cells) == (("kind",), ("hood",))


def test_inline_phonetic_parts_are_left_out() -> None:
    """The same within a cell."""
    content = sheet_of('<row><c t="inlineStr"><is><t>kind</t><rPh><t>zz</t></rPh></is></c></row>')

    assert read(content).header == ("kind",)


KIND = '<row r="1"><c t="str"><v>kind</v></c></row>'


@pytest.mark.parametrize(
    ("rows", "message"),
    [
        (KIND + '<row r="1"/>', "table.xlsx.order"),
        ('<row><c r="B1" t="str"><v>x</v></c><c r="A1"/></row>', "table.xlsx.order"),
        (KIND + '<row><c t="s"><v>7</v></c></row>', "table.xlsx.no_such_string"),
        (KIND + '<row><c t="s"><v>-1</v></c></row>', "table.xlsx.no_such_string"),
        (KIND + "<row><c><v>1e400</v></c></row>", "table.xlsx.number"),
        (KIND + "<row><c><v>soon</v></c></row>", "table.xlsx.number"),
        (KIND + "<row><c><v>NaN</v></c></row>", "table.xlsx.number"),
        (KIND + "<row><c><v>12345678901234567</v></c></row>", "table.xlsx.digits_lost"),
        (KIND + f'<row><c t="str"><v>{"x" * 4001}</v></c></row>', "table.cell"),
        (KIND + '<row><c r="GS2" t="str"><v>x</v></c></row>', "table.columns"),
        (KIND + '<row><c r="B2" t="str"><v>x</v></c></row>', "table.unnamed"),
        ("", "table.empty"),
    ],
)
def test_a_cell_that_cannot_be_is_refused(rows: str, message: str) -> None:
    """Out of order, no number, no text of the workbook, too long, too far right."""
    with pytest.raises(BadInputError) as error:
        read(sheet_of(rows))

    assert error.value.faults[0].message == message


@pytest.mark.parametrize(("day", "from_1904"), [(60, False), (0, False), (3_000_000, False),
                                               (-1, True), (2_957_004, True)])  # fmt: skip
def test_a_day_no_calendar_has_is_refused(day: int, from_1904: bool) -> None:
    """Day 60 of the 1900 calendar is the 29 February 1900 that never was.

    Source: ECMA-376 part 1, 18.17.4.1 (the 1900 date base treats 1900 as a leap year).
    """
    with pytest.raises(BadInputError) as error:
        cells_of(day, form="yyyy-mm-dd", from_1904=from_1904)

    assert error.value.faults[0].message == "table.xlsx.day"


@pytest.mark.parametrize(
    ("wish", "message"),
    [(Wish(sheet="Truck 9"), "table.xlsx.no_such_sheet"), (AS_IT_STANDS, "table.xlsx.no_sheet")],
)
def test_a_sheet_that_is_not_there_is_refused(wish: Wish, message: str) -> None:
    """The refusal lists those there are."""
    part = b'<workbook xmlns:r="r"><sheets><sheet name="Gear" r:id="rId1" state="hidden"/></sheets>'
    content = bad.rewritten(bad.workbook(), workbook=part + b"</workbook>")

    with pytest.raises(BadInputError) as error:
        read(content, wish)

    assert error.value.faults[0].message == message


def test_a_part_that_is_not_there_is_refused() -> None:
    """The workbook names a sheet and lacks it."""
    part = b'<workbook xmlns:r="r"><sheets><sheet name="Gear" r:id="rId99"/></sheets></workbook>'

    with pytest.raises(BadInputError) as error:
        read(bad.rewritten(bad.workbook(), workbook=part))

    assert error.value.faults[0].message == "table.xlsx.part_missing"


def test_a_formula_elsewhere_than_in_a_cell_is_no_cells_formula() -> None:
    """What checks the input of a column is not its content."""

    def change(book: Workbook) -> None:
        sheet = book.worksheets[0]
        check = DataValidation(type="list", formula1='"a,b"')
        sheet.add_data_validation(check)
        check.add("A2:A9")

    assert len(read(bad.workbook(change)).rows) == 1
