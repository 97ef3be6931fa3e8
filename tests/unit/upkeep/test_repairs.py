"""A repair in figures: per year that is left, against a new piece, and who may do it."""

import datetime as dt
from dataclasses import replace
from decimal import Decimal

import pytest
from tests.upkeep_gear import AT, DAY, INSPECTOR, PROVIDER, book, part

from sootline.core.basis import (
    Confidence,
    DateSpan,
    Limit,
    RuleId,
    UnreadableValueError,
)
from sootline.core.gear import CareStage, Component, State
from sootline.core.rebuild import Flaw
from sootline.core.rulebook import Rule, Rulebook
from sootline.core.rulebook.rules import RuleKind
from sootline.core.upkeep.qualified import Scope
from sootline.core.upkeep.repairs import (
    Choice,
    Decided,
    Price,
    Repair,
    Weighing,
    Work,
    Worth,
    place_work,
    weigh_repair,
    work_of,
)

COAT = part("01-shell")
NEW = Price(amount=Decimal(1900), currency="USD")
QUOTE = Price(amount=Decimal(400), currency="USD", source="quote 7")
TRIM = Repair(component=COAT.id, works=(Work.TRIM,), by=PROVIDER.who, quote=QUOTE, new=NEW)


def weigh(
    repair: Repair = TRIM,
    component: Component = COAT,
    out: str = "2030-04-11",
    rules: Rulebook | None = None,
    months: int | None = 120,
) -> Worth:
    """Weigh one repair on the day."""
    by = Weighing(
        rulebook=rules or book(),
        first_day_out=DateSpan.parse(out),
        life_months=months,
        people=(INSPECTOR, PROVIDER),
        today=DAY,
    )
    return weigh_repair(component, repair, by)


def said(worth: Worth) -> list[str]:
    """Return the messages of the reasons."""
    return [str(one.message) for one in worth.reasons]


def test_what_a_repair_costs_for_each_year_left() -> None:
    """Four years left: 400 / 4; a new one for ten: 1900 / 10; 21.1 % of it."""
    worth = weigh()

    assert worth.per_year == (Decimal("100.00"), Decimal("100.00"))
    assert worth.per_year_new == Decimal("190.00")
    assert (worth.percent, worth.over) == (Decimal("21.1"), False)
    assert "mend.undecided" in said(worth)


def test_years_known_in_part_give_a_span() -> None:
    """Between two and four years left: between 100 and 200 a year."""
    low, high = weigh(out="2028-04-11..2030-04-11").per_year or (None, None)

    assert (low, high) == (Decimal("100.00"), Decimal("199.86"))


@pytest.mark.parametrize("out", ["unknown", "2026-04-11", "2020"])
def test_no_years_left_or_known_give_no_price_a_year(out: str) -> None:
    """It is asked, not guessed."""
    worth = weigh(out=out)

    assert worth.per_year is None
    assert "mend.no_years" in said(worth)


def test_beyond_the_departments_share_is_said_and_nothing_is_decided() -> None:
    """Guidance of the fire service, advisory: more than half the price of a new piece.

    Source: guidance older than the standard, reported in a trade column (see the rule file).
    """
    worth = weigh(replace(TRIM, quote=Price(amount=Decimal(960), currency="USD")))

    assert worth.over is True
    assert {"mend.over", "mend.undecided"} <= set(said(worth))


def test_the_strictest_of_two_shares_counts() -> None:
    """The department's own 20 % beside the advisory half."""
    own = Rule(
        topic=RuleId("repair.percent"),
        kind=RuleKind.LIMIT,
        value=Limit.parse("at most 20 %"),
        source="policy, invented",
        confidence=Confidence.POLICY,
    )

    assert weigh(rules=book(policy=(own,))).over is True


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"quote": None}, "mend.no_quote"),
        ({"new": None}, "mend.no_share"),
        ({"new": Price(amount=Decimal(1900), currency="EUR")}, "mend.no_share"),
        ({"new": Price(amount=Decimal(0), currency="USD")}, "mend.no_share"),
    ],
)
def test_what_is_not_known_or_not_comparable_is_asked(
    change: dict[str, object], message: str
) -> None:
    """No quote, no price of a new one, another currency, no price at all."""
    worth = weigh(replace(TRIM, **change))  # type: ignore[arg-type]

    assert (worth.percent, worth.over) == (None, None)
    assert message in said(worth)


def test_without_a_known_life_a_new_one_has_no_price_a_year() -> None:
    """The years of a new one are not known either."""
    assert weigh(months=None).per_year_new is None


@pytest.mark.parametrize(
    ("work", "component", "scope"),
    [
        (Work.SHELL_PATCH, COAT, Scope.BASIC_REPAIR),
        (Work.TRIM, COAT, Scope.ADVANCED_REPAIR),
        (Work.BARRIER, part("01-liner", "coat-liner"), Scope.ADVANCED_REPAIR),
        (Work.PART, part("01-hood", "hood"), Scope.ADVANCED_REPAIR),
    ],
)
def test_where_a_work_is_done(work: Work, component: Component, scope: Scope) -> None:
    """Basic at the station only as the adopted edition lists it.

    Source: US care standard, 2014 edition, topics basic and advanced repair (value from memory).
    """
    assert place_work(work, component, book()).scope is scope


@pytest.mark.parametrize(
    ("flaw", "kind", "work"),
    [
        (Flaw.TORN, "coat-shell", Work.SHELL_PATCH),
        (Flaw.STIFF, "coat-shell", Work.STRUCTURAL_SEAM),
        (Flaw.LEAK, "coat-liner", Work.BARRIER),
        (Flaw.TORN, "coat-liner", Work.LINER),
        (Flaw.TORN, "hood", Work.PART),
    ],
)
def test_what_a_flaw_takes(flaw: Flaw, kind: str, work: Work) -> None:
    """The graver work until somebody looked closer (common practice, no published source)."""
    assert work_of(flaw, part("01", kind)) is work


def test_a_rule_that_is_unset_is_asked_about() -> None:
    """The consolidated edition's list is not known here: nothing is basic, and it is asked."""
    placed = place_work(Work.SHELL_PATCH, COAT, book("nfpa-1850/2026"))

    assert placed.scope is Scope.ADVANCED_REPAIR
    assert any(one.message.startswith("ask.") for one in placed.reasons)


def test_a_share_that_is_unset_holds_nothing() -> None:
    """A department that has not said its share yet, beside the advisory one."""
    unset = Rule(
        topic=RuleId("repair.percent"),
        kind=RuleKind.LIMIT,
        value=None,
        source="policy, invented",
        confidence=Confidence.POLICY,
    )

    assert weigh(rules=book(policy=(unset,))).over is False


def test_the_course_of_a_repair_is_said() -> None:
    """Soiled: wash first. Decided: by whom. Past its day: late."""
    soiled = replace(COAT, state=State(stage=CareStage.TO_WASH))
    course = replace(
        TRIM,
        by="",
        decided=Decided(choice=Choice.REPAIR, by="206", at=AT),
        sent=DateSpan.parse("2026-03-01"),
        due_back=DateSpan.parse("2026-04-01"),
    )

    assert {"mend.wash_first", "mend.decided", "mend.late"} <= set(said(weigh(course, soiled)))
    back = replace(course, back=DateSpan.parse("2026-04-02"))
    assert "mend.late" not in said(weigh(back))


def test_nobody_decides_nothing_and_no_price_is_without_its_currency() -> None:
    """A name; an amount of nought or more; three letters."""
    with pytest.raises(UnreadableValueError):
        Decided(choice=Choice.KEEP, by=" ", at=dt.datetime(2026, 1, 1, tzinfo=dt.UTC))
    for amount, currency in (("-1", "USD"), ("1", "usd"), ("1", "US"), ("NaN", "USD")):
        with pytest.raises(UnreadableValueError):
            Price(amount=Decimal(amount), currency=currency)
