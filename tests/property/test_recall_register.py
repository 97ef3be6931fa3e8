"""A seeded register with known truth: no piece that is meant is ever said not to be.

Source: the rule is the officer's (job analysis, invented county); the truth of each piece is made
with it, and shares no code with the matcher.
"""

from collections import Counter

import pytest
from tests.seeded_register import NOTICE, seeded_register

from sootline.core.basis import Bearing
from sootline.core.gear import Life
from sootline.core.upkeep.recalls import Affected, match_notice

COUNT = 4000


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_no_piece_that_is_meant_is_said_not_to_be(seed: int) -> None:
    """Affected, possible or already gone; and every possible one says what to look at."""
    every = tuple(seeded_register(COUNT, seed))
    matches = tuple(match_notice(NOTICE, (one.piece for one in every)))
    wrong = [
        one.piece.id for one, match in zip(every, matches, strict=True)
        if one.meant and match.affected is Affected.NOT_AFFECTED
    ]  # fmt: skip
    unexplained = [
        match.component for match in matches
        if match.affected is Affected.POSSIBLE
        and not any(one.bearing is Bearing.ASKS for one in match.reasons)
    ]  # fmt: skip

    assert wrong == []
    assert unexplained == []


def test_a_register_is_not_said_to_be_possible_as_a_whole() -> None:
    """Most pieces that are not meant are known not to be; what is affected truly is."""
    every = tuple(seeded_register(COUNT, 4))
    matches = tuple(match_notice(NOTICE, (one.piece for one in every)))
    counted = Counter(
        (one.meant, match.affected) for one, match in zip(every, matches, strict=True)
    )

    assert counted[False, Affected.AFFECTED] == 0
    assert counted[False, Affected.NOT_AFFECTED] > 0.9 * sum(not one.meant for one in every)
    assert counted[True, Affected.AFFECTED] > 0.4 * sum(one.meant for one in every)


def test_only_what_is_disposed_of_is_gone() -> None:
    """Gone pieces would have been affected or possible."""
    every = tuple(seeded_register(COUNT, 5))
    matches = match_notice(NOTICE, (one.piece for one in every))
    lives = {
        one.piece.state.life for one, match in zip(every, matches, strict=True)
        if match.affected is Affected.GONE
    }  # fmt: skip

    assert lives == {Life.DISPOSED}
