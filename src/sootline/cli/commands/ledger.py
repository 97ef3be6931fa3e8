"""`sootline ledger`: is a record whole, what does it add up to, what is one piece's life?"""

import argparse
import datetime as dt
from pathlib import Path

from sootline.cli.commands.ledger_text import life_lines, replay_lines, verified_lines
from sootline.cli.output import deliver
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import BadInputError, Fault, ItemId, MessageId
from sootline.core.ledger import component, parse_item
from sootline.tasks.read_ledger import life_in, replay_export, verify_export
from sootline.wiring.ledgers import LedgerFile, read_anchor_file


def add_arguments(parser: CommandParser) -> None:
    """Add verify, show and replay."""
    actions = parser.add_sub_commands("action")
    verify = actions.add_parser("verify", help="ledger.help.verify")
    show = actions.add_parser("show", help="ledger.help.show")
    replay = actions.add_parser("replay", help="ledger.help.replay")
    for one in (verify, show, replay):
        one.add_argument("export", type=Path, metavar="EXPORT", help="ledger.help.export")
    verify.add_argument(
        "--anchor", type=Path, nargs="+", action="extend", default=[], metavar="FILE",
        help="ledger.help.anchor",
    )  # fmt: skip
    show.add_argument("--item", required=True, metavar="ID", help="ledger.help.item")
    for one in (show, replay):
        one.add_argument("--as-of", metavar="TIME", help="ledger.help.as_of")
        one.add_argument("--known-at", metavar="ENTRY|TIME", help="ledger.help.known_at")


def run(options: argparse.Namespace) -> int:
    """Verify: 1 when damaged. Show and replay: 1 when a question is open."""
    if options.action == "verify":
        return _verify(options)
    export = LedgerFile(options.export)
    item = _item(options.item) if options.action == "show" else None
    as_of, known_at = _moment(options.as_of, "--as-of"), _known(options.known_at)
    folded = replay_export(export, as_of=as_of, known_at=known_at, item=item)
    if item is None:
        deliver(folded, replay_lines(folded, options.lang), options)
        return PROBLEM if folded.questions else DONE
    life = life_in(folded, item)
    deliver(life, life_lines(life, options.lang), options)
    return PROBLEM if life.questions else DONE


def _verify(options: argparse.Namespace) -> int:
    anchors = [read_anchor_file(path) for path in options.anchor]
    result = verify_export(LedgerFile(options.export), anchors)
    deliver(result, verified_lines(result, len(anchors), options.lang), options)
    return DONE if result.intact else PROBLEM


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
