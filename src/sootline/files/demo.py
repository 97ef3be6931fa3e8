"""Which files does the demo department have, and which job do they make?

They are what a real department has: a gear list and a list of washes as somebody keeps them, how
those were read the last time, the label texts by style, last night's call, what was written down
between calls, and what was read off in the wash room.
"""

import datetime as dt
import json
from importlib.resources import as_file, files
from pathlib import Path

from sootline.core.basis import EditionId
from sootline.core.job.assemble import assemble
from sootline.core.job.jobs import Job
from sootline.core.job.label_texts import with_label_texts
from sootline.files.jobs import read_part, to_job
from sootline.files.mapping import read_mapping
from sootline.files.registers import read_register, register_text
from sootline.files.tables import Wish, read_table
from sootline.tasks.import_roster import Register, import_roster
from sootline.tasks.ports import Rules

_TODAY = dt.date(2026, 3, 11)
_EDITION = EditionId("nfpa-1851/2020")
# The list has a title of three lines above its header.
_HEADER_ROW = 4
_PARTS = (
    "department.json",
    "members.json",
    "labels.json",
    "last-night.json",
    "year.json",
    "readings.json",
)
_LISTS = ("gear-list.csv", "gear-list.mapping.json", "washes.csv", "washes.mapping.json")


def demo_files() -> tuple[tuple[str, str], ...]:
    """Return the demo department's files by name, as text."""
    folder = files("sootline").joinpath("demo")
    names = (*_PARTS, *_LISTS)
    return tuple((name, folder.joinpath(name).read_text(encoding="utf-8")) for name in names)


def demo_job(rules: Rules) -> Job:
    """Take the lists in as `sootline import` does, and put all files together as one job."""
    with as_file(files("sootline").joinpath("demo")) as folder:
        gear = json.loads(register_text(_gear(rules, folder)))
        parts = [(name, read_part(folder / name)) for name in _PARTS]
    whole = assemble([*parts, ("gear-list.csv", {"components": gear["components"]})])
    return to_job(json.dumps(with_label_texts(whole)), name="demo")


def _gear(rules: Rules, folder: Path) -> Register:
    listed = import_roster(
        rules,
        read_table(folder / "gear-list.csv", Wish(header_row=_HEADER_ROW)),
        read_mapping(folder / "gear-list.mapping.json"),
        today=_TODAY,
        edition=_EDITION,
        known=read_register(folder / "members.json"),
    )
    washed = import_roster(
        rules,
        read_table(folder / "washes.csv"),
        read_mapping(folder / "washes.mapping.json"),
        today=_TODAY,
        known=listed.register,
    )
    return washed.register
