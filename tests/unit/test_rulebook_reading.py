"""Rule files: what a row states, and every fault of a file at once."""

from collections.abc import Mapping

import pytest

from sootline.core.basis import BadInputError, DateSpan, Limit, Side, parse_limit
from sootline.core.rulebook import read_edition, read_rule, read_rules

ROW: dict[str, object] = {
    "topic": "wash.bath_temp",
    "value": "105 °F / 40 °C",
    "source": "invented order 4",
    "confidence": "policy",
}
HEAD: dict[str, object] = {
    "id": "town/2024",
    "title": "Invented standard",
    "body": "Town",
    "status": "current",
    "in_force": "2024-05",
}


def row(**fields: object) -> dict[str, object]:
    """Make a good row with some fields changed; None takes a field away."""
    return {name: value for name, value in {**ROW, **fields}.items() if value is not None}


def faults_of(mapping: object) -> set[tuple[str, str]]:
    """Read one row and return its faults as (place, message without its domain)."""
    with pytest.raises(BadInputError) as refusal:
        read_rule(mapping, "row")
    return {(fault.place, fault.message) for fault in refusal.value.faults}


def faults_of_edition(mapping: object) -> set[tuple[str, str]]:
    """Read an edition and return its faults."""
    with pytest.raises(BadInputError) as refusal:
        read_edition(mapping, "file")
    return {(fault.place, fault.message) for fault in refusal.value.faults}


VALUES: list[tuple[str, object, object]] = [
    ("wash.bath_temp", "105 °F / 40 °C", parse_limit("105 °F / 40 °C", Side.AT_MOST)),
    ("wash.ph_low", "pH 6.0", parse_limit("pH 6.0", Side.AT_LEAST)),
    ("retire.months", "10 years", 120),
    ("inspect.advanced.months", "12 months", 12),
    ("clean.advanced.count_in_12_months", "2 cleanings", 2),
    ("clean.advanced.count_in_12_months", "1 cleaning", 1),
    ("wash.forbidden", ["softener", "starch"], ("softener", "starch")),
    ("wash.company", "liners", "liners"),
]


@pytest.mark.parametrize(("topic", "written", "value"), VALUES)
def test_a_value_is_read_in_the_shape_of_its_topic(
    topic: str, written: object, value: object
) -> None:
    """The topic decides shape, unit and side; a row cannot choose the wrong side."""
    assert read_rule(row(topic=topic, value=written), "row").value == value


def test_a_row_keeps_where_its_value_comes_from() -> None:
    """Source, confidence, reach, date and decision stand beside the value."""
    rule = read_rule(
        row(traits=["liner"], in_force="2025-01", decision="A. Name, 2025-01-15"), "row"
    )

    assert isinstance(rule.value, Limit)
    assert (rule.source, rule.confidence, rule.traits) == ("invented order 4", "policy", ("liner",))
    assert rule.in_force == DateSpan.parse("2025-01")
    assert rule.decision == "A. Name, 2025-01-15"


def test_an_unset_value_asks_instead() -> None:
    """What nobody has read is a question, never a default."""
    question = "ask.wash.bath_temp"
    rule = read_rule(row(value=None, unset=True, question=question), "row")

    assert rule.value is None
    assert rule.question == question


BAD_ROWS: list[tuple[Mapping[str, object], str, str]] = [
    ({"topic": None}, "topic", "rules.fault.missing"),
    ({"topic": "wash.mood"}, "topic", "rules.fault.topic"),
    ({"topic": 7}, "topic", "rules.fault.text"),
    ({"value": None}, "value", "rules.fault.missing"),
    ({"value": 40}, "value", "rules.fault.text"),
    ({"value": "warm"}, "value", "basis.quantity.unreadable"),
    ({"value": "40"}, "value", "basis.quantity.unreadable"),
    ({"value": "40 °X"}, "value", "basis.quantity.unit"),
    ({"value": "100 G"}, "value", "rules.fault.dimension"),
    ({"value": "105 °F / 60 °C"}, "value", "rules.fault.pair"),
    ({"value": "40 °C / 41 °C"}, "value", "rules.fault.pair"),
    ({"value": "105 °F / 100 G"}, "value", "basis.limit.mixed"),
    ({"topic": "storage.temp_low", "value": " "}, "value", "rules.fault.text"),
    ({"topic": "inspect.hydrostatic.pressure", "value": "1 psi / 9 kPa"}, "value",
     "rules.fault.pair"),
    ({"topic": "retire.months", "value": "10 kg"}, "value", "rules.fault.dimension"),
    ({"topic": "retire.months", "value": "0 months"}, "value", "rules.fault.months"),
    ({"topic": "retire.months", "value": "0.04 years"}, "value", "rules.fault.months"),
    ({"topic": "retire.months", "value": "101 years"}, "value", "rules.fault.months"),
    ({"topic": "record.items", "value": "11 cleanings"}, "value", "rules.fault.count"),
    ({"topic": "record.items", "value": "0 items"}, "value", "rules.fault.count"),
    ({"topic": "record.items", "value": "eleven items"}, "value", "rules.fault.count"),
    ({"topic": "wash.forbidden", "value": ["bleaching"]}, "value[0]", "rules.fault.word"),
    ({"topic": "wash.forbidden", "value": [4]}, "value[0]", "rules.fault.word"),
    ({"topic": "wash.forbidden", "value": "starch"}, "value", "rules.fault.list"),
    ({"topic": "wash.forbidden", "value": None}, "value", "rules.fault.missing"),
    ({"topic": "wash.forbidden", "value": []}, "value", "rules.fault.empty"),
    ({"topic": "wash.forbidden", "value": ["starch", "starch"]}, "value[1]", "rules.fault.twice"),
    ({"topic": "wash.company", "value": "boots"}, "value", "rules.fault.word"),
    ({"traits": ["aluminized"]}, "traits[0]", "rules.fault.word"),
    ({"traits": "liner"}, "traits", "rules.fault.list"),
    ({"source": None}, "source", "rules.fault.missing"),
    ({"source": "  "}, "source", "rules.fault.text"),
    ({"source": "x" * 501}, "source", "rules.fault.long"),
    ({"source": "line\x1b[2J"}, "source", "rules.fault.text"),
    ({"confidence": None}, "confidence", "rules.fault.missing"),
    ({"confidence": "certain"}, "confidence", "rules.fault.word"),
    ({"in_force": "2019-13"}, "in_force", "basis.span.no_such_day"),
    ({"in_force": "soon"}, "in_force", "basis.span.unreadable"),
    ({"decision": "the chief"}, "decision", "rules.fault.decision"),
    ({"decision": "A. Name, 2026"}, "decision", "rules.fault.decision"),
    ({"decision": "A. Name, soon"}, "decision", "rules.fault.decision"),
    ({"decision": ", 2026-02-01"}, "decision", "rules.fault.decision"),
    ({"unset": True}, "value", "rules.fault.unset_value"),
    ({"unset": True, "value": None}, "question", "rules.fault.missing"),
    ({"unset": True, "value": None, "question": "ask.x"}, "question", "rules.fault.question"),
    ({"unset": "yes"}, "unset", "rules.fault.flag"),
    ({"side": "at least"}, "side", "rules.fault.unknown_field"),
]  # fmt: skip


@pytest.mark.parametrize(("change", "field", "message"), BAD_ROWS)
def test_a_faulty_field_is_named(change: Mapping[str, object], field: str, message: str) -> None:
    """Each fault has its place and its reason."""
    assert (f"row.{field}", message) in faults_of(row(**change))


@pytest.mark.parametrize("mapping", [None, 4, "wash.bath_temp", ["wash.bath_temp"]])
def test_what_is_no_row_is_said_once(mapping: object) -> None:
    """A row that is no table is one fault, not one per missing field."""
    assert faults_of(mapping) == {("row.row", "rules.fault.no_table")}


def test_every_fault_of_a_row_is_listed() -> None:
    """Nobody mends a row fault by fault."""
    assert faults_of(row(value="warm", source=None, confidence="sure")) == {
        ("row.value", "basis.quantity.unreadable"),
        ("row.source", "rules.fault.missing"),
        ("row.confidence", "rules.fault.word"),
    }


def test_an_edition_is_read_with_its_rows() -> None:
    """A row without its own date counts since the edition does."""
    edition = read_edition({**HEAD, "rule": [ROW]}, "file")

    assert (edition.id, edition.status) == ("town/2024", "current")
    assert edition.rules[0].in_force == DateSpan.parse("2024-05")


def test_every_fault_of_an_edition_is_listed() -> None:
    """Head and rows are refused together."""
    broken = {**HEAD, "id": "Town 2024", "status": "old", "colour": "red", "in_force": None}
    del broken["in_force"]

    assert faults_of_edition({**broken, "rule": [ROW, row(value="hot"), 4]}) == {
        ("file.id", "rules.fault.edition_id"),
        ("file.status", "rules.fault.word"),
        ("file.in_force", "rules.fault.missing"),
        ("file.colour", "rules.fault.unknown_field"),
        ("file: rule[1].value", "basis.quantity.unreadable"),
        ("file: rule[2].row", "rules.fault.no_table"),
    }


@pytest.mark.parametrize("rows", [None, [], "rows", [ROW] * 2001])
def test_an_edition_needs_rows_and_not_without_end(rows: object) -> None:
    """No rows, or too many to be a rule file, is a fault."""
    assert ("file.rule", "rules.fault.rows") in faults_of_edition({**HEAD, "rule": rows})


def test_two_rows_on_one_topic_for_the_same_pieces_are_refused() -> None:
    """A text says one thing; which of two would count is not guessed."""
    rows = [row(traits=["liner", "shell"]), row(traits=["shell", "liner"], value="30 °C")]

    assert faults_of_edition({**HEAD, "rule": rows}) == {("file: rule[1]", "rules.fault.duplicate")}


def test_a_list_may_stand_in_several_rows() -> None:
    """Its words may differ in source and confidence; the same word twice may not."""
    starch = row(topic="wash.forbidden", value=["starch"])
    solvent = row(topic="wash.forbidden", value=["solvent"])

    assert len(read_edition({**HEAD, "rule": [starch, solvent]}, "file").rules) == 2
    assert ("file: rule[1]", "rules.fault.duplicate") in faults_of_edition(
        {**HEAD, "rule": [starch, starch]}
    )


def test_a_policy_file_is_rows_only() -> None:
    """A department's file needs no head, and a fault in it refuses it whole."""
    assert len(read_rules({"rule": [ROW]}, "own.toml")) == 1
    with pytest.raises(BadInputError):
        read_rules({"rule": [ROW], "id": "x"}, "own.toml")
