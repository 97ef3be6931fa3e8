"""`sootline ledger`: is a record whole, what does it add up to, what is one piece's life?"""

import argparse
import datetime as dt
from pathlib import Path

from sootline.cli.commands.anchor_text import anchor_lines, compared_lines, printed_lines
from sootline.cli.commands.ledger_text import life_lines, replay_lines, verified_lines
from sootline.cli.output import deliver, printable
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import BadInputError, Fault, ItemId, MessageId
from sootline.core.ledger import component, parse_item
from sootline.core.ledger.check_words import read_printed
from sootline.tasks.ports import LedgerExport
from sootline.tasks.read_ledger import life_in, replay_export, verify_export, words_of
from sootline.wiring.framework import start
from sootline.wiring.ledgers import LedgerFile, read_anchor_file


def add_arguments(parser: CommandParser) -> None:
    """Add verify, show, replay and anchor."""
    actions = parser.add_sub_commands("action")
    verify = actions.add_parser("verify", help="ledger.help.verify")
    show = actions.add_parser("show", help="ledger.help.show")
    replay = actions.add_parser("replay", help="ledger.help.replay")
    anchor = actions.add_parser("anchor", help="ledger.help.take_anchor")
    for one in (verify, show, replay):
        one.add_argument(
            "export", type=Path, nargs="?", metavar="EXPORT", help="ledger.help.export"
        )
    verify.add_argument(
        "--anchor", type=Path, nargs="+", action="extend", default=[], metavar="FILE",
        help="ledger.help.anchor",
    )  # fmt: skip
    verify.add_argument(
        "--printed", action="append", default=[], metavar="N:WORDS", help="ledger.help.printed"
    )
    show.add_argument("--item", required=True, metavar="ID", help="ledger.help.item")
    for one in (show, replay):
        one.add_argument("--as-of", metavar="TIME", help="ledger.help.as_of")
        one.add_argument("--known-at", metavar="ENTRY|TIME", help="ledger.help.known_at")
    anchor.add_argument("--daily", action="store_true", help="ledger.help.daily")


def run(options: argparse.Namespace) -> int:
    """Verify and compare: 1 when damaged. Show and replay an export: 1 when a question is open."""
    if options.action == "anchor":
        return _anchor(options)
    if options.action == "verify":
        return _verify(options)
    own_replay = options.export is None and not options.as_of and not options.known_at
    if options.action == "replay" and own_replay:
        return _compare(options)
    export = _export(options.export)
    item = _item(options.item) if options.action == "show" else None
    as_of, known_at = _moment(options.as_of, "--as-of"), _known(options.known_at)
    folded = replay_export(export, as_of=as_of, known_at=known_at, item=item)
    if item is None:
        deliver(folded, replay_lines(folded, options.lang), options)
        return PROBLEM if folded.questions else DONE
    life = life_in(folded, item)
    deliver(life, life_lines(life, options.lang), options)
    return PROBLEM if life.questions else DONE


def _export(path: Path | None) -> LedgerExport:
    """Return an exported record, or without a file the store's own."""
    if path is not None:
        return LedgerFile(path)
    start()
    from sootline.wiring.own_record import OwnRecord  # noqa: PLC0415

    return OwnRecord()


def _verify(options: argparse.Namespace) -> int:
    anchors = [anchor for path in options.anchor for anchor in read_anchor_file(path)]
    printed = [read_printed(text) for text in options.printed]
    export = _export(options.export)
    result = verify_export(export, anchors)
    found = [(n, words, words_of(export, n)) for n, words in printed]
    lines = verified_lines(result, len(anchors) + len(printed), options.lang)
    deliver(result, (*lines, *printed_lines(found, options.lang)), options)
    agreed = all(words == there for _, words, there in found)
    return DONE if result.intact and agreed else PROBLEM


def _anchor(options: argparse.Namespace) -> int:
    """Take an anchor, and with --daily add it to the file that is carried off the machine."""
    start()
    from sootline.wiring.own_record import anchor_file, open_record  # noqa: PLC0415

    store = open_record()
    anchor = store.anchor(store.now())
    if anchor is None:
        raise BadInputError([Fault(place="record", message=MessageId("ledger.anchor.empty"))])
    kept = store.keep_anchor(once_a_day=True) if options.daily else None
    file = printable(str(anchor_file())) if kept else None
    deliver(anchor, anchor_lines(anchor, options.lang, kept_in=file), options)
    return DONE


def _compare(options: argparse.Namespace) -> int:
    """Hold the tables screens read against a replay of the store's own record."""
    start()
    from sootline.wiring.own_record import compare, open_record  # noqa: PLC0415

    compared = compare(open_record())
    told = [(item, how.value) for item, how in compared.differing]
    lines = compared_lines(compared.entries, compared.rows, told, options.lang)
    deliver(compared, lines, options)
    return PROBLEM if compared.differing else DONE


def _item(text: str) -> ItemId:
    """Read what is meant; a name alone is a component's."""
    return parse_item(text) if ":" in text else component(text)


def _known(text: str | None) -> dt.datetime | int | None:
    if text is not None and text.isdecimal() and len(text) < 16:
        return int(text)
    return _moment(text, "--known-at")


def _moment(text: str | None, place: str) -> dt.datetime | None:
    if text is None:
        return None
    try:
        moment = dt.datetime.fromisoformat(text)
    except ValueError:
        moment = None
    if moment is None or moment.utcoffset() is None:
        values = (("text", text),)
        fault = Fault(place=place, message=MessageId("ledger.moment_unreadable"), values=values)
        raise BadInputError([fault])
    return moment
