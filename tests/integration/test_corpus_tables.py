"""Does every kind of bad list end as it must, in time and in memory?

Source of the kinds and their outcomes: common practice for files from outside (CWE-409 data
amplification, CWE-22 path traversal, CWE-776 entity expansion, CWE-1236 formula elements in CSV).
Time and memory are measured in a process of their own for each file.
"""

import json
import subprocess
import sys
import zipfile
from dataclasses import dataclass
from pathlib import Path

import pytest
from tests.integration import bad_tables as bad

MOST_SECONDS = 2.0
MOST_MIB = 128
USUAL_MIB = 64
# Reads one file as the import does; prints outcome, seconds, and MiB above the start.
MEASURED = """
import datetime, json, sys, time
from pathlib import Path
from sootline.core.basis import BadInputError
from sootline.core.roster import Mapping, read_list
from sootline.files.tables import read_table
import sootline.files.csv_tables, sootline.files.xlsx_tables
def high():
    # Not ru_maxrss: a process inherits that one from whoever started it.
    status = Path("/proc/self/status").read_text()
    return int(status.split("VmHWM:")[1].split()[0]) / 1024
before, began = high(), time.process_time()
try:
    got = read_list(read_table(Path(sys.argv[1])), Mapping(), today=datetime.date(2026, 3, 1))
    said = ["accepted", got.rows, [note.message for note in got.findings],
            [len(group.pieces) for group in got.duplicates]]
except BadInputError as error:
    said = ["refused", [(fault.place, fault.message) for fault in error.faults], [], []]
print(json.dumps([said, time.process_time() - began, high() - before]))
"""


@dataclass(frozen=True, kw_only=True)
class Outcome:
    """What became of a file: how many rows, or which faults; what was said of it."""

    rows: int | None
    faults: tuple[tuple[str, str], ...]
    notes: tuple[str, ...]
    duplicates: tuple[int, ...]


def outcome(content: bytes, name: str, folder: Path, *, most_mib: int = USUAL_MIB) -> Outcome:
    """Read a file in a process of its own and hold it to its bounds."""
    path = folder / name
    path.write_bytes(content)
    done = subprocess.run(
        [sys.executable, "-c", MEASURED, str(path)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    (kind, got, notes, duplicates), seconds, mib = json.loads(done.stdout)
    assert seconds < MOST_SECONDS
    assert mib < most_mib
    faults = (
        tuple((place.removeprefix(name), message) for place, message in got or ())
        if (kind == "refused")
        else ()
    )
    rows = got if kind == "accepted" else None
    return Outcome(rows=rows, faults=faults, notes=tuple(notes), duplicates=tuple(duplicates))


ACCEPTED = [
    ("plain.csv", bad.pieces(*(f"SN-{n}" for n in range(20))), 20),
    ("sql.csv", bad.pieces("'); DROP TABLE gear;--", "1' OR '1'='1", "%' --"), 3),
    ("path.csv", bad.pieces("../../etc/passwd", "C:\\x\\y", "CON"), 3),
    ("formula.csv", bad.pieces('"=HYPERLINK(""http://example.invalid"")"', "+1+1", "@SUM(A1)"), 3),
    ("utf16.csv", bad.listed(f"SN-\u20ac1,{bad.ROW}", encoding="utf-16"), 1),
    ("utf32.csv", bad.listed(f"SN-1,{bad.ROW}", encoding="utf-32"), 1),
    ("mark.csv", bad.listed(f"SN-1,{bad.ROW}", encoding="utf-8-sig"), 1),
    ("semicolon.csv", bad.pieces("SN-1").replace(b",", b";"), 1),
    ("tab.txt", bad.pieces("SN-1").replace(b",", b"\t"), 1),
    ("told.csv", b"sep=;\r\n" + bad.pieces("SN-1").replace(b",", b";"), 1),
    ("mac.csv", bad.pieces("SN-1").replace(b"\n", b"\r"), 1),
    ("plain.xlsx", bad.workbook(), 1),
]


@pytest.mark.parametrize(("name", "content", "rows"), ACCEPTED, ids=[one[0] for one in ACCEPTED])
def test_a_readable_list_comes_in(name: str, content: bytes, rows: int, tmp_path: Path) -> None:
    """Texts that look like commands, paths or formulas are texts; encodings are told by a mark."""
    assert outcome(content, name, tmp_path).rows == rows


REFUSED_LISTS = [
    ("steering_cells", bad.pieces("\t=1+1"), [(":2:serial", "roster.text.control")]),
    (
        "bidi",
        bad.pieces("SN-\u202e01", "SN-\a", "\x1b[31m"),
        [(f":{row}:serial", "roster.text.control") for row in (2, 3, 4)],
    ),
    ("cp1252", bad.listed(f"SN-\xe9,{bad.ROW}", encoding="cp1252"), [(":2", "table.encoding")]),
    ("nul", bad.pieces("SN-\0A"), [(":2", "table.nul")]),
    ("utf16_without_mark", bad.pieces("A").decode().encode("utf-16-le"), [(":1", "table.nul")]),
    ("cut_utf16", bad.listed("A", encoding="utf-16")[:-1], [(":2", "table.encoding")]),
    ("open_quote", bad.listed(f'"SN-1,{bad.ROW}', *[f"SN-2,{bad.ROW}"] * 50),
     [(":2", "table.quote_open")]),
    (
        "open_quote_in_third_line",
        bad.listed(f"A,{bad.ROW}", f'"B\nC",{bad.ROW.replace("hood", chr(34) + "hood")}'),
        [(":4", "table.quote_open")],
    ),
    ("open_quote_long", bad.listed('"' + "x\n" * 90_000), [(":2", "table.quote_open")]),
    ("stray_quote", bad.listed(f'"SN"1,{bad.ROW}'), [(":2", "table.quote_inside")]),
    (
        "ragged",
        bad.listed("SN-1,hood", f"SN-2,{bad.ROW}", f"SN-3,{bad.ROW},extra"),
        [(":2", "table.ragged"), (":4", "table.ragged")],
    ),
    ("header_twice", b"serial,Serial,kind\nA,B,hood\n", [(":1", "table.header_twice")]),
    ("no_header", b"\n\n", [("", "table.empty")]),
    ("empty", b"", [("", "table.empty")]),
    ("two_delimiters", b"serial;a,b;kind,c\n1,1;2\n", [("", "table.delimiter")]),
    ("bars", b"serial|kind\nA|hood\n", [("", "table.delimiter")]),
    ("unnamed", b"serial,kind,,\nA,hood,,x\n", [(":2", "table.unnamed")]),
    (
        "dates",
        bad.dated("2021-02-30", "0000-00-00", "9999-12-31", "03/04/21", "44287",
                  "2021-03-01T25:00", "1899-12-31", "２０２１-03-01", "2020-02-29"),
        [(f":{row}:made", message) for row, message in zip(range(2, 10), (
            "roster.date.no_such_day", "roster.date.unreadable", "roster.date.unreadable",
            "roster.date.ambiguous", "roster.date.sheet_number", "roster.date.unreadable",
            "roster.date.unreadable", "roster.date.unreadable"), strict=True)],
    ),
    (
        "order",
        bad.listed("O1,hood,,2022-01-01,2021-01-01,", "O2,hood,,2031-01-01,2031-02-01,"),
        [
            (":2:in_service", "roster.order.before_made"),
            (":3:made", "roster.order.future"),
            (":3:in_service", "roster.order.future"),
        ],
    ),
    ("long_cell", bad.pieces("S" * 200_000), [(":2", "table.cell")]),
    ("long_short_cell", bad.pieces("S" * 4_001), [("", "table.cell")]),
    ("long_quoted_cell", bad.pieces('"' + "S" * 4_001 + '"'), [("", "table.cell")]),
    ("long_line", b"a," * 600_000, [(":1", "table.line")]),
    ("many_columns", ",".join(f"c{n}" for n in range(20_000)).encode(), [(":1", "table.columns")]),
    (
        "counts",
        b"kind,wash_count\n" + b"".join(b"hood,%b\n" % count for count in
                                        (b"-1", b"NaN", b"1e309", b"9223372036854775808")),
        [(f":{row}:wash_count", "roster.count.unreadable") for row in (2, 3, 4, 5)],
    ),
    (
        "events",
        b"serial,event,date\nA,retirement,2024-01-01\nA,cleaning,2024-06-01\n",
        [
            (":2:serial", "roster.event.no_such_piece"),
            (":3:date", "roster.order.after_retirement"),
            (":3:serial", "roster.event.no_such_piece"),
        ],
    ),
    ("empty_lines", b"kind\n" + b"\n" * 15_000_000, [(":500001", "table.lines")]),
    ("empty_cells", b"kind,b\n" + b'"",""\n' * 2_000_000, [(":500001", "table.lines")]),
    ("workbook_by_another_name", bad.workbook(), [("", "table.name_disagrees")]),
    ("pdf", b"%PDF-1.7\n", [("", "table.other_kind")]),
    ("old_workbook", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", [("", "table.old_workbook")]),
]  # fmt: skip


@pytest.mark.parametrize(
    ("content", "faults"), [one[1:] for one in REFUSED_LISTS], ids=[one[0] for one in REFUSED_LISTS]
)
def test_a_bad_list_is_refused_by_place(
    content: bytes, faults: list[tuple[str, str]], tmp_path: Path
) -> None:
    """Every fault has its line; nothing of such a list comes in."""
    assert list(outcome(content, "list.csv", tmp_path).faults) == faults


REFUSED_WORKBOOKS = [
    ("not_zip", b"not a zip!!!", [("", "table.not_workbook")]),
    ("zip_by_two_letters", b"PK not zip", [("", "table.zip.damaged")]),
    ("truncated", bad.workbook()[:2500], [("", "table.zip.damaged")]),
    (
        "formulas",
        bad.workbook(lambda book: book.worksheets[0].append(["=1+1", '=WEBSERVICE("http://x")'])),
        [(":Gear!3", "table.xlsx.formula"), (":Gear!3", "table.xlsx.formula")],
    ),
    ("entities", bad.entities(), [(":xl/workbook.xml", "table.xlsx.declaration")]),
    (
        "bomb",
        bad.bomb(),
        [("", "table.zip.inflated"), (":xl/worksheets/sheet2.xml", "table.zip.ratio")],
    ),
    (
        "slip",
        bad.rewritten(bad.workbook(), **{"../../evil.txt": b"x", "/abs.txt": b"x"}),
        [(":../../evil.txt", "table.zip.path"), (":/abs.txt", "table.zip.path")],
    ),
    ("lying_size", bad.lying(), [(":docProps/app.xml", "table.zip.lying_size")]),
    ("lying_large", bad.lying(5_000), [(":docProps/app.xml", "table.zip.lying_size")]),
    ("lying_checksum", bad.lying_with_checksum(), [(":a.xml", "table.zip.damaged_member")]),
    ("nested", bad.archive({"n0.zip": b"x"}), [(":n0.zip", "table.zip.nested")]),
    (
        "nested_by_content",
        bad.archive({"n0.bin": bad.archive({"a": b"b"})}, zipfile.ZIP_STORED),
        [(":n0.bin", "table.zip.nested")],
    ),
    (
        "members",
        bad.archive({f"m{n}": b"" for n in range(20_000)}),
        [("", "table.zip.members")],
    ),
    ("no_workbook", bad.archive({"a.txt": b"x"}), [("", "table.xlsx.no_workbook")]),
    (
        "error_cell",
        bad.rewritten(bad.workbook(), sheet=b'<worksheet><sheetData><row><c t="str"><v>kind</v></c>'
                      b'</row><row><c t="e"><v>#REF!</v></c></row></sheetData></worksheet>'),
        [(":Gear!2", "table.xlsx.error")],
    ),
    ("not_xml", bad.rewritten(bad.workbook(), sheet=b"<worksheet>"),
     [(":xl/worksheets/sheet1.xml", "table.xlsx.not_xml")]),
    (
        "names_without_end",
        bad.rewritten(bad.workbook(), sheet=bad.numbered("<a%d/>", 400_000)),
        [(":xl/worksheets/sheet1.xml", "table.xlsx.names")],
    ),
    (
        "attributes_without_end",
        bad.rewritten(bad.workbook(), sheet=bad.numbered('<a b%d="1"/>', 400_000)),
        [(":xl/worksheets/sheet1.xml", "table.xlsx.names")],
    ),
    (
        "elements_without_end",
        bad.rewritten(bad.workbook(), sheet=bad.numbered('<a b="%d"/>', 1_100_000)),
        [(":xl/worksheets/sheet1.xml", "table.xlsx.elements")],
    ),
    ("bad_method", bad.archive({"a.xml": b"x" * 500}, zipfile.ZIP_BZIP2),
     [(":a.xml", "table.zip.method")]),
]  # fmt: skip


@pytest.mark.parametrize(
    ("content", "faults"),
    [one[1:] for one in REFUSED_WORKBOOKS],
    ids=[one[0] for one in REFUSED_WORKBOOKS],
)
def test_a_bad_workbook_is_refused_by_place(
    content: bytes, faults: list[tuple[str, str]], tmp_path: Path
) -> None:
    """Judged before it is unpacked, counted while it is."""
    assert list(outcome(content, "list.xlsx", tmp_path).faults) == faults


def test_ways_of_writing_one_serial_are_suggested(tmp_path: Path) -> None:
    """Case, space, dash, Cyrillic, full width, unseen, composed: one suggestion each."""
    variants = bad.pieces("SN-10", "sn-10", " SN-10 ", "SN\u201110", "\u0405N-10", "SN-\uff110",
                          "SN-10\u200b", "Caf\u00e9-1", "Cafe\u0301-1")  # fmt: skip

    assert outcome(variants, "list.csv", tmp_path).duplicates == (7, 2)


def test_a_heading_without_rows_comes_in_with_a_note(tmp_path: Path) -> None:
    """Nothing to take in is said."""
    got = outcome(bad.listed(), "list.csv", tmp_path)

    assert (got.rows, got.notes[0]) == (0, "table.no_rows")


def test_a_table_of_the_largest_size_stays_in_bounds(tmp_path: Path) -> None:
    """A hundred thousand rows without a column that is known: read, and refused as a whole."""
    rows = b"".join(b"%d,%d,%d\n" % (n, n + 1, n + 2) for n in range(100_000))

    got = outcome(b"a,b,c\n" + rows, "list.csv", tmp_path, most_mib=MOST_MIB)

    assert got.faults == ((":1", "roster.column.no_kind"),)


def test_a_row_more_is_refused(tmp_path: Path) -> None:
    """The bound is a bound."""
    got = outcome(b"a\n" + b"1\n" * 100_001, "list.csv", tmp_path)

    assert got.faults == ((":100002", "table.rows"),)


def test_texts_beyond_memory_are_refused(tmp_path: Path) -> None:
    """Twenty MiB of texts of four bytes a letter do not fit, and are not held."""
    row = ("\U0001f600" + "x" * 59 + "%08d,") * 8
    rows = "\n".join(row % tuple(range(n * 8, n * 8 + 8)) for n in range(30_000))

    got = outcome(b"a,b,c,d,e,f,g,h,\n" + rows.encode(), "list.csv", tmp_path, most_mib=MOST_MIB)

    assert got.faults == (("", "table.texts"),)
