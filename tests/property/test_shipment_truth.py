"""A thousand shipments with known truth, reconciled.

Nothing is netted, nothing unidentified is assigned, nothing foreign is moved, no reading is
corrected. Source: the officer's rules (job analysis); the truth of each piece is made with it.
"""

from dataclasses import replace

import pytest
from tests.seeded_shipments import Shipped, seeded_shipment

from sootline.core.upkeep.contractor import Arrival, Reconciled, reconcile

SEEDS = range(1000)


@pytest.fixture(scope="module")
def answers() -> list[tuple[Shipped, Reconciled]]:
    """Reconcile every shipment."""
    return [
        (one, reconcile(one.manifest, (one.receipt,), one.register))
        for one in map(seeded_shipment, SEEDS)
    ]


def test_nothing_is_netted(answers: list[tuple[Shipped, Reconciled]]) -> None:
    """What is back was truly sent and came; the rest is missing, whatever else came."""
    for shipped, found in answers:
        sent = {one.component for one in shipped.manifest.pieces}
        plain = {shipped.truth[place] for place in shipped.plain}

        assert set(found.back) == plain
        assert set(found.missing) == sent - plain
        assert len(found.arrived) == len(shipped.receipt.pieces)


def test_nothing_unidentified_is_assigned(answers: list[tuple[Shipped, Reconciled]]) -> None:
    """A piece without a readable number is nobody's until a person says so."""
    for _, found in answers:
        for one in found.arrived:
            if not one.read.strip():
                assert (one.arrival, one.component) == (Arrival.UNIDENTIFIED, None)
            if one.arrival in (Arrival.PROBABLE, Arrival.UNIDENTIFIED):
                assert one.component is None


def test_nothing_foreign_is_moved(answers: list[tuple[Shipped, Reconciled]]) -> None:
    """Another department's piece is never one of ours, even under our own number."""
    for shipped, found in answers:
        for place, one in enumerate(found.arrived):
            if shipped.truth[place] is None:
                assert one.component is None


def test_no_reading_is_corrected(answers: list[tuple[Shipped, Reconciled]]) -> None:
    """Each piece stands as somebody read it."""
    for shipped, found in answers:
        assert [one.read for one in found.arrived] == [one.read for one in shipped.receipt.pieces]


def test_a_persons_word_settles_one_piece_and_no_other() -> None:
    """Confirmed by name: that component is back, under that name, and nothing else changes."""
    for shipped in map(seeded_shipment, range(200)):
        before = reconcile(shipped.manifest, (shipped.receipt,), shipped.register)
        open_ones = [one for one in before.arrived if one.arrival is Arrival.PROBABLE]
        if not open_ones or shipped.truth[open_ones[0].line] is None:
            continue
        line, truth = open_ones[0].line, shipped.truth[open_ones[0].line]
        pieces = list(shipped.receipt.pieces)
        pieces[line] = replace(pieces[line], confirmed=truth, confirmed_by="206")
        receipt = replace(shipped.receipt, pieces=tuple(pieces))
        after = reconcile(shipped.manifest, (receipt,), shipped.register)

        assert set(after.back) == {*before.back, truth}
        assert (after.arrived[line].arrival, after.arrived[line].by) == (Arrival.CONFIRMED, "206")
