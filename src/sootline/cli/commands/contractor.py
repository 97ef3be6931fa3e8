"""`sootline contractor`: what is out, what came back, what was charged, how long does it take?"""

import argparse
from collections.abc import Iterator
from pathlib import Path

from sootline.cli.output import deliver, finding_lines, printable
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import called, wrapped
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.upkeep.contractor import InvoiceCheck, ManifestSheet
from sootline.tasks.check_contractor import (
    ContractorResult,
    ProviderTime,
    ShipmentResult,
    check_contractor,
)
from sootline.wiring.jobs import read_job
from sootline.words import name, say


def add_arguments(parser: CommandParser) -> None:
    """Add JOB and --manifest."""
    parser.add_argument("job", type=Path, metavar="JOB", help="cli.help.job_file")
    parser.add_argument("--manifest", action="store_true", help="contractor.help.manifest")


def run(options: argparse.Namespace) -> int:
    """Reconcile the job's shipments; 1 while one of them is not settled."""
    result = check_contractor(read_job(options.job))
    deliver(result, _lines(result, options), options)
    return DONE if result.settled else PROBLEM


def _lines(result: ContractorResult, options: argparse.Namespace) -> Iterator[str]:
    lang = options.lang
    if not result.shipments:
        yield say("contractor.cli.none", lang=lang)
    for one in result.shipments:
        yield from _shipment(one, lang)
        if options.manifest:
            yield from _sheet(one.sheet, lang)
        for invoice in one.invoices:
            yield from _invoice(invoice, lang)
        yield ""
    for provider in result.providers:
        yield from _provider(provider, lang)


def _shipment(one: ShipmentResult, lang: str) -> Iterator[str]:
    manifest = one.reconciled.manifest
    values = {
        "id": printable(manifest.id),
        "provider": printable(manifest.provider),
        "at": manifest.at.isoformat(timespec="minutes"),
        "sent": str(len(one.reconciled.back) + len(one.reconciled.missing)),
        "back": str(len(one.reconciled.back)),
        "missing": str(len(one.reconciled.missing)),
    }
    yield from wrapped(say("contractor.cli.heading", values, lang=lang), indent=0)
    yield from finding_lines(one.said, lang=lang)
    yield from finding_lines(one.sheet.against, lang=lang)
    for broken in one.broken:
        named = {
            "set": printable(broken.set),
            "owner": printable(broken.owner or "-"),
            "missing": printable(", ".join(broken.missing)),
            "elements": ", ".join(broken.elements) or "-",
        }
        yield from wrapped(say("contractor.cli.broken", named, lang=lang))


def _sheet(sheet: ManifestSheet, lang: str) -> Iterator[str]:
    yield from ("", say("contractor.cli.sheet", {"id": printable(sheet.manifest.id)}, lang=lang))
    for row in sheet.rows:
        label = row.component.label
        marks = ", ".join(
            mark for mark in (label.maker, label.style, label.lot, label.serial) if mark
        )
        services = ", ".join(name("service", one, lang=lang) for one in row.sent.services)
        line = f"[ ] {called(row.component, lang)}; {printable(marks or '-')}; {services}"
        yield from wrapped(line)
    yield from finding_lines(sheet.said, lang=lang)
    yield from wrapped(say("contractor.cli.return", lang=lang))


def _invoice(check: InvoiceCheck, lang: str) -> Iterator[str]:
    values = {
        "number": printable(check.invoice.number),
        "unqueried": _money(check.unqueried),
        "queried": _money(check.queried),
        "total": str(check.invoice.total),
    }
    yield from ("", say("contractor.cli.invoice", values, lang=lang))
    queries = (query for line in check.lines for query in line.queries)
    yield from finding_lines((*queries, *check.reasons), lang=lang)


def _provider(one: ProviderTime, lang: str) -> Iterator[str]:
    turnaround = one.turnaround
    values = {
        "provider": printable(one.provider),
        "n": str(turnaround.n),
        "out": str(turnaround.out),
    }
    yield from wrapped(say("contractor.cli.turnaround", values, lang=lang), indent=0)
    for share, days in turnaround.quantiles:
        message = "contractor.cli.quantile" if days is not None else "contractor.cli.not_yet"
        share_of = {"percent": f"{share:.0%}", "days": str(days)}
        yield from wrapped(say(message, share_of, lang=lang))


def _money(sums: tuple[tuple[str, object], ...]) -> str:
    return ", ".join(f"{amount} {currency}" for currency, amount in sums) or "0"
