"""Adopting an edition, laying a policy over it, switching to another: an officer's sentences."""

import pytest
from tests.unit.rules_given import edition, rule

from sootline.core.basis import Bearing, ComponentId
from sootline.core.rulebook import (
    Assembly,
    Change,
    Rule,
    assemble,
    compare_editions,
    value_text,
    voices,
)

TOWN = edition(
    "town/2024",
    rule("wash.bath_temp", "105 °F / 40 °C"),
    rule("wash.bath_temp", "30 °C", "cbrn"),
    rule("retire.months", 120),
    rule("dry.air_temp", None),
    rule("blood.soft_word", "sanitise"),
    rule("wash.forbidden", ("starch",)),
    rule("wash.forbidden", ("solvent",)),
)
PRACTICE = edition("practice/common", rule("blood.soft_word", "disinfect"))
DECIDED = "A. Name, 2026-02-01"


def lay(*policy: Rule) -> Assembly:
    """Lay a policy over the invented town's edition."""
    return assemble(adopted=TOWN, policy=policy, practice=PRACTICE)


def said(book: Assembly, topic: str, *traits: str) -> list[tuple[str, str | None]]:
    """List who says what on a topic."""
    spoken = voices(book.rulebook, topic, frozenset(traits))
    return [(one.edition, value_text(one.rule)) for one in spoken]


def test_the_edition_speaks_first_then_policy_then_practice() -> None:
    """For a method the first that speaks counts, so the order is part of the answer."""
    book = lay(rule("blood.soft_word", "sanitise"))

    assert said(book, "blood.soft_word") == [
        ("town/2024", "sanitise"),
        ("policy", "sanitise"),
        ("practice/common", "disinfect"),
    ]


def test_what_is_said_of_a_trait_comes_before_what_is_said_of_all() -> None:
    """A CBRN garment hears its own limit first, and still the general one."""
    assert said(lay(), "wash.bath_temp", "shell", "cbrn") == [
        ("town/2024", "30 °C"),
        ("town/2024", "105 °F / 40 °C"),
    ]


def test_a_looser_policy_is_reported_and_not_used() -> None:
    """60 °C where the edition says 105 °F / 40 °C: shown with both values, and left out."""
    book = lay(rule("wash.bath_temp", "60 °C"))
    found = book.findings[0]

    assert said(book, "wash.bath_temp") == [("town/2024", "105 °F / 40 °C")]
    assert (found.bearing, found.message) == (Bearing.WARNS, "rules.policy.looser")
    assert voices(book.rulebook, "wash.bath_temp", frozenset())[0].ground == found.ground
    assert (found.value("policy"), found.value("stated")) == ("60 °C", "105 °F / 40 °C")
    assert found.ground.edition == "town/2024"


def test_a_looser_policy_counts_once_the_chief_decided_it() -> None:
    """With name and day it takes the place of the edition's value, and the decision is shown."""
    book = lay(rule("wash.bath_temp", "60 °C", decision=DECIDED))
    found = book.findings[0]

    assert said(book, "wash.bath_temp", "shell") == [("policy", "60 °C")]
    assert (found.bearing, found.value("decision")) == (Bearing.NOTES, DECIDED)


def test_a_general_decision_does_not_reach_what_is_said_of_one_trait() -> None:
    """Whoever loosens the bath for all gear has not decided about CBRN garments."""
    book = lay(rule("wash.bath_temp", "60 °C", decision=DECIDED))

    assert ("town/2024", "30 °C") in said(book, "wash.bath_temp", "cbrn")


def test_a_decision_for_some_pieces_leaves_the_others_alone() -> None:
    """A decision on shells is none on liners."""
    book = lay(rule("wash.bath_temp", "60 °C", "shell", decision=DECIDED))

    assert said(book, "wash.bath_temp", "shell") == [("policy", "60 °C")]
    assert said(book, "wash.bath_temp", "liner") == [("town/2024", "105 °F / 40 °C")]


def test_a_decision_that_only_tightens_sets_nothing_aside() -> None:
    """Both values stay; the strictest counts anyway."""
    book = lay(rule("wash.bath_temp", "30 °C", decision=DECIDED))

    assert len(said(book, "wash.bath_temp", "shell")) == 2
    assert book.findings == ()


def test_a_policy_answers_what_the_edition_leaves_unset() -> None:
    """The question stays visible beside the answer."""
    book = lay(rule("dry.air_temp", "40 °C"))

    assert said(book, "dry.air_temp") == [("town/2024", None), ("policy", "40 °C")]
    assert book.findings == ()


@pytest.mark.parametrize(
    ("topic", "value", "change"),
    [
        ("retire.months", 96, Change.CHANGED),
        ("retire.months", None, Change.NOW_UNSET),
        ("dry.air_temp", "40 °C", Change.NOW_STATED),
        ("record.items", 11, Change.ADDED),
    ],
)
def test_another_edition_differs_topic_by_topic(
    topic: str, value: str | int | None, change: Change
) -> None:
    """Each difference names the topic, both sides, and what happened to it."""
    kept = tuple(one for one in TOWN.rules if one.topic != topic)
    found = compare_editions(TOWN, edition("town/2030", *kept, rule(topic, value)))

    assert [(one.topic, one.change) for one in found] == [(topic, change)]
    assert [value_text(one) for one in found[0].after] == [value_text(rule(topic, value))]


def test_silence_is_not_the_same_as_unset() -> None:
    """An edition that drops a topic says nothing; it does not ask."""
    kept = tuple(one for one in TOWN.rules if one.topic != "retire.months")
    found = compare_editions(TOWN, edition("town/2030", *kept))

    assert [(one.change, one.after) for one in found] == [(Change.DROPPED, ())]


def test_a_list_spread_differently_is_the_same_list() -> None:
    """Two rows or one: what is forbidden is what counts."""
    kept = tuple(one for one in TOWN.rules if one.topic != "wash.forbidden")
    other = edition("town/2030", *kept, rule("wash.forbidden", ("solvent", "starch")))

    assert compare_editions(TOWN, other) == ()


def test_a_difference_names_the_pieces_it_reaches() -> None:
    """A change for CBRN garments reaches those, a general one reaches all."""
    changed = edition("town/2030", rule("wash.bath_temp", "20 °C", "cbrn"), *TOWN.rules[2:])
    pieces = [
        (ComponentId("c1"), frozenset({"shell", "cbrn"})),
        (ComponentId("c2"), frozenset({"shell"})),
    ]
    found = {one.traits: one.touches for one in compare_editions(TOWN, changed, pieces)}

    assert found == {(): ("c1", "c2"), ("cbrn",): ("c1",)}
