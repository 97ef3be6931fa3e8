"""How are rows written so that no spreadsheet runs them, and every spreadsheet reads them?"""

import csv
import io
from collections.abc import Iterable, Sequence

from sootline.core.roster import marked


def csv_text(header: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """Return a file of comma-separated values, every cell quoted.

    A cell that a spreadsheet could take for a formula gets a ' before it, which reading takes off
    again. The text begins with a byte order mark: without it, spreadsheets guess the encoding.
    """
    file = io.StringIO()
    writer = csv.writer(file, quoting=csv.QUOTE_ALL, lineterminator="\r\n")
    writer.writerow([marked(cell) for cell in header])
    writer.writerows([marked(cell) for cell in row] for row in rows)
    return f"\ufeff{file.getvalue()}"
