"""What the record says after two liners were swapped (Port Vessick, invented).

Shells A of 101 and B of 102; liners a and b came back in each other's shells. 102 wore B with a at
a car fire before anyone noticed; then a named person found the mismatch and held all four.
Common practice, no published source.
"""

import pytest
from tests.ledger_cases import draft, recorded

from sootline.core.gear import Assembly, CareStage
from sootline.core.ledger import Draft, EntryKind, component
from sootline.core.ledger.folding import fold
from sootline.core.ledger.lives import Folded

K = EntryKind
CHECKED = {"custody": "wash-room", "stage": "checked", "assembly": "apart"}
PARTS = ("A", "B", "a", "b")
WORN_AT_THE_FIRE = ("B", "a")


def entries() -> list[Draft]:
    """Return what was written down, piece by piece."""
    drafts = [draft(K.REGISTERED, "01:00", thing=component(one), state=CHECKED) for one in PARTS]
    drafts += [draft(K.REBUILT, "02:00", thing=component(one), by="131") for one in PARTS]
    drafts += [
        draft(K.WORN, "04:00", thing=component(one), actor="102", member="102", call="car-fire")
        for one in WORN_AT_THE_FIRE
    ]
    drafts += [
        draft(K.HOLD_OPENED, "06:00", thing=component(one), cause="rebuild.match",
              question="rebuild.ask.match", decider="gear-officer", deputy="safety-officer")
        for one in PARTS
    ]  # fmt: skip
    # The rebuild was put right: the parts were not those of one set.
    drafts += [
        draft(K.CORRECTED, "06:10", thing=component(one), corrects=place, reason="liners swapped",
              payload={"by": "131", "assembly": "mismatched"})
        for place, one in enumerate(PARTS, start=5)
    ]  # fmt: skip
    return drafts


@pytest.fixture
def folded() -> Folded:
    """Return what the record adds up to."""
    return fold(recorded(entries()))


@pytest.mark.parametrize("part", PARTS)
def test_the_fire_is_on_the_parts_that_were_worn(folded: Folded, part: str) -> None:
    """On shell B and liner a, worn by 102; 101 was exposed to nothing."""
    worn = [(one.member, one.call) for one in folded.piece(component(part)).exposures]
    assert worn == ([("102", "car-fire")] if part in WORN_AT_THE_FIRE else [])


def test_the_liner_that_was_worn_waits_to_be_looked_at_or_washed(folded: Folded) -> None:
    """It goes back to A's shell only after that; liner b has seen no smoke."""
    assert folded.piece(component("a")).state.stage is CareStage.WORN
    assert folded.piece(component("b")).state.stage is CareStage.CHECKED


@pytest.mark.parametrize("part", PARTS)
def test_the_mismatch_is_told_and_held(folded: Folded, part: str) -> None:
    """The corrected rebuild counts, what was first written stays, and nothing is asked twice."""
    piece = folded.piece(component(part))
    assert piece.state.assembly is Assembly.MISMATCHED
    assert [hold.cause for hold in piece.state.open_holds] == ["rebuild.match"]
    assert "assembly" not in piece.history[1].settled.written.payload
    assert piece.questions == ()
