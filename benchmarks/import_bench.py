"""How long does a department's list take to come in? `python -m benchmarks.import_bench` prints it.

5,000 rows of an invented list: serial, kind, station, member, size, dates, status, weight; as a
file of separated values and as a workbook, held against the adopted edition.
"""

import datetime as dt
import io
import tempfile
import time
from pathlib import Path

import openpyxl

from sootline.core.basis import EditionId
from sootline.core.roster import Mapping
from sootline.files.rules import RuleFiles
from sootline.files.tables import read_table
from sootline.tasks.import_roster import import_roster

ROWS = 5_000
HEADER = (
    "serial",
    "kind",
    "station",
    "member",
    "size",
    "made",
    "in service",
    "status",
    "weight lb",
)
KINDS = (("coat shell", "44R"), ("coat liner", "44R"), ("pants shell", "38x32"), ("hood", "L"),
         ("gloves", "XL"))  # fmt: skip


def rows() -> list[tuple[str, ...]]:
    """Make the list; every date and serial differs as in a real one."""
    made: list[tuple[str, ...]] = []
    for n in range(ROWS):
        kind, size = KINDS[n % len(KINDS)]
        year, month, day = 2017 + n % 8, 1 + n % 12, 1 + n % 28
        dates = (f"{year}-{month:02}-{day:02}", f"{year + 1}-{month:02}-01")
        place, member = f"Station {n % 9}", f"M{n // 10:03}"
        made.append((f"SN-{n:05}", kind, place, member, size, *dates, "in service", "3.5"))
    return made


def files(folder: Path) -> tuple[Path, Path]:
    """Write the list in both forms."""
    text, book = folder / "list.csv", folder / "list.xlsx"
    text.write_text("\n".join(",".join(row) for row in (HEADER, *rows())), encoding="utf-8")
    workbook = openpyxl.Workbook(write_only=True)
    sheet = workbook.create_sheet("Gear")
    for row in (HEADER, *rows()):
        sheet.append(row)
    content = io.BytesIO()
    workbook.save(content)
    book.write_bytes(content.getvalue())
    return text, book


def main() -> None:
    """Print the seconds each form takes, reading and taking in."""
    rules = RuleFiles()
    with tempfile.TemporaryDirectory() as folder:
        for path in files(Path(folder)):
            began = time.perf_counter()
            table = read_table(path)
            read = time.perf_counter()
            got = import_roster(
                rules,
                table,
                Mapping(),
                today=dt.date(2026, 3, 1),
                edition=EditionId("nfpa-1851/2020"),
            )
            done = time.perf_counter()
            print(
                f"import {path.suffix} {got.intake.rows} rows: read {read - began:.2f} s, "
                f"take in {done - read:.2f} s, together {done - began:.2f} s"
            )


if __name__ == "__main__":
    main()
