"""Each line of an invoice is for what was sent, ordered, back and at the price agreed, or asked."""

import datetime as dt
from decimal import Decimal

import pytest

from sootline.core.basis import ComponentId, KindId
from sootline.core.gear import Component
from sootline.core.upkeep.contractor import (
    Agreed,
    Charge,
    Invoice,
    InvoiceCheck,
    Manifest,
    Receipt,
    Received,
    Sent,
    Service,
    check_invoice,
    reconcile,
)
from sootline.core.upkeep.repairs import Price

AT = dt.datetime(2026, 2, 2, 9, tzinfo=dt.UTC)
CLEAN, LINER = Service.ADVANCED_CLEANING, Service.LINER_INSPECTION
REGISTER = {
    ComponentId(name): Component(id=ComponentId(name), kind=KindId(kind))
    for name, kind in (("1", "coat-shell"), ("2", "coat-liner"), ("3", "hood"))
}


def usd(amount: str) -> Price:
    """Return a price."""
    return Price(amount=Decimal(amount), currency="USD")


SHIPMENT = Manifest(
    id="m1",
    provider="Mendwell",
    at=AT,
    by="118",
    pieces=tuple(Sent(component=name, services=(CLEAN,)) for name in REGISTER),
    agreed=(
        Agreed(service=CLEAN, price=usd("28")),
        Agreed(service=CLEAN, price=usd("38"), kind=KindId("coat-liner")),
    ),
)
BACK = Receipt(manifest="m1", at=AT, by="118", pieces=(Received(read="1"), Received(read="2")))


def check(total: str, *charges: tuple[str, Service, str]) -> InvoiceCheck:
    """Check an invoice."""
    rows = tuple(Charge(read=read, service=what, price=usd(much)) for read, what, much in charges)
    invoice = Invoice(manifest="m1", number="A1", total=usd(total), charges=rows)
    found = reconcile(SHIPMENT, (BACK,), REGISTER.values())
    return check_invoice(invoice, found, REGISTER)


@pytest.mark.parametrize(
    ("charge", "messages"),
    [
        (("1", CLEAN, "28"), []),
        (("2", CLEAN, "38"), []),
        (("2", CLEAN, "28"), ["contractor.charge.other_price"]),
        (("9", CLEAN, "28"), ["contractor.charge.not_sent"]),
        (("3", CLEAN, "28"), ["contractor.charge.not_back"]),
        (("1", LINER, "60"), ["contractor.charge.not_ordered", "contractor.charge.no_price"]),
    ],
)
def test_a_line_is_asked_about(charge: tuple[str, Service, str], messages: list[str]) -> None:
    """A price for the kind counts before one for all."""
    (line,) = check(charge[2], charge).lines

    assert [one.message for one in line.queries] == messages


def test_a_line_charged_twice_is_asked_about_once_more() -> None:
    """The first stands; the second is queried and not netted."""
    found = check("56", ("1", CLEAN, "28"), (" 1 ", CLEAN, "28"))

    assert [len(line.queries) for line in found.lines] == [0, 1]
    assert (found.unqueried, found.queried) == (
        (("USD", Decimal(28)),),
        (("USD", Decimal(28)),),
    )


def test_the_sum_at_the_bottom_is_added_up() -> None:
    """A wrong total is said; work that is back and not on the invoice as well."""
    found = check("30", ("1", CLEAN, "28"))

    assert not found.total_agrees
    assert [one.message for one in found.reasons] == [
        "contractor.charge.total",
        "contractor.charge.none",
    ]


def test_an_empty_invoice_of_nothing_agrees() -> None:
    """No lines and a total of nought; one with a sum does not."""
    assert check("0").total_agrees
    assert not check("5").total_agrees
