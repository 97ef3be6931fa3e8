"""`sootline restore`: a backup comes back into an empty data directory or database."""

import argparse
from pathlib import Path

from sootline.cli.output import deliver, printable
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE
from sootline.wiring.framework import start
from sootline.words import say


def add_arguments(parser: CommandParser) -> None:
    """Add FILE."""
    parser.add_argument("file", type=Path, metavar="FILE", help="store.help.restore_file")


def run(options: argparse.Namespace) -> int:
    """Bring a backup back, under the record's guards, and verify what came."""
    start()
    from sootline.wiring.store import open_store, prepare, restore_backup  # noqa: PLC0415

    store = open_store()
    prepare(store, begin=False)
    backup = restore_backup(store, options.file)
    values = {
        "file": printable(str(options.file)),
        "n": str(backup.entries),
        "hash": backup.verified.head[:16],
    }
    deliver(backup, [say("store.restore.done", values, lang=options.lang)], options)
    return DONE
