"""`sootline export`: the record leaves the program, whole or one thing's part of it with proofs."""

import argparse
from pathlib import Path

from sootline.cli.output import printable, write_whole
from sootline.cli.parser import CommandParser
from sootline.cli.registry import DONE
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.core.ledger import component, parse_item
from sootline.core.ledger.anchors import write_anchor
from sootline.core.ledger.exports import export_all, export_item
from sootline.wiring.framework import start
from sootline.words import say


def add_arguments(parser: CommandParser) -> None:
    """Add FILE, --item, --everything, --job and --anchor."""
    parser.add_argument("file", type=Path, metavar="FILE", help="store.help.export_file")
    parser.add_argument("--item", metavar="ID", help="store.help.export_item")
    parser.add_argument("--everything", action="store_true", help="store.help.export_everything")
    parser.add_argument("--job", action="store_true", help="store.help.export_job")
    parser.add_argument("--anchor", type=Path, metavar="FILE", help="store.help.export_anchor")


def run(options: argparse.Namespace) -> int:
    """Write the record as lines of JSON, and an anchor for somebody else to keep."""
    start()
    if options.everything:
        return _everything(options)
    if options.job:
        return _job(options)
    from sootline.wiring.store import now, open_store, prepare  # noqa: PLC0415

    store = open_store()
    prepare(store)
    anchor = store.anchor(now())
    if options.item and anchor is not None:
        thing = parse_item(options.item) if ":" in options.item else component(options.item)
        lines = export_item(tuple(store.entries()), thing, anchor)
    else:
        lines = export_all(store.head().installation, store.entries(), anchor)
    write_whole(options.file, "\n".join(lines) + "\n")
    if options.anchor and anchor is not None:
        write_whole(options.anchor, write_anchor(anchor) + "\n")
    values = {"file": printable(str(options.file)), "n": str(anchor.n if anchor else 0)}
    print(say("store.export.done", values, lang=options.lang))
    return DONE


def _everything(options: argparse.Namespace) -> int:
    """Write all there is, in open files, without what would let anybody sign in."""
    from sootline.wiring.full_export import export_everything  # noqa: PLC0415
    from sootline.wiring.own_record import open_record  # noqa: PLC0415

    written = export_everything(open_record(), options.file)
    values = {
        "file": printable(str(options.file)),
        "n": str(written.entries),
        "attachments": str(written.attachments),
        "accounts": str(written.accounts),
    }
    print(say("store.export.everything", values, lang=options.lang))
    return DONE


def _job(options: argparse.Namespace) -> int:
    """Write the job that the record makes now, for every command that takes a job file."""
    from sootline.wiring.own_record import job_of_record  # noqa: PLC0415

    job = job_of_record()
    write_whole(options.file, encode(Job, job) + "\n")
    values = {
        "file": printable(str(options.file)),
        "members": str(len(job.members)),
        "components": str(len(job.components)),
        "calls": str(len(job.calls)),
    }
    print(say("store.export.job", values, lang=options.lang))
    return DONE
