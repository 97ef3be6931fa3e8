"""How due days follow from dates, rules and what was recorded."""

import datetime as dt

import pytest

from sootline.core.basis import (
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    Ground,
    KindId,
    RuleId,
)
from sootline.core.gear.components import Component
from sootline.core.gear.labels import Label
from sootline.core.gear.records import Deed, Record
from sootline.core.gear.state import Life, State
from sootline.core.gear.terms import ResolvedInterval
from sootline.core.intervals.dues import Matter, Standing, days_over, earliest_of, stand
from sootline.core.intervals.recurring import (
    CleaningTerms,
    cleaning_due,
    inspection_due,
    liner_inspection_due,
)
from sootline.core.intervals.retirement import made_when, retirement_due
from sootline.core.intervals.schedule import cleaning_reasons, list_due
from sootline.core.rulebook.rules import Edition, EditionStatus, Rule, Rulebook, RuleKind

TODAY = dt.date(2026, 3, 1)
GROUND = Ground(
    rule=RuleId("retire.months"),
    edition=EditionId("policy"),
    source="this test",
    confidence=Confidence.POLICY,
)
SILENT = ResolvedInterval(topic="t")
UNSET = ResolvedInterval(topic="t", unset=(GROUND,))


def months(number: int) -> ResolvedInterval:
    """Return an interval one source states."""
    return ResolvedInterval(topic="t", months=((number, GROUND),))


def span(text: str) -> DateSpan:
    """Read a span."""
    return DateSpan.parse(text)


def piece(
    *, made: str = "unknown", since: str = "unknown", life: Life = Life.IN_SERVICE, **deeds: str
) -> Component:
    """Return a coat liner with dates and records: `cleaned="2025-08-31 2025-02-01"`."""
    names = {
        "cleaned": Deed.ADVANCED_CLEANING,
        "inspected": Deed.ADVANCED_INSPECTION,
        "opened": Deed.LINER_INSPECTION,
        "issued": Deed.ISSUED,
    }
    records = tuple(
        Record(deed=names[deed], on=span(day))
        for deed, days in deeds.items()
        for day in days.split()
    )
    return Component(
        id=ComponentId("X"),
        kind=KindId("coat-liner"),
        made=span(made),
        in_service=span(since),
        records=records,
        state=State(life=life),
    )


def terms(
    *, count: int | None = 2, warn: int | None = 6, every: int | None = None
) -> CleaningTerms:
    """Return how often cleaning is asked for."""
    return CleaningTerms(
        every=months(every) if every else SILENT,
        count=(count, GROUND) if count else None,
        warn=months(warn) if warn else SILENT,
    )


@pytest.mark.parametrize(
    ("cleaned", "first_day", "standing"),
    [
        ("2025-10-01 2025-06-15", "2026-06-15", Standing.LATER),
        ("2025-08-31 2025-06-15", "2026-06-15", Standing.SOON),
        ("2025-09-01 2025-03-01", "2026-03-01", Standing.TODAY),
        ("2026-02-20 2025-02-20", "2026-02-20", Standing.OVERDUE),
        ("2026-02-20", "2025-07-01", Standing.OVERDUE),
    ],
)
def test_two_in_any_twelve_months_are_counted(
    cleaned: str, first_day: str, standing: Standing
) -> None:
    """The day is the one on which the second latest leaves the last twelve months."""
    due = cleaning_due(piece(since="2024-07-01", cleaned=cleaned), terms(), TODAY)

    assert due is not None
    assert (due.first_day, due.standing) == (span(first_day), standing)


def test_a_wash_recorded_twice_for_one_day_counts_once() -> None:
    """The register and a second list carry the same wash: that is not two in twelve months."""
    twice = cleaning_due(piece(since="2024-07-01", cleaned="2026-02-20 2026-02-20"), terms(), TODAY)

    assert twice is not None
    assert (twice.first_day, twice.standing) == (span("2025-07-01"), Standing.OVERDUE)


def test_the_shorter_of_count_and_interval_counts() -> None:
    """A department that says every six months is held to it, whatever the edition counts."""
    due = cleaning_due(
        piece(since="2020-01-01", cleaned="2025-08-31 2025-08-30"), terms(every=6), TODAY
    )

    assert due is not None
    assert due.first_day == span("2026-02-28")
    assert {reason.message for reason in due.reasons} == {
        "due.cleaning.every",
        "due.cleaning.count",
    }


def test_never_cleaned_counts_from_the_first_issue() -> None:
    """Without a day in service, the first recorded issue starts the clock."""
    due = cleaning_due(piece(issued="2025-06-01 2025-04-01"), terms(warn=None), TODAY)

    assert due is not None
    assert due.first_day == span("2026-04-01")


def test_nothing_recorded_asks() -> None:
    """Neither a wash nor a day in service: the day is not known, and the officer is asked."""
    due = cleaning_due(piece(), terms(warn=None), TODAY)

    assert due is not None
    assert due.standing is Standing.NOT_KNOWN
    assert [reason.message for reason in due.reasons] == ["due.nothing_recorded"]


def test_no_rule_asks() -> None:
    """Where no text speaks, the answer is a question, not "nothing due"."""
    silent = CleaningTerms(every=SILENT, count=None, warn=SILENT)
    unset = CleaningTerms(every=UNSET, count=None, warn=SILENT)

    without = cleaning_due(piece(), silent, TODAY)
    asked = cleaning_due(piece(), unset, TODAY)

    assert without is not None
    assert asked is not None
    assert [reason.message for reason in without.reasons] == ["due.no_rule"]
    assert [reason.message for reason in asked.reasons] == ["ask.retire.months"]
    assert {without.standing, asked.standing} == {Standing.NOT_KNOWN}


@pytest.mark.parametrize("life", [Life.RETIRED, Life.DISPOSED])
def test_nothing_is_due_on_what_is_gone(life: Life) -> None:
    """A retired component needs no wash."""
    gone = piece(life=life, made="2010-01-01")

    assert cleaning_due(gone, terms(), TODAY) is None
    assert inspection_due(gone, months(12), TODAY) is None
    assert liner_inspection_due(gone, months(36), months(12), TODAY) is None
    assert retirement_due(gone, [months(120)], TODAY) is None


def test_inspection_never_done_counts_from_the_day_in_service() -> None:
    """A year in use without an inspection is a year."""
    due = inspection_due(piece(since="2025-02-28"), months(12), TODAY)

    assert due is not None
    assert (due.first_day, due.days_over) == (span("2026-02-28"), 1)


def test_unset_inspection_interval_asks() -> None:
    """A number nobody has read is asked for."""
    due = inspection_due(piece(), UNSET, TODAY)

    assert due is not None
    assert due.standing is Standing.NOT_KNOWN


def test_liner_inspection_repeats_from_the_last_one() -> None:
    """After the first, the yearly interval counts; where unset, it asks."""
    opened = piece(since="2020-01-01", opened="2025-06-01")

    due = liner_inspection_due(opened, months(36), months(12), TODAY)
    asked = liner_inspection_due(opened, months(36), UNSET, TODAY)

    assert due is not None
    assert asked is not None
    assert due.first_day == span("2026-06-01")
    assert asked.standing is Standing.NOT_KNOWN


def test_the_shortest_life_counts_and_unset_ones_are_asked() -> None:
    """Five years for a reflective shell beat ten for garments."""
    due = retirement_due(piece(made="2022-01-01"), [months(120), months(60), UNSET], TODAY)

    assert due is not None
    assert due.first_day == span("2027-01-01")
    assert [reason.message for reason in due.reasons] == ["due.retirement", "ask.retire.months"]


@pytest.mark.parametrize(
    ("interval", "message"), [(SILENT, "due.no_rule"), (UNSET, "ask.retire.months")]
)
def test_without_a_life_the_first_day_out_is_not_known(
    interval: ResolvedInterval, message: str
) -> None:
    """No rule is no licence to ride for ever."""
    due = retirement_due(piece(made="2010-01-01"), [interval], TODAY)

    assert due is not None
    assert (due.standing, due.reasons[0].message) == (Standing.NOT_KNOWN, message)


def test_label_and_register_narrow_each_other() -> None:
    """A month on the label and a year in the register are the month."""
    component = Component(
        id=ComponentId("X"),
        kind=KindId("hood"),
        made=span("2019"),
        label=Label(made=span("2019-05")),
        in_service=span("2020-01-01"),
    )

    made, findings = made_when(component)

    assert (made, findings) == (span("2019-05"), ())


def test_label_and_register_that_contradict_are_asked_about() -> None:
    """Act on the earlier of two contradicting dates, and ask."""
    component = Component(
        id=ComponentId("X"),
        kind=KindId("hood"),
        made=span("2021"),
        label=Label(made=span("2019-05")),
    )

    made, findings = made_when(component)

    assert made.earliest == dt.date(2019, 5, 1)
    assert [one.message for one in findings] == ["due.made_contradicts"]


def test_used_before_it_was_made_is_asked_about() -> None:
    """An issue before manufacture is a slip in one of the two."""
    made, findings = made_when(piece(made="2021-01-01", issued="2019-05-01"))

    assert made == span("2021-01-01")
    assert [one.message for one in findings] == ["due.made_contradicts"]


@pytest.mark.parametrize(
    ("first_day", "standing", "over"),
    [
        ("..2026-02-01", Standing.OVERDUE, 28),
        ("..2026-04-01", Standing.NOT_KNOWN, None),
        ("2026-03-01", Standing.TODAY, None),
        ("2026-02-27", Standing.OVERDUE, 2),
        ("2026-03-02", Standing.LATER, None),
        ("unknown", Standing.NOT_KNOWN, None),
    ],
)
def test_standing(first_day: str, standing: Standing, over: int | None) -> None:
    """How a first day stands, at its earliest reading."""
    assert stand(span(first_day), TODAY) is standing
    assert days_over(span(first_day), TODAY) == over


def test_the_first_of_several_is_not_known_when_one_is_not() -> None:
    """One event that may lie anywhere may be the first."""
    assert earliest_of(()) == DateSpan()
    assert earliest_of((span("2026-01-01"), DateSpan())) == span("..2026-01-01")
    assert earliest_of((DateSpan(), DateSpan())) == DateSpan()


def test_a_due_cleaning_is_a_reason_to_clean() -> None:
    """What is overdue by the edition's count is handed to care as a reason; the rest is not."""
    rule = Rule(
        topic=RuleId("clean.advanced.count_in_12_months"),
        kind=RuleKind.COUNT,
        value=2,
        source="this test",
        confidence=Confidence.POLICY,
    )
    texts = [
        Edition(
            id=EditionId(name),
            title=name,
            body=name,
            status=EditionStatus.CURRENT,
            in_force=DateSpan(),
            rules=rules,
        )
        for name, rules in (("edition", (rule,)), ("policy", ()), ("practice", ()))
    ]
    book = Rulebook(adopted=texts[0], policy=texts[1], practice=texts[2])
    dues = list_due(piece(since="2024-01-01", cleaned="2025-02-01"), None, book, TODAY)

    reasons = cleaning_reasons(dues)

    assert [reason.message for reason in reasons] == ["due.cleaning.count"]
    assert {due.matter for due in dues} == set(Matter)


def test_only_liners_are_opened() -> None:
    """A shell has no complete liner inspection."""
    texts = [
        Edition(
            id=EditionId(name),
            title=name,
            body=name,
            status=EditionStatus.CURRENT,
            in_force=DateSpan(),
            rules=(),
        )
        for name in ("edition", "policy", "practice")
    ]
    book = Rulebook(adopted=texts[0], policy=texts[1], practice=texts[2])
    shell = Component(id=ComponentId("S"), kind=KindId("coat-shell"))

    assert Matter.LINER_INSPECTION not in {due.matter for due in list_due(shell, None, book, TODAY)}
