"""What an officer expects of due dates on 2026-03-01, under the policy of this test.

Policy of this test, invented, not a shipped edition: out at ten years from manufacture; advanced
cleaning every 6 months and advanced inspection every 12 months while in use; complete liner
inspection first at 2 years in service, then yearly.
"""

import datetime as dt
from typing import Any

import pytest

from sootline.core.basis import ComponentId, Confidence, DateSpan, EditionId, KindId, RuleId
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.records import Deed, Record
from sootline.core.gear.state import Life, State
from sootline.core.intervals import Due, Matter, Standing, list_due, set_first_day_out
from sootline.core.rulebook.rules import Edition, EditionStatus, Rule, Rulebook, RuleKind

TODAY = dt.date(2026, 3, 1)
RESERVE = State(life=Life.RESERVE)


def edition(name: str, **months: int) -> Edition:
    """Return a text that states some intervals in months."""
    rules = [
        Rule(
            topic=RuleId(topic.replace("_", ".", 2) if topic != "retire" else "retire.months"),
            kind=RuleKind.INTERVAL,
            value=value,
            source="policy of this test",
            confidence=Confidence.POLICY,
        )
        for topic, value in months.items()
    ]
    return Edition(
        id=EditionId(name),
        title=name,
        body=name,
        status=EditionStatus.POLICY,
        in_force=DateSpan(),
        rules=tuple(rules),
    )


BOOK = Rulebook(
    adopted=edition("silent/2020"),
    policy=edition(
        "policy",
        retire=120,
        clean_advanced_months=6,
        inspect_advanced_months=12,
        inspect_liner_first_months=24,
        inspect_liner_repeat_months=12,
    ),
    practice=edition("practice"),
)


def due(matter: Matter, **facts: Any) -> Due:  # noqa: ANN401
    """Return one matter of a component with these facts."""
    facts = {"id": ComponentId("X"), "kind": KindId("coat-liner")} | facts
    return next(
        one for one in list_due(Component(**facts), None, BOOK, TODAY) if one.matter is matter
    )


def span(text: str) -> DateSpan:
    """Read a span."""
    return DateSpan.parse(text)


@pytest.mark.parametrize(
    ("made", "first_day", "standing"),
    [
        pytest.param("2016-02-29", "2026-02-28", Standing.OUT, id="a leap day: out since the 28th"),
        pytest.param("2016-03", "2026-03-01..2026-03-31", Standing.OUT, id="b month only: today"),
        pytest.param(
            "2012-09..2015-07-10", "2022-09-01..2025-07-10", Standing.OUT, id="c past anyway"
        ),
        pytest.param("2017", "2027-01-01..2027-12-31", Standing.LATER, id="h year only"),
        pytest.param("..2016-02-28", "..2026-02-28", Standing.OUT, id="no lower bound, yet past"),
        pytest.param("..2016-03-02", "..2026-03-02", Standing.NOT_KNOWN, id="may be past"),
        pytest.param("unknown", "unknown", Standing.NOT_KNOWN, id="nothing known"),
    ],
)
def test_first_day_out(made: str, first_day: str, standing: Standing) -> None:
    """Ten years from manufacture, acting on the earliest reading and showing the latest."""
    out = due(Matter.RETIREMENT, made=span(made))

    assert (out.first_day, out.standing) == (span(first_day), standing)


def test_d_sealed_reserve_waits_but_its_years_run() -> None:
    """Nothing is due until it is issued; the life clock runs on the shelf."""
    facts = {
        "made": span("2020-09-14"),
        "state": RESERVE,
        "records": (Record(deed=Deed.ADVANCED_INSPECTION, on=span("2024-10-01")),),
    }

    assert due(Matter.RETIREMENT, **facts).first_day == span("2030-09-14")
    for matter in (Matter.ADVANCED_CLEANING, Matter.ADVANCED_INSPECTION, Matter.LINER_INSPECTION):
        waiting = due(matter, **facts)
        assert waiting.standing is Standing.WAITS
        assert waiting.reasons[0].message == "due.reserve"


def test_d_on_issue_the_inspection_is_due() -> None:
    """Once issued, the last inspection counts: seventeen months ago is overdue."""
    issued = due(
        Matter.ADVANCED_INSPECTION,
        made=span("2020-09-14"),
        records=(Record(deed=Deed.ADVANCED_INSPECTION, on=span("2024-10-01")),),
    )

    assert (issued.first_day, issued.standing) == (span("2025-10-01"), Standing.OVERDUE)


def test_e_month_end_clamp_one_day_overdue() -> None:
    """Six months after 31 August is 28 February; on 1 March it is one day over."""
    washed = due(
        Matter.ADVANCED_CLEANING,
        made=span("2019-11-30"),
        records=(Record(deed=Deed.ADVANCED_CLEANING, on=span("2025-08-31")),),
    )

    assert (washed.first_day, washed.standing, washed.days_over) == (
        span("2026-02-28"),
        Standing.OVERDUE,
        1,
    )


def test_f_the_earliest_part_rules_the_set() -> None:
    """A new liner does not make the shell younger, nor the shell the liner older."""
    shell = due(Matter.RETIREMENT, kind=KindId("coat-shell"), made=span("2018-05-20"))
    liner = due(Matter.RETIREMENT, kind=KindId("coat-liner"), made=span("2023-01-10"))
    straps = due(Matter.RETIREMENT, kind=KindId("suspenders"), made=span("2015-01-01"))
    parts = [
        (find_kind(KindId("coat-shell")), shell),
        (find_kind(KindId("coat-liner")), liner),
        (find_kind(KindId("suspenders")), straps),
    ]

    assert set_first_day_out(parts) == span("2028-05-20")
    assert liner.first_day == span("2033-01-10")


def test_g_the_clock_starts_at_manufacture_not_at_issue() -> None:
    """Eighteen months on the shelf are gone."""
    issued = due(Matter.RETIREMENT, made=span("2017-06-05"), in_service=span("2019-01-01"))

    assert issued.first_day == span("2027-06-05")


def test_i_liner_inspection_is_due_today_not_overdue() -> None:
    """Two years in service to the day."""
    opened = due(Matter.LINER_INSPECTION, in_service=span("2024-03-01"))

    assert (opened.first_day, opened.standing, opened.days_over) == (
        span("2026-03-01"),
        Standing.TODAY,
        None,
    )


def test_undated_gear_cannot_be_younger_than_its_first_use() -> None:
    """Nothing was washed before it was made: the wash of 2015 bounds the date, and it is out."""
    legacy = due(
        Matter.RETIREMENT,
        records=(Record(deed=Deed.ADVANCED_CLEANING, on=span("2015-06")),),
    )

    assert (legacy.first_day, legacy.standing) == (span("..2025-06-30"), Standing.OUT)
