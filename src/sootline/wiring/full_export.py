"""How does everything leave in files that need no program of ours to be read?

A ZIP file: the record and the other tables as JSON Lines, attachments as they are, and lists for a
spreadsheet. `sootline restore` brings it back. Nobody can sign in with what is in it.
"""

from collections.abc import Iterator, Mapping
from pathlib import Path

from sootline.core.gear import Component
from sootline.core.job.jobs import Member
from sootline.core.job.things import thing_of
from sootline.core.ledger import ItemKind, name_of
from sootline.files.csv_out import csv_text
from sootline.storage.backups import Backup, write_backup
from sootline.storage.ledger import LedgerStore
from sootline.storage.register import RegisterStore
from sootline.tasks.ports import Known

_COMPONENTS = ("id", "kind", "owner", "holder", "set", "station", "maker", "lot", "serial", "made",
               "in_service", "custody", "stage", "assembly", "life", "place", "holds", "washes",
               "last_entry")  # fmt: skip
_MEMBERS = ("id", "crew", "role", "station")


def export_everything(store: LedgerStore, file: Path) -> Backup:
    """Write everything into a file and read it back; arguments and faults as `write_backup`."""
    return write_backup(store, file, secrets=False, lists=_lists)


def _lists(alias: str) -> Mapping[str, str]:
    register = RegisterStore(alias=alias)
    components = map(_row, register.components())
    return {
        "components.csv": csv_text(_COMPONENTS, components),
        "members.csv": csv_text(_MEMBERS, _members(register)),
    }


def _row(known: Known) -> tuple[str, ...]:
    one: Component = known.component
    state, label = one.state, one.label
    cells = (
        one.id, one.kind, one.owner, state.holder, one.set, known.station, label.maker, label.lot,
        label.serial, str(one.made), str(one.in_service), state.custody.value, state.stage.value,
        state.assembly.value, state.life.value, state.place,
        ", ".join(hold.cause for hold in state.open_holds),
        None if one.wash_count is None else str(one.wash_count), str(known.seq),
    )  # fmt: skip
    return tuple(cell or "" for cell in cells)


def _members(register: RegisterStore) -> Iterator[tuple[str, ...]]:
    for life in register.things(ItemKind.MEMBER):
        one = thing_of(ItemKind.MEMBER, name_of(life.item), life.facts)
        assert isinstance(one, Member)  # that is the form of a member
        station = life.facts.get("station")
        cells = (one.id, one.crew, one.role, station)
        yield tuple(str(cell) if cell else "" for cell in cells)
