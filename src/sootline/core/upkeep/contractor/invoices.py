"""Is each line of an invoice for something that was sent, ordered, back, and at the price agreed?

Lines are queried, never netted and never paid here; a person decides.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from sootline.core.basis import Bearing, ComponentId, Finding, finding
from sootline.core.gear import Component
from sootline.core.upkeep.contractor.facts import Agreed, Charge, Invoice, Manifest, Service
from sootline.core.upkeep.contractor.receipts import Reconciled
from sootline.core.upkeep.qualified import PRACTICE


@dataclass(frozen=True, kw_only=True)
class Line:
    """One charge, and what speaks against it."""

    charge: Charge
    queries: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class InvoiceCheck:
    """An invoice against its shipment.

    Args:
        unqueried: the sum of the lines nothing speaks against, by currency.
        queried: the sum of the others, by currency.
        total_agrees: whether the lines come to the total at the bottom.
        reasons: what is said of the whole.
    """

    invoice: Invoice
    lines: tuple[Line, ...]
    unqueried: tuple[tuple[str, Decimal], ...]
    queried: tuple[tuple[str, Decimal], ...]
    total_agrees: bool
    reasons: tuple[Finding, ...]


def check_invoice(
    invoice: Invoice, reconciled: Reconciled, components: Mapping[ComponentId, Component]
) -> InvoiceCheck:
    """Check an invoice line by line."""
    seen: set[tuple[str, Service]] = set()
    lines = []
    for charge in invoice.charges:
        key = (charge.read.strip(), charge.service)
        queries = tuple(_queries(charge, reconciled, components, again=key in seen))
        lines.append(Line(charge=charge, queries=queries))
        seen.add(key)
    sums = _sums(line.charge for line in lines)
    agrees = sums == ((invoice.total.currency, invoice.total.amount),) or (
        not sums and invoice.total.amount == 0
    )
    return InvoiceCheck(
        invoice=invoice,
        lines=tuple(lines),
        unqueried=_sums(line.charge for line in lines if not line.queries),
        queried=_sums(line.charge for line in lines if line.queries),
        total_agrees=agrees,
        reasons=tuple(_whole(invoice, reconciled, seen, sums, agrees=agrees)),
    )


def _queries(
    charge: Charge,
    reconciled: Reconciled,
    components: Mapping[ComponentId, Component],
    *,
    again: bool,
) -> Iterator[Finding]:
    """List what speaks against one line."""
    name = ComponentId(charge.read.strip())
    sent = {one.component: one for one in reconciled.manifest.pieces}
    named = {"read": charge.read, "service": charge.service, "price": charge.price}
    if name not in sent:
        yield finding(Bearing.ASKS, "contractor.charge.not_sent", PRACTICE, **named)
        return
    if charge.service not in sent[name].services:
        yield finding(Bearing.ASKS, "contractor.charge.not_ordered", PRACTICE, **named)
    if name in reconciled.missing:
        yield finding(Bearing.ASKS, "contractor.charge.not_back", PRACTICE, **named)
    if again:
        yield finding(Bearing.ASKS, "contractor.charge.twice", PRACTICE, **named)
    agreed = _agreed(charge, reconciled.manifest, components.get(name))
    if agreed is None:
        yield finding(Bearing.ASKS, "contractor.charge.no_price", PRACTICE, **named)
    elif (agreed.price.amount, agreed.price.currency) != (
        charge.price.amount,
        charge.price.currency,
    ):
        yield finding(
            Bearing.ASKS,
            "contractor.charge.other_price",
            agreed.price.ground,
            agreed=agreed.price,
            **named,
        )


def _agreed(charge: Charge, manifest: Manifest, component: Component | None) -> Agreed | None:
    """Return the agreed price: one for the component's kind before one for all kinds."""
    kind = component.kind if component else None
    fitting = [
        one for one in manifest.agreed if one.service is charge.service and one.kind in (None, kind)
    ]
    return max(fitting, key=lambda one: one.kind is not None, default=None)


def _whole(
    invoice: Invoice,
    reconciled: Reconciled,
    charged: set[tuple[str, Service]],
    sums: tuple[tuple[str, Decimal], ...],
    *,
    agrees: bool,
) -> Iterator[Finding]:
    if not agrees:
        lines = ", ".join(f"{amount} {currency}" for currency, amount in sums) or "0"
        total = {"lines": lines, "total": invoice.total}
        yield finding(Bearing.ASKS, "contractor.charge.total", invoice.total.ground, **total)
    for sent in reconciled.manifest.pieces:
        for service in sent.services:
            if sent.component in reconciled.back and (sent.component, service) not in charged:
                named = {"component": sent.component, "service": service}
                yield finding(Bearing.NOTES, "contractor.charge.none", PRACTICE, **named)


def _sums(charges: Iterator[Charge]) -> tuple[tuple[str, Decimal], ...]:
    sums: dict[str, Decimal] = {}
    for charge in charges:
        currency = charge.price.currency
        sums[currency] = sums.get(currency, Decimal(0)) + charge.price.amount
    return tuple(sorted(sums.items()))
