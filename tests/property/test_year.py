"""Some months of a small department, lived through the tasks from ledger entries.

What was done is read from the entries' own texts by code that shares nothing with what planned it;
the whole year of sixty members is `python -m benchmarks.year_bench`.
"""

import pytest
from tests.year_checked import missed
from tests.year_simulated import Year, simulate

MEMBERS, WEEKS = 6, 10


@pytest.fixture(scope="module")
def year() -> Year:
    """Let them live."""
    return simulate(MEMBERS, WEEKS, seed=3, spares=1)


def test_nothing_due_is_missed(year: Year) -> None:
    """Every cleaning, inspection and opening by its day; something was due at all."""
    assert sum(len(week.taken) for week in year.weeks) > WEEKS
    assert missed(year) == []


def test_no_seat_is_emptied_by_planned_work(year: Year) -> None:
    """Whoever could ride before the officer took anything can ride after, in something."""
    for week in year.weeks:
        assert week.riding_after >= week.riding_before
        assert week.bare == ()


def test_without_spares_nothing_is_taken_from_anybody_and_the_sheet_says_why() -> None:
    """Six members with one outfit each and no spare: seats stay filled, work falls behind."""
    year = simulate(MEMBERS, 20, seed=3, spares=0)
    causes = {cause for week in year.weeks for _, _, cause in week.overdue}

    assert all(week.riding_after >= week.riding_before for week in year.weeks)
    assert all(week.bare == () for week in year.weeks)
    assert "no-spare" in causes
