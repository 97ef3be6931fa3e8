"""What comes back from a contractor is taken for what it says it is, and for nothing else."""

import datetime as dt
from dataclasses import replace

import pytest

from sootline.core.basis import (
    ComponentId,
    ContaminantId,
    DateSpan,
    KindId,
    MemberId,
    MessageId,
    SetId,
    UnreadableValueError,
)
from sootline.core.exposure import Answer
from sootline.core.gear import Component, Custody, Element, Hold, Label, State
from sootline.core.rulebook import Decider
from sootline.core.upkeep.contractor import (
    Arrival,
    Disclosed,
    Manifest,
    Receipt,
    Received,
    Reconciled,
    Sent,
    Service,
    estimate_turnaround,
    list_broken_sets,
    reconcile,
    say_shipment,
    stays_of,
    write_manifest,
)
from sootline.core.upkeep.contractor.turnaround import Stay

AT = dt.datetime(2026, 2, 2, 9, tzinfo=dt.UTC)
CLEAN = (Service.ADVANCED_CLEANING,)


def piece(name: str, kind: str = "coat-shell", **given: object) -> Component:
    """Return one component."""
    return Component(id=ComponentId(name), kind=KindId(kind), **given)  # type: ignore[arg-type]


REGISTER = (
    piece("0412", size=(("chest", "44"),), set=SetId("S1"), owner=MemberId("118")),
    piece("0713", "coat-liner", set=SetId("S1"), label=Label(serial="LK-77")),
    piece("0500", size=(("chest", "40"),)),
    piece("0600"),
)


def manifest(*names: str, **given: object) -> Manifest:
    """Return a shipment of some components."""
    pieces = tuple(Sent(component=ComponentId(name), services=CLEAN) for name in names)
    facts: dict[str, object] = {"by": "118", **given}
    return Manifest(id="m1", provider="Mendwell", at=AT, pieces=pieces, **facts)  # type: ignore[arg-type]


def came(*pieces: Received, sent: tuple[str, ...] = ("0412", "0713", "0500")) -> Reconciled:
    """Reconcile one delivery."""
    receipt = Receipt(manifest="m1", at=AT + dt.timedelta(days=9), by="206", pieces=pieces)
    return reconcile(manifest(*sent), (receipt,), REGISTER)


@pytest.mark.parametrize(
    ("received", "arrival", "candidates"),
    [
        (Received(read="0412"), Arrival.RETURNED, ()),
        (Received(read="O412"), Arrival.PROBABLE, ("0412",)),
        (Received(read="412"), Arrival.PROBABLE, ("0412",)),
        (Received(read="4012"), Arrival.PROBABLE, ("0412",)),
        (Received(read="04121"), Arrival.PROBABLE, ("0412",)),
        (Received(read="LK77"), Arrival.PROBABLE, ("0713",)),
        (Received(read="9"), Arrival.FOREIGN, ()),
        (Received(read="0412", marked="Ostrey"), Arrival.FOREIGN, ("0412",)),
        (Received(read="0412", kind=KindId("hood")), Arrival.PROBABLE, ("0412",)),
        (Received(), Arrival.UNIDENTIFIED, ()),
        (Received(kind=KindId("coat-shell"), size="44"), Arrival.UNIDENTIFIED, ("0412",)),
        (Received(kind=KindId("coat-shell")), Arrival.UNIDENTIFIED, ("0412", "0500")),
        (Received(kind=KindId("coat-liner"), size="44"), Arrival.UNIDENTIFIED, ("0713",)),
        (Received(read="0600"), Arrival.NOT_SENT, ()),
    ],
)
def test_a_piece_is_what_it_says(
    received: Received, arrival: Arrival, candidates: tuple[str, ...]
) -> None:
    """By its own number; a similar one is a question; another's mark wins over a number."""
    (one,) = came(received).arrived
    expected = () if received.marked else candidates

    assert (one.arrival, one.candidates, one.read) == (arrival, expected, received.read)


def test_the_same_number_twice_is_one_piece_back() -> None:
    """The second is shown; it stands for no other."""
    found = came(Received(read="0412"), Received(read="0412"))

    assert [one.arrival for one in found.arrived] == [Arrival.RETURNED, Arrival.TWICE]
    assert found.missing == ("0713", "0500")


def test_a_named_persons_word_brings_a_piece_back_once() -> None:
    """A word for a piece that is back already, or was never sent, brings nothing back."""
    word = Received(read="O412", confirmed=ComponentId("0412"), confirmed_by="206")
    stranger = replace(word, confirmed=ComponentId("0600"))
    found = came(word, replace(word, read="?"), stranger)

    assert [one.arrival for one in found.arrived] == [
        Arrival.CONFIRMED,
        Arrival.TWICE,
        Arrival.FOREIGN,
    ]


def test_receipts_of_other_shipments_are_passed_over() -> None:
    """Each delivery belongs to its own shipment."""
    other = Receipt(manifest="m2", at=AT, by="206", pieces=(Received(read="0412"),))

    assert reconcile(manifest("0412"), (other,), REGISTER).missing == ("0412",)


@pytest.mark.parametrize(
    ("promised", "message", "days"),
    [
        (DateSpan(), "contractor.missing.unpromised", "9"),
        (DateSpan.parse("2026-02-09"), "contractor.missing.late", "2"),
        (DateSpan.parse("2026-02-11"), "contractor.missing.out", "0"),
    ],
)
def test_late_counts_from_the_promise(promised: DateSpan, message: str, days: str) -> None:
    """Nine days out; late only past what was promised."""
    found = reconcile(manifest("0412", promised=promised), (), REGISTER)
    (said,) = say_shipment(found, dt.date(2026, 2, 11))

    assert (said.message, said.value("n")) == (message, days)


def test_every_piece_that_does_not_speak_for_itself_is_said() -> None:
    """Back by its number is said nowhere; by a person's word, as a note."""
    word = Received(read="O500", confirmed=ComponentId("0500"), confirmed_by="206")
    found = came(Received(read="0412"), word, Received())
    messages = [one.message for one in say_shipment(found, AT.date())]

    assert messages[1:] == ["contractor.arrived.confirmed", "contractor.arrived.unidentified"]


def test_a_set_is_not_whole_without_what_is_missing() -> None:
    """The liner stayed away: the coat of that set is broken, and no other set."""
    (broken,) = list_broken_sets(came(Received(read="0412"), Received(read="0500")), REGISTER)

    assert (broken.set, broken.owner, broken.missing) == ("S1", "118", ("0713",))
    assert broken.elements == (Element.COAT,)


def test_a_manifest_says_what_may_be_on_each_piece() -> None:
    """On some pieces, on all, and that not everything is known."""
    hazards = (
        Disclosed(contaminant=ContaminantId("soot"), present=Answer.YES, words="attic"),
        Disclosed(present=Answer.NO, components=(ComponentId("0713"),)),
    )
    pieces = {one.id: one for one in REGISTER}
    sheet = write_manifest(manifest("0412", "0713", hazards=hazards), pieces)

    assert [len(row.hazards) for row in sheet.rows] == [1, 2]
    assert [one.message for one in sheet.said] == [
        "contractor.hazard.present.all",
        "contractor.hazard.denied",
        "contractor.hazard.not_all_known",
    ]


HELD = State(
    holds=(
        Hold(
            cause="powder",
            question=MessageId("care.ask.powder"),
            decider=Decider.SAFETY_OFFICER,
            deputy=Decider.CHIEF,
            escalate_after_h=24,
        ),
    )
)


@pytest.mark.parametrize(
    ("component", "services", "messages"),
    [
        (piece("0412"), CLEAN, []),
        (piece("0412", state=HELD), CLEAN, ["contractor.held"]),
        (piece("0412", state=HELD), (Service.SPECIALISED_CLEANING,), ["contractor.held_special"]),
        (piece("0412", state=State(custody=Custody.EVIDENCE)), CLEAN, ["contractor.evidence"]),
        (piece("0412", label=Label(readable=False)), CLEAN, ["contractor.no_label"]),
    ],
)
def test_what_speaks_against_sending_a_piece(
    component: Component, services: tuple[Service, ...], messages: list[str]
) -> None:
    """A hold, evidence, a label nobody can read."""
    sent = manifest("0412")
    sent = replace(sent, pieces=(Sent(component=component.id, services=services),))
    sheet = write_manifest(sent, {component.id: component})

    assert [one.message for one in sheet.against] == messages


@pytest.mark.parametrize(
    "broken",
    [
        lambda: manifest("0412", by=" "),
        lambda: Receipt(manifest="m1", at=AT, by="", pieces=()),
        lambda: Received(confirmed=ComponentId("0412")),
        lambda: Received(confirmed_by="206"),
    ],
)
def test_nothing_is_sent_received_or_confirmed_by_nobody(broken: object) -> None:
    """A name belongs to each."""
    with pytest.raises((UnreadableValueError, TypeError)):
        broken()  # type: ignore[operator]


def test_turnaround_counts_what_is_still_out() -> None:
    """Two of four back after 5 and 9 days, two out for 3 and 12.

    Source: the product-limit estimate of Kaplan and Meier (1958), worked by hand: 3/4 of those
    at risk after day 3 leave 2/3 not back after day 5, and a half of that after day 9.
    """
    stays = [Stay(days=5, back=True), Stay(days=9, back=True), Stay(days=3, back=False),
             Stay(days=12, back=False)]  # fmt: skip
    found = estimate_turnaround(stays)

    assert (found.n, found.out) == (4, 2)
    assert [day for day, _ in found.curve] == [5, 9]
    assert [left for _, left in found.curve] == pytest.approx([2 / 3, 1 / 3])
    assert found.quantiles == ((0.5, 9), (0.9, None))


def test_stays_are_counted_in_whole_days() -> None:
    """From the day it left to the day it came, or to today."""
    found = came(Received(read="0412"))
    stays = stays_of((found,), (dt.date(2026, 2, 11),), dt.date(2026, 2, 20))

    assert stays == (
        Stay(days=9, back=True),
        Stay(days=18, back=False),
        Stay(days=18, back=False),
    )
