"""What must hold of the answer for any department, by name and in time."""

import subprocess
import sys
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.riding_large import large_department

from sootline.core.basis import MemberId
from sootline.core.riding import Riding, Situation, timeline, who_rides

SEEDS = st.integers(min_value=0, max_value=100_000)


def department(seed: int, loans: int = 0) -> Situation:
    """Return twelve members after a bad night."""
    return large_department(12, seed, soiled=0.6, spares=0.5, loans=loans)


def renamed(situation: Situation) -> Situation:
    """Give every member another name, against the alphabet."""
    names = {rider.id: MemberId(f"Z{999 - n:03}") for n, rider in enumerate(situation.riders)}
    return replace(
        situation,
        riders=tuple(replace(rider, id=names[rider.id]) for rider in situation.riders),
        units=tuple(
            unit if unit.holder is None else replace(unit, holder=names[unit.holder])
            for unit in situation.units
        ),
    )


def handed(riding: Riding) -> list[list[str]]:
    """Return what each rider wears, in the order of the roster, without the members' names."""
    return [[worn.unit.id for worn in one.outfit] for one in riding.moments[-1].can]


@settings(max_examples=50, deadline=None)
@given(SEEDS)
def test_renaming_members_changes_nothing(seed: int) -> None:
    """The same people ride in the same pieces, whatever they are called."""
    situation = department(seed, loans=2)

    assert handed(who_rides(renamed(situation))) == handed(who_rides(situation))


@settings(max_examples=50, deadline=None)
@given(SEEDS, st.integers(min_value=0, max_value=11))
def test_one_spare_more_never_covers_fewer(seed: int, number: int) -> None:
    """A piece like one on the rack, added once more, costs nobody a seat."""
    situation = department(seed)
    rack = [unit for unit in situation.units if unit.holder is None]
    more = replace(rack[number % len(rack)], id="one more")
    richer = replace(situation, units=(*situation.units, more))

    assert len(who_rides(richer).now.can) >= len(who_rides(situation).now.can)


@settings(max_examples=50, deadline=None)
@given(SEEDS)
def test_everybody_present_is_named_once_and_every_piece_given_once(seed: int) -> None:
    """Who can and who cannot make up the roster; no spare is on two people."""
    situation = department(seed, loans=2)
    riding = who_rides(situation)

    for moment in riding.moments:
        named = [one.member for one in moment.can] + [one.member for one in moment.cannot]
        assert sorted(named) == sorted(rider.id for rider in situation.riders)
        given_out = [w.unit.id for one in moment.can for w in one.outfit if w.handed]
        assert len(given_out) == len(set(given_out))
        assert all(one.gaps for one in moment.cannot)


@settings(max_examples=25, deadline=None)
@given(SEEDS)
def test_nobody_who_rides_steps_back_over_the_next_day(seed: int) -> None:
    """Each step adds members and takes none away."""
    steps = timeline(department(seed, loans=3))

    for before, after in pairwise(steps):
        assert {one.member for one in before.can} < {one.member for one in after.can}


@pytest.mark.parametrize("night", ["0.05 0.5 2", "0.2 0.4 4", "0.5 0.3 0"])
def test_600_members_are_answered_in_under_a_second(night: str) -> None:
    """From one house fire to half the department, and what is not proven is closely bounded.

    Processor time of a process of its own: neither a busy machine nor the tracing of tests counts.
    """
    command = [sys.executable, "-m", "tests.riding_large", *night.split()]
    printed = subprocess.run(command, capture_output=True, text=True, check=True).stdout
    seconds, riding, most = printed.split()

    assert float(seconds) < 1
    assert int(most) - int(riding) <= 2
