"""`sootline undo`: a whole act of the record is taken back, each entry by a correction."""

import argparse
import platform
from uuid import uuid4

from sootline.cli.output import deliver, printable
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE
from sootline.core.basis import DeviceId, MemberId
from sootline.core.ledger import ClockSource, Established, Occurred
from sootline.core.ledger.acts import Act
from sootline.wiring.framework import start
from sootline.words import say


def add_arguments(parser: CommandParser) -> None:
    """Add ACT, --by, --of and --reason."""
    parser.add_argument("act", metavar="ACT", help="store.help.undo_act")
    parser.add_argument("--by", required=True, metavar="MEMBER", help="store.help.undo_by")
    parser.add_argument("--of", metavar="MEMBER", help="store.help.undo_of")
    parser.add_argument("--reason", required=True, metavar="TEXT", help="store.help.undo_reason")


def run(options: argparse.Namespace) -> int:
    """Withdraw every entry of the act, or none."""
    start()
    from sootline.tasks.undo_act import undo_act  # noqa: PLC0415
    from sootline.wiring.own_record import open_record  # noqa: PLC0415
    from sootline.wiring.store import now, open_book  # noqa: PLC0415

    open_record()
    act = Act(
        idem=f"undo-{uuid4().hex}",
        occurred=Occurred.at(now(), ClockSource.SERVER),
        device=DeviceId(platform.node() or "console"),
        actor=MemberId(options.by),
        # Who sits at the console is not asked for a password.
        established=Established.VOUCHED,
    )
    of = MemberId(options.of or options.by)
    done = undo_act(open_book(), act, options.act, of=of, reason=options.reason)
    values = {"act": printable(options.act), "n": str(len(done))}
    line = say("store.undo.done", values, lang=options.lang)
    deliver({"act": options.act, "withdrawn": len(done)}, [line], options)
    return DONE
