"""Rules, topics and what each permits against another."""

import pytest
from tests.unit.rules_given import edition, rule

from sootline.core.basis import EditionId, UnreadableValueError
from sootline.core.gear import KINDS, Act
from sootline.core.gear.kinds import Element, Layer, WashMethod
from sootline.core.laundry.rooms import Company
from sootline.core.rulebook import (
    SCOPES,
    TOPICS,
    RuleKind,
    assemble,
    looser,
    read_rule,
    value_text,
    write_rule,
)


def test_a_value_of_the_wrong_shape_is_refused() -> None:
    """A count is not a list."""
    with pytest.raises(UnreadableValueError) as refusal:
        rule("record.items", "eleven")

    assert refusal.value.message == "rules.fault.shape"


def test_a_rule_confined_to_a_trait_comes_first_and_only_for_it() -> None:
    """General rules reach every piece, confined ones only theirs."""
    general, confined = rule("wash.bath_temp", "40 °C"), rule("wash.bath_temp", "30 °C", "cbrn")
    text = edition("a/1", general, confined, rule("dry.air_temp", "40 °C"))

    assert text.on("wash.bath_temp", frozenset({"cbrn", "shell"})) == (confined, general)
    assert text.on("wash.bath_temp", frozenset({"shell"})) == (general,)


def test_a_rule_is_cited_with_its_edition() -> None:
    """A finding that rests on a rule says which text it is from."""
    ground = rule("wash.bath_temp", "40 °C").ground(EditionId("a/1"))

    assert (ground.edition, ground.rule, ground.source) == ("a/1", "wash.bath_temp", "invented")


@pytest.mark.parametrize(
    ("topic", "mine", "other", "is_looser"),
    [
        ("wash.bath_temp", "60 °C", "105 °F / 40 °C", True),
        ("wash.bath_temp", "105 °F", "105 °F / 40 °C", False),
        ("wash.bath_temp", "30 °C", "40 °C", False),
        ("wash.ph_low", "pH 5", "pH 6", True),
        ("retire.months", 121, 120, True),
        ("retire.months", 120, 120, False),
        ("retire.months", 60, 120, False),
        ("clean.advanced.count_in_12_months", 1, 2, True),
        ("clean.advanced.count_in_12_months", 3, 2, False),
        ("wash.marker_cycles", 99, 40, False),
        ("clean.smoke_level", "routine", "advanced", True),
        ("clean.smoke_level", "specialised", "advanced", False),
        ("blood.soft_word", "disinfect", "sanitise", True),
        ("blood.soft_word", "sanitise", "sanitise", False),
        ("wash.forbidden", ("starch",), ("solvent",), False),
        ("wash.bath_temp", "60 °C", None, False),
        ("wash.bath_temp", None, "40 °C", False),
    ],
)
def test_which_value_permits_more(
    topic: str,
    mine: str | int | tuple[str, ...] | None,
    other: str | int | tuple[str, ...] | None,
    is_looser: bool,
) -> None:
    """By the topic's own side; a list only adds, and what is not known is not looser."""
    assert looser(rule(topic, mine), rule(topic, other)) is is_looser


@pytest.mark.parametrize(
    ("topic", "value", "text"),
    [
        ("wash.bath_temp", "105 °F / 40 °C", "105 °F / 40 °C"),
        ("retire.months", 120, "120 months"),
        ("record.items", 11, "11 items"),
        ("wash.forbidden", ("starch", "solvent"), "starch, solvent"),
        ("wash.company", "own", "own"),
        ("wash.bath_temp", None, None),
    ],
)
def test_a_value_is_written_with_its_unit(
    topic: str, value: str | int | tuple[str, ...] | None, text: str | None
) -> None:
    """The text a value is shown by carries its unit."""
    assert value_text(rule(topic, value)) == text


@pytest.mark.parametrize(
    "one",
    [
        rule("wash.bath_temp", "105 °F / 40 °C", "shell", "liner", decision="A. Name, 2026-02-01"),
        rule("retire.months", 120),
        rule("record.items", 11),
        rule("wash.forbidden", ("starch", "solvent")),
        rule("wash.company", "own"),
        rule("dry.air_temp", None),
    ],
)
def test_a_written_row_reads_as_the_same_rule(one: object) -> None:
    """A policy survives being saved with the job."""
    assert read_rule(write_rule(one), "row") == one  # type: ignore[arg-type]


def test_topics_speak_the_words_of_gear_and_laundry() -> None:
    """The rulebook stands before both and may not import them; its words must be theirs."""
    assert set(TOPICS["wash.forbidden"].words) == {act.value for act in Act}
    assert set(TOPICS["wash.method"].words) == {method.value for method in WashMethod}
    assert set(TOPICS["wash.company"].words) == {company.value for company in Company}


def test_rules_may_be_confined_to_every_kind_layer_and_element() -> None:
    """A rule confined to a word nothing has would never speak; one for a real kind must read."""
    words = {kind.id for kind in KINDS} | {layer.value for layer in Layer}
    words |= {element.value for element in Element}
    traits = {trait for kind in KINDS for trait in kind.traits}

    assert (words | traits) - SCOPES == set()
    assert SCOPES - words - traits == {"aluminised", "cbrn"}


def test_every_number_says_its_unit_and_every_word_is_known() -> None:
    """A topic without unit or words could not be read."""
    wordy = {RuleKind.LIST, RuleKind.CHOICE}
    assert all(topic.words if topic.kind in wordy else topic.unit for topic in TOPICS.values())


def test_a_policy_that_asks_for_more_needs_no_word() -> None:
    """Stricter than the edition is nobody's finding."""
    text = edition("a/1", rule("wash.bath_temp", "40 °C"))
    book = assemble(adopted=text, policy=[rule("wash.bath_temp", "30 °C")], practice=edition("p/1"))

    assert not book.findings
    assert [len(one.rules) for one in book.rulebook.texts] == [1, 1, 0]
