"""Whether costs, wash counts and reductions say what was entered, and no more."""

from dataclasses import replace

import pytest

from sootline.core.basis import (
    BadInputError,
    Bearing,
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    MessageId,
    RuleId,
    UnreadableValueError,
    quantity,
)
from sootline.core.job.codec import decode, encode
from sootline.core.machines import (
    Act,
    CostItem,
    CostKind,
    CostSheet,
    LabResult,
    Measured,
    Method,
    Price,
    Published,
    ReductionEvent,
    Reductions,
    lay_out_reductions,
    mark_washes,
    reckon_cost,
)
from sootline.core.rulebook import Edition, EditionStatus, Rule, Rulebook, RuleKind
from sootline.files.practice_tables import load_reductions

DAY = DateSpan.parse("2026-01-01")


def item(kind: CostKind, used: str, amount: float, per: str) -> CostItem:
    """Price one thing."""
    return CostItem(kind=kind, used=quantity(used), price=Price(amount=amount, per=quantity(per)))


LABOUR = item(CostKind.LABOUR, "1 h", 30.0, "60 min")
SHEET = CostSheet(dated=DAY, currency="crowns", items=(LABOUR,), sets=4, yearly=4000.0)


def test_a_set_costs_its_part_of_the_load() -> None:
    """Units are converted; without a number of sets nothing is spread."""
    cost = reckon_cost(SHEET)

    assert (cost.load, cost.set) == (30.0, 7.5)
    assert cost.set_all_in is None
    assert cost.break_even is None


def test_break_even_is_yearly_cost_over_the_difference() -> None:
    """4000 a year against 47.50 a set by contract and 7.50 of one's own."""
    cost = reckon_cost(replace(SHEET, contract=47.5, sets_a_year=200.0))

    assert cost.break_even == pytest.approx(100.0)
    assert cost.set_all_in == pytest.approx(27.5)


def test_a_contract_below_ones_own_never_breaks_even() -> None:
    """That is said, not a number below zero."""
    cost = reckon_cost(replace(SHEET, contract=7.5))

    assert cost.break_even is None
    assert "machine.cost.never_even" in [one.message for one in cost.findings]


def test_what_a_comparison_lacks_is_said() -> None:
    """Inspection and spare gear are missed, labour is there; the contract covers more."""
    covers = (CostKind.INSPECTION, CostKind.LABOUR)
    sheet = replace(SHEET, contract=50.0, contract_covers=covers)
    said = [one.message for one in reckon_cost(sheet).findings if one.bearing is Bearing.WARNS]

    assert said == [
        "machine.cost.without.inspection", "machine.cost.without.spare-gear",
        "machine.cost.only_contract",
    ]  # fmt: skip


def test_an_empty_sheet_costs_nothing_and_warns() -> None:
    """Shares of nothing are nothing."""
    cost = reckon_cost(replace(SHEET, items=(item(CostKind.LABOUR, "0 h", 1.0, "1 h"),)))

    assert (cost.load, cost.shares) == (0.0, ((CostKind.LABOUR, 0.0),))


def test_prices_need_a_date() -> None:
    """None ships, and none is timeless."""
    with pytest.raises(UnreadableValueError, match=r"machine\.cost.undated"):
        replace(SHEET, dated=DateSpan())


@pytest.mark.parametrize(
    "wrong", [{"sets": 0.0}, {"yearly": -1.0}, {"contract": -1.0}, {"sets_a_year": 0.0}]
)
def test_a_sheet_refuses_amounts_that_cannot_be(wrong: dict[str, float]) -> None:
    """The amount is asked about."""
    with pytest.raises(UnreadableValueError, match=r"machine\.cost.amount"):
        replace(SHEET, **wrong)  # type: ignore[arg-type]


def test_prices_and_uses_are_not_negative() -> None:
    """Nor is anything divided by nothing."""
    for used, amount, per in (("-1 h", 1.0, "1 h"), ("1 h", -1.0, "1 h"), ("1 h", 1.0, "0 h")):
        with pytest.raises(UnreadableValueError, match=r"machine\.cost.amount"):
            item(CostKind.LABOUR, used, amount, per)


def test_a_sheet_is_a_document() -> None:
    """It is written and read back the same; a missing date is named."""
    assert decode(CostSheet, encode(CostSheet, SHEET)) == SHEET
    with pytest.raises(BadInputError, match="dated"):
        decode(CostSheet, '{"currency": "crowns", "items": [], "sets": 1}')


def marker(name: str, *cycles: int | None) -> Edition:
    """Make a text with these markers."""
    rules = tuple(
        Rule(
            topic=RuleId("wash.marker_cycles"), kind=RuleKind.COUNT, value=count,
            source="invented for a test", confidence=Confidence.STATED,
        )
        for count in cycles
    )  # fmt: skip
    return Edition(
        id=EditionId(name), title=name, body="invented", status=EditionStatus.CURRENT,
        in_force=DateSpan(), rules=rules,
    )  # fmt: skip


BOOK = Rulebook(
    adopted=marker("invented/1", None),
    policy=marker("policy", 30),
    practice=marker("practice/common", 40),
)


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (None, {"machine.washes.unknown": Bearing.ASKS}),
        (29, {"machine.washes.policy_below": Bearing.NOTES,
              "machine.washes.below": Bearing.NOTES}),
        (30, {"machine.washes.policy_reached": Bearing.WARNS,
              "machine.washes.below": Bearing.NOTES}),
        (40, {"machine.washes.policy_reached": Bearing.WARNS,
              "machine.washes.reached": Bearing.NOTES}),
    ],
)  # fmt: skip
def test_a_count_stands_beside_markers(count: int | None, said: dict[str, Bearing]) -> None:
    """Policy says it is policy; nothing forbids, requires or holds."""
    found = mark_washes(ComponentId("1"), count, BOOK)

    assert {str(one.message): one.bearing for one in found} == said


@pytest.mark.parametrize(
    ("recorded", "messages"),
    [
        (12, {"machine.washes.policy_recorded", "machine.washes.recorded"}),
        (35, {"machine.washes.policy_reached", "machine.washes.recorded"}),
        (40, {"machine.washes.policy_reached", "machine.washes.reached"}),
    ],
)
def test_recorded_washes_are_the_least_there_were(recorded: int, messages: set[str]) -> None:
    """Nobody counted what came before: what is written down already may reach a marker."""
    found = mark_washes(ComponentId("1"), None, BOOK, recorded=recorded)

    assert {str(one.message) for one in found} == messages


def published(low: float, high: float) -> Published:
    """Report a range."""
    return Published(
        id="x", act=Act.ON_SCENE, method=Method.WATER, measured=Measured.WIPE, substances="PAH",
        low=low, high=high, source="invented for a test", confidence=Confidence.STATED,
    )  # fmt: skip


def test_a_range_may_be_an_increase_but_not_more_than_all() -> None:
    """-43 % is a finding; 101 % and a range backwards are slips."""
    assert published(-43, -43).low == -43
    for low, high in ((0, 101), (5, 4)):
        with pytest.raises(UnreadableValueError, match=r"machine\.reduction.order"):
            published(low, high)


def test_events_stay_apart_with_what_is_published_of_their_kind() -> None:
    """In the order of the days; no two figures meet."""
    table = Reductions(published=(published(1, 2),), not_claimed=(MessageId("a.b"),))
    water = ReductionEvent(act=Act.ON_SCENE, method=Method.WATER, on=DateSpan.parse("2026-02-01"))
    washed = ReductionEvent(act=Act.LAUNDERING, method=Method.MACHINE_WASH, on=DAY)
    record = lay_out_reductions((water, washed), (), table)

    assert [line.event for line in record.lines] == [washed, water]
    assert [len(line.published) for line in record.lines] == [0, 1]
    assert record.not_claimed == ("a.b",)


def test_a_laboratorys_result_needs_day_name_and_text() -> None:
    """Otherwise nobody can look it up."""
    assert LabResult(on=DAY, by="L", text="t").text == "t"
    for on, by, text in ((DateSpan(), "L", "t"), (DAY, " ", "t"), (DAY, "L", "")):
        with pytest.raises(UnreadableValueError, match=r"machine\.reduction.lab"):
            LabResult(on=on, by=by, text=text)


def test_the_shipped_table_has_both_signs_and_every_kind_of_measurement() -> None:
    """Reductions and increases, wipes, whole pieces and bench tests, each with its source."""
    table = load_reductions()

    assert {one.measured for one in table.published} == set(Measured)
    assert any(one.high < 0 for one in table.published)
    assert all(one.source for one in table.published)
    assert len(table.not_claimed) >= 10
