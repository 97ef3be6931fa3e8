"""Whatever bytes a file holds: it is read or refused, and its cells come back as written."""

import csv
import io
import zipfile
from contextlib import suppress

import openpyxl
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl.utils import get_column_letter

from sootline.core.basis import BadInputError
from sootline.core.roster import Table
from sootline.files.csv_tables import csv_table
from sootline.files.tables import Wish, letters_of
from sootline.files.xlsx_tables import xlsx_table

WORKBOOK = io.BytesIO()
_book = openpyxl.Workbook()
_book.worksheets[0].append(["serial", "kind"])
_book.worksheets[0].append(["SN-1", "hood"])
_book.save(WORKBOOK)


def read_or_none(content: bytes) -> Table | None:
    """Read bytes as a list, or say that they were refused."""
    try:
        return csv_table(content, "x.csv", Wish())
    except BadInputError:
        return None


@given(st.binary(max_size=300))
def test_no_bytes_break_the_reading_of_lists(content: bytes) -> None:
    """Read or refused, nothing else."""
    read_or_none(content)


@given(st.text(alphabet='a1,;"\n\r\t=', max_size=60))
def test_no_quoting_breaks_the_reading(text: str) -> None:
    """Quotation marks, separators and line ends in any order."""
    read_or_none(b"a,b\n" + text.encode())


CELLS = st.text(
    alphabet=st.characters(codec="utf-8", exclude_characters="\0", exclude_categories=["Cs"]),
    min_size=1,
    max_size=12,
)


@given(st.lists(st.tuples(CELLS, CELLS), min_size=1, max_size=8))
def test_cells_come_back_as_written(rows: list[tuple[str, str]]) -> None:
    """What another writer quoted is read letter by letter, in its row."""
    file = io.StringIO()
    csv.writer(file).writerows([("one", "two"), *rows])

    table = csv_table(file.getvalue().encode(), "x.csv", Wish())

    visible = [row for row in rows if any(cell.strip() for cell in row)]
    assert [row.cells for row in table.rows] == visible


@settings(max_examples=60)
@given(st.integers(0, len(WORKBOOK.getvalue()) - 1), st.integers(1, 255))
def test_no_flipped_byte_breaks_the_reading_of_workbooks(at: int, change: int) -> None:
    """A workbook with one wrong byte is refused, or read as it was."""
    content = bytearray(WORKBOOK.getvalue())
    content[at] ^= change

    try:
        table = xlsx_table(bytes(content), "x.xlsx", Wish())
    except BadInputError:
        return
    assert [row.cells for row in table.rows] == [("SN-1", "hood")]


@settings(max_examples=60)
@given(st.text(alphabet='<>/crvtf ="1A&;!-x', max_size=60))
def test_no_sheet_breaks_the_reading(inside: str) -> None:
    """Whatever a sheet's part holds."""
    file = io.BytesIO()
    with zipfile.ZipFile(WORKBOOK) as old, zipfile.ZipFile(file, "w") as new:
        for member in old.namelist():
            part = old.read(member)
            if member == "xl/worksheets/sheet1.xml":
                part = f"<worksheet><sheetData>{inside}</sheetData></worksheet>".encode()
            new.writestr(member, part)

    with suppress(BadInputError):
        xlsx_table(file.getvalue(), "x.xlsx", Wish())


@given(st.integers(0, 16_383))
def test_columns_have_the_letters_of_a_spreadsheet(index: int) -> None:
    """Source: ECMA-376 part 1, 18.3.1.4 (cell references); compared with another library."""
    assert letters_of(index) == get_column_letter(index + 1)
