"""`sootline import`: what would my department's own list become, and does it come in?"""

import argparse
import datetime as dt
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from sootline.cli.commands.import_lines import intake_lines
from sootline.cli.commands.import_record import register_of_record, take_into_record, taken_lines
from sootline.cli.output import deliver, write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE
from sootline.core.basis import (
    BadInputError,
    DateSpan,
    EditionId,
    Fault,
    KindId,
    MessageId,
    UnreadableValueError,
)
from sootline.core.roster import (
    Choice,
    Column,
    DateOrder,
    Decision,
    Field,
    Mapping,
    Table,
    folded,
    suggest_columns,
)
from sootline.tasks.import_roster import Register, import_roster
from sootline.wiring.rosters import (
    Wish,
    mapping_text,
    read_mapping,
    read_register,
    read_table,
    register_text,
)
from sootline.wiring.rules import RULES, read_policy


def add_arguments(parser: CommandParser) -> None:
    """Add FILE, how it is read, and what it is held against."""
    say = parser.add_argument
    say("file", type=Path, metavar="FILE", help="roster.help.file")
    say("--preview", action="store_true", help="roster.help.preview")
    say("--mapping", type=Path, metavar="FILE", help="roster.help.mapping")
    say("--column", action="append", default=[], metavar="NAME=FIELD", help="roster.help.column")
    say("--ignore", action="append", default=[], metavar="NAME", help="roster.help.ignore")
    say("--kind", action="append", default=[], metavar="WORD=KIND", help="roster.help.kind")
    say("--status", action="append", default=[], metavar="WORD=STATUS", help="roster.help.status")
    say("--dates", choices=[order.value for order in DateOrder], help="roster.help.dates")
    say("--encoding", metavar="NAME", help="roster.help.encoding")
    say("--sheet", metavar="NAME", help="roster.help.sheet")
    say("--header-row", type=int, metavar="N", help="roster.help.header_row")
    say("--today", metavar="DATE", help="roster.help.today")
    say("--edition", metavar="EDITION", help="roster.help.edition")
    say("--policy", type=Path, metavar="FILE", help="roster.help.policy")
    say("--known", type=Path, metavar="FILE", help="roster.help.known")
    say("--undated", metavar="keep|pull|SPAN", help="roster.help.undated")
    say("--by", default="", metavar="WHO", help="roster.help.by")
    say("--why", default="", metavar="TEXT", help="roster.help.why")
    say("--into-record", action="store_true", help="roster.help.into_record")
    say("--station", default="", metavar="STATION", help="roster.help.station")


def run(options: argparse.Namespace) -> int:
    """Show what the list becomes; write it to --out unless it is only a preview."""
    mapping = _wished(_remembered(options.mapping), options)
    table = read_table(
        options.file,
        Wish(
            encoding=mapping.encoding,
            sheet=mapping.sheet,
            header_row=mapping.header_row,
        ),
    )
    today = _today(options.today)
    if options.into_record and not options.by:
        raise _refused("--by", "roster.record.by")
    imported = import_roster(
        RULES,
        table,
        _with_columns(mapping, table, options),
        today=today,
        edition=EditionId(options.edition) if options.edition else None,
        policy=read_policy(options.policy) if options.policy else (),
        known=_known(options),
        decision=_decision(options, today),
    )
    written = None if options.preview else options.out
    if written:
        write_whole(written, register_text(imported.register))
        if options.mapping:
            write_whole(options.mapping, mapping_text(imported.mapping))
    lines = list(intake_lines(imported, written, today=today, lang=options.lang))
    if options.into_record and not options.preview:
        lines += taken_lines(take_into_record(options, imported.register), options.lang)
    deliver(imported.intake, lines, argparse.Namespace(**vars(options) | {"out": None}))
    return DONE


def _known(options: argparse.Namespace) -> Register:
    """Return what the list is held against: a file's register, or the record's."""
    if options.known:
        return read_register(options.known)
    return register_of_record() if options.into_record else Register()


def _remembered(path: Path | None) -> Mapping:
    return read_mapping(path) if path and path.exists() else Mapping()


def _wished(mapping: Mapping, options: argparse.Namespace) -> Mapping:
    """Return the remembered mapping with what was said on the command line."""
    kinds = tuple(
        (word, tuple(KindId(kind.strip()) for kind in kinds.split(",")))
        for word, kinds in _pairs("--kind", options.kind)
    )
    return replace(
        mapping,
        ignored=(*mapping.ignored, *options.ignore),
        kinds=(*mapping.kinds, *kinds),
        statuses=(*mapping.statuses, *_pairs("--status", options.status)),
        dates=DateOrder(options.dates) if options.dates else mapping.dates,
        encoding=options.encoding or mapping.encoding,
        sheet=options.sheet if options.sheet is not None else mapping.sheet,
        header_row=options.header_row or mapping.header_row,
    )


def _with_columns(mapping: Mapping, table: Table, options: argparse.Namespace) -> Mapping:
    """Put the columns that were named beside those that are remembered or suggested."""
    named = [_column(name, field) for name, field in _pairs("--column", options.column)]
    if not named:
        return mapping
    left = {folded(name) for name in mapping.ignored}
    before = mapping.columns or suggest_columns(
        name for name in table.header if folded(name) not in left
    )
    said = {folded(column.header) for column in named}
    kept = [column for column in before if folded(column.header) not in said]
    return replace(mapping, columns=(*kept, *named))


def _column(name: str, field: str) -> Column:
    """Read "made", or "coat made" in a list with one line per person."""
    kind, _, last = field.strip().rpartition(" ")
    if last not in [known.value for known in Field]:
        known = ", ".join(one.value for one in Field)
        raise _refused("--column", "roster.column.no_such_field", value=last, known=known)
    return Column(header=name, field=Field(last), kind=kind)


def _pairs(option: str, texts: Iterable[str]) -> tuple[tuple[str, str], ...]:
    pairs = []
    for text in texts:
        name, mark, value = text.rpartition("=")
        if not mark or not name.strip() or not value.strip():
            raise _refused(option, "roster.option.pair", value=text)
        pairs.append((name.strip(), value.strip()))
    return tuple(pairs)


def _today(text: str | None) -> dt.date:
    if text is None:
        return dt.datetime.now().astimezone().date()
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise _refused("--today", "roster.option.day", value=text) from None


def _decision(options: argparse.Namespace, today: dt.date) -> Decision | None:
    if options.undated is None:
        return None
    choice, made = Choice.MADE, DateSpan()
    if options.undated in (Choice.KEEP.value, Choice.PULL.value):
        choice = Choice(options.undated)
    else:
        try:
            made = DateSpan.parse(options.undated)
        except UnreadableValueError:
            raise _refused("--undated", "roster.option.undated", value=options.undated) from None
    return Decision(choice=choice, by=options.by, on=today, why=options.why, made=made)


def _refused(place: str, message: str, **values: str) -> BadInputError:
    fault = Fault(place=place, message=MessageId(message), values=tuple(values.items()))
    return BadInputError([fault])
