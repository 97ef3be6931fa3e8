"""Small invented lists, written as a department would, and what reads them."""

import datetime as dt

from sootline.core.basis import BadInputError
from sootline.core.roster import Intake, Mapping, Row, Table, read_list

TODAY = dt.date(2026, 3, 1)
_AS_IT_STANDS = Mapping()


def table(*lines: str, name: str = "list.csv") -> Table:
    """Make a table from its heading and rows, with "|" between the cells."""
    header, *rows = (line.split("|") for line in lines)
    return Table(
        name=name,
        header=tuple(header),
        rows=tuple(
            Row(number=number, cells=tuple(cells)) for number, cells in enumerate(rows, start=2)
        ),
    )


def read(*lines: str, mapping: Mapping = _AS_IT_STANDS) -> Intake:
    """Read such a list as of 1 March 2026."""
    return read_list(table(*lines), mapping, today=TODAY)


def refused(*lines: str, mapping: Mapping = _AS_IT_STANDS) -> list[tuple[str, str]]:
    """Return the place and message of every fault for which such a list is refused."""
    try:
        read(*lines, mapping=mapping)
    except BadInputError as error:
        return [(fault.place, fault.message) for fault in error.faults]
    return []
