"""What does taking a whole list in cost, from the command to the written register?

The bounds are the project's own: 5,000 rows in under 2 seconds, any list within 128 MiB. Seconds
are those of the processor, so that a busy machine does not decide.
"""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import Workbook

HEADER = ("Tag No", "Type", "Assigned To", "Shift", "DOM", "Status", "Remarks")
KINDS = ("coat", "trousers", "hood", "gloves")
ROWS = 5_000
MEASURED = """
import sys, time
from pathlib import Path
began = time.process_time()
from sootline.cli.main import main
code = main(sys.argv[1:])
seconds = time.process_time() - began
status = Path("/proc/self/status").read_text()
print(code, seconds, int(status.split("VmHWM:")[1].split()[0]) / 1024, file=sys.stderr)
"""


def rows() -> list[tuple[str, ...]]:
    """Return an invented list as departments have them: 5,000 lines."""
    return [
        (f"SN-{n:05}", KINDS[n % 4], f"M{n // 20:03}", "ABC"[n % 3], f"{2018 + n % 8}-0{1 + n % 9}",
         "in service", "")
        for n in range(ROWS)
    ]  # fmt: skip


def csv_file(path: Path) -> None:
    """Write the list as CSV."""
    lines = [",".join(row) for row in (HEADER, *rows())]
    path.write_text("\n".join(lines), encoding="utf-8")


def xlsx_file(path: Path) -> None:
    """Write the list as a workbook."""
    book = Workbook(write_only=True)
    sheet = book.create_sheet()
    for row in (HEADER, *rows()):
        sheet.append(row)
    book.save(path)


@pytest.mark.parametrize(("name", "write"), [("big.csv", csv_file), ("big.xlsx", xlsx_file)])
def test_5000_rows_come_in_within_2_seconds_and_128_mib(
    name: str, write: Callable[[Path], None], tmp_path: Path
) -> None:
    """The whole command: start, read, judge by the edition, write the register."""
    write(tmp_path / name)
    out = tmp_path / "register.json"

    said = subprocess.run(
        [sys.executable, "-c", MEASURED, "import", str(tmp_path / name), "--column",
         "Tag No=serial", "--edition", "nfpa-1851/2020", "--out", str(out)],
        capture_output=True, text=True, check=True,
    )  # fmt: skip

    code, seconds, mib = (float(word) for word in said.stderr.split())
    assert code == 0
    assert seconds < 2
    assert mib < 128
    assert out.stat().st_size > ROWS
