"""Whatever is changed in a kept record is found; nothing is found in one that was not changed."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests import ledger_tampering as tampering
from tests.ledger_cases import TARN_HOLLOW, at
from tests.ledger_records import grown

from sootline.core.ledger import Anchor, Entry, take_anchor, verify_chain

LENGTH = 24


def anchor_of(entries: list[Entry]) -> Anchor:
    """Return the anchor somebody else keeps of a record."""
    anchor = take_anchor(TARN_HOLLOW, (entry.hash for entry in entries), at("09:00"))
    assert anchor is not None
    return anchor


@pytest.mark.parametrize("change", tampering.KINDS, ids=lambda one: str(one.__name__))
@pytest.mark.parametrize("seed", range(50))
def test_every_tampering_is_found_with_a_newer_anchor(
    change: tampering.Tampering, seed: int
) -> None:
    """Eight kinds, fifty times each: not one passes, and a first bad entry is named."""
    kept = grown(seed, LENGTH).entries
    anchor = anchor_of(kept)
    before = list(kept)
    after = change(list(kept), random.Random(seed))  # noqa: S311  # repeatable
    if after == before:
        pytest.skip("swapping two equal things changes nothing")
    result = verify_chain(after, [anchor])
    assert not result.intact
    assert result.first_bad is not None
    assert 1 <= result.first_bad <= len(after) + 1
    if change in tampering.BY_CHAIN:
        same = [old == new for old, new in zip(before, after, strict=False)]
        changed = same.index(False) + 1 if False in same else len(after) + 1
        # An erasure that is taken away shows at the payload it stood for.
        assert result.first_bad <= changed
        assert not verify_chain(after).intact


@settings(max_examples=100, deadline=None)
@given(seed=st.integers(0, 10**9), length=st.integers(0, 40))
def test_an_untouched_record_raises_no_alarm(seed: int, length: int) -> None:
    """Corrections, erasures, foreign entries and odd clocks are no damage."""
    kept = grown(seed, length).entries
    anchors = [anchor_of(kept[:n]) for n in {1, len(kept) // 2, len(kept)} if 0 < n <= len(kept)]
    result = verify_chain(kept, anchors)
    assert result.intact
    assert len(result.anchors) == len(anchors)
    assert {one.seq for one in result.erased} == {entry.seq for entry in kept if entry.erased}
