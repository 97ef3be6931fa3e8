"""`sootline backup`: the whole store in one file, read back and verified before it counts."""

import argparse
from pathlib import Path

from sootline.cli.output import deliver, printable
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE
from sootline.wiring.framework import start
from sootline.words import say


def add_arguments(parser: CommandParser) -> None:
    """Add FILE and --verify-only."""
    parser.add_argument("file", type=Path, metavar="FILE", help="store.help.backup_file")
    parser.add_argument("--only-verify", action="store_true", help="store.help.only_verify")


def run(options: argparse.Namespace) -> int:
    """Write a backup, or only read one and verify it."""
    start()
    from sootline.wiring.store import open_store, read_backup, write_backup  # noqa: PLC0415

    if options.only_verify:
        backup = read_backup(options.file)
    else:
        backup = write_backup(open_store(), options.file)
    values = {
        "file": printable(str(options.file)),
        "n": str(backup.entries),
        "attachments": str(backup.attachments),
        "accounts": str(backup.accounts),
        "hash": backup.verified.head[:16],
    }
    deliver(backup, [say("store.backup.written", values, lang=options.lang)], options)
    return DONE
