"""`sootline record`: what happened to gear, people and things, written into the store's record."""

import argparse
import datetime as dt
import platform
from uuid import uuid4

from sootline.cli.commands.record_acts import ACTS, Words
from sootline.cli.output import deliver, finding_lines
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import BadInputError, DeviceId, Fault, MemberId, MessageId
from sootline.core.ledger import ClockSource, Established, Occurred
from sootline.core.ledger.acts import Act
from sootline.tasks.recording import RefusedError
from sootline.wiring.framework import start
from sootline.words import say


def add_arguments(parser: CommandParser) -> None:
    """Add each act with what it needs."""
    actions = parser.add_sub_commands("act")
    for name, words in ACTS.items():
        one = actions.add_parser(name, help=f"store.help.record.act.{name}")
        _add(one, words)
        one.add_argument("--by", required=True, metavar="MEMBER", help="store.help.record.by")
        one.add_argument("--at", metavar="TIME", help="store.help.record.at")
        one.add_argument("--key", metavar="KEY", help="store.help.record.key")


def _add(parser: CommandParser, words: Words) -> None:
    for name in words.one:
        parser.add_argument(name, metavar=name.upper(), help=f"store.help.record.word.{name}")
    for name in words.some:
        parser.add_argument(
            name, nargs="+", metavar=name.upper(), help=f"store.help.record.word.{name}"
        )
    for name in words.needed:
        parser.add_argument(
            f"--{name}", required=True, metavar="TEXT", help=f"store.help.record.word.{name}"
        )
    for name in words.maybe:
        parser.add_argument(
            f"--{name}", default="", metavar="TEXT", help=f"store.help.record.word.{name}"
        )


def run(options: argparse.Namespace) -> int:
    """Record the act, or say what keeps it from being; 1 where a warning comes with it."""
    occurred = _occurred(options.at)
    start()
    from sootline.wiring.own_record import open_record  # noqa: PLC0415
    from sootline.wiring.store import open_book  # noqa: PLC0415

    open_record()
    act = Act(
        idem=options.key or f"record-{uuid4().hex}",
        occurred=occurred,
        device=DeviceId(platform.node() or "console"),
        actor=MemberId(options.by),
        # Who sits at the console is not asked for a password.
        established=Established.VOUCHED,
    )
    try:
        done = ACTS[options.act].do(open_book(), act, options)
    except RefusedError as error:
        raise BadInputError(error.faults) from error
    added = sum(not one.repeated for one in done.entries)
    values = {"n": str(added), "act": act.idem}
    lines = [*finding_lines(done.warnings, lang=options.lang)]
    if done.entries:
        lines.append(say("store.record.done", values, lang=options.lang))
    told = {"act": act.idem, "entries": added, "warnings": done.warnings}
    deliver(told, lines, options)
    return PROBLEM if done.warnings else DONE


def _occurred(text: str | None) -> Occurred:
    if text is None:
        return Occurred.at(dt.datetime.now(dt.UTC), ClockSource.SERVER)
    try:
        moment = dt.datetime.fromisoformat(text)
        return Occurred.at(moment, ClockSource.SAID)
    except ValueError:
        values = (("text", text),)
        message = MessageId("ledger.moment_unreadable")
        raise BadInputError([Fault(place="--at", message=message, values=values)]) from None
