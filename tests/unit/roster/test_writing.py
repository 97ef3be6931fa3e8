"""Which words does a written list give a piece?"""

from dataclasses import replace

import pytest
from tests.unit.roster.lists import read

from sootline.core.gear.state import Custody, Life
from sootline.core.roster.statuses import STATUSES
from sootline.core.roster.writing import GEAR_HEADER, gear_rows

STATUS = GEAR_HEADER.index("status")


@pytest.mark.parametrize("word", [word for word in STATUSES if word != "in service"])
def test_a_status_of_a_list_is_written_as_that_word(word: str) -> None:
    """What came in as lost is written as not seen."""
    pieces = read("kind|member|status", f"hood|M1|{word}").components

    assert gear_rows(pieces)[0][STATUS] == word


def test_a_state_no_list_has_a_word_for_is_not_called_another() -> None:
    """A piece in a bag is not written as in service; reading refuses both its words."""
    (piece,) = read("kind", "hood").components
    bagged = replace(piece, state=replace(piece.state, custody=Custody.BAG, life=Life.RESERVE))

    assert gear_rows([bagged])[0][STATUS] == "reserve, bag"


def test_the_last_cleaning_is_written() -> None:
    """Of several records of a kind, the latest."""
    (piece,) = read("kind|made|advanced cleaning", "hood|2020|2024-05-01").components
    later = read("kind|made|advanced cleaning", "hood|2020|2025-05-01").components[0].records

    row = gear_rows([replace(piece, records=(*later, *piece.records))])[0]

    assert row[GEAR_HEADER.index("advanced cleaning")] == "2025-05-01"
