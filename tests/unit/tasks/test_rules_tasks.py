"""Showing and comparing editions over texts held in memory."""

import pytest
from tests.unit.rules_given import edition, rule

from sootline.core.basis import BadInputError, ComponentId, EditionId, Fault, KindId, MessageId
from sootline.core.gear import Component
from sootline.core.rulebook import ContaminantRule, Edition
from sootline.tasks.compare_rules import compare_rules
from sootline.tasks.show_rules import list_editions, show_rules

OLD = edition(
    "town/2020",
    rule("wash.bath_temp", "105 °F / 40 °C"),
    rule("wash.forbidden", ("machine-wash",), "aluminised"),
    rule("dry.air_temp", None),
)
NEW = edition("town/2024", rule("wash.bath_temp", "30 °C"), *OLD.rules[1:])


class Shelf:
    """Rule texts in memory."""

    def editions(self) -> tuple[EditionId, ...]:
        """List both."""
        return (OLD.id, NEW.id)

    def edition(self, edition: EditionId) -> Edition:
        """Return one of both, or refuse as the files do."""
        for text in (OLD, NEW):
            if text.id == edition:
                return text
        message = MessageId("rules.fault.no_edition")
        raise BadInputError([Fault(place="edition", message=message)])

    def practice(self) -> Edition:
        """Return a practice that speaks on one topic."""
        return edition("practice/common", rule("wash.company", "liners", "liner"))

    def contaminants(self) -> tuple[ContaminantRule, ...]:
        """Return none."""
        return ()


def test_editions_are_listed_with_how_much_is_known() -> None:
    """Two values stated, one not known."""
    listed = list_editions(Shelf())

    assert [(one.id, one.stated, one.unset) for one in listed] == [
        ("town/2020", 2, 1),
        ("town/2024", 2, 1),
    ]


def test_an_edition_is_shown_with_practice_beneath_and_its_questions() -> None:
    """Everything said, in the order of the topics, and what must be asked."""
    shown = show_rules(Shelf(), OLD.id)

    assert [(one.topic, [said.edition for said in one.spoken]) for one in shown.topics] == [
        ("wash.bath_temp", ["town/2020"]),
        ("wash.forbidden", ["town/2020"]),
        ("wash.company", ["practice/common"]),
        ("dry.air_temp", ["town/2020"]),
    ]
    assert shown.questions == ("dry.air_temp",)


@pytest.mark.parametrize(
    ("topic", "topics", "questions"),
    [("wash", 3, 0), ("wash.bath_temp", 1, 0), ("dry", 1, 1), ("retire", 0, 0)],
)
def test_the_beginning_of_a_topic_shows_all_below_it(
    topic: str, topics: int, questions: int
) -> None:
    """An officer types "wash" and sees the wash."""
    shown = show_rules(Shelf(), OLD.id, topic=topic)

    assert (len(shown.topics), len(shown.questions)) == (topics, questions)


@pytest.mark.parametrize(
    ("of", "topics"),
    [
        (["coat-shell"], ["wash.bath_temp", "dry.air_temp"]),
        (["coat-shell", "aluminised"], ["wash.bath_temp", "wash.forbidden", "dry.air_temp"]),
        (["coat-liner"], ["wash.bath_temp", "wash.company", "dry.air_temp"]),
    ],
)
def test_a_piece_hears_only_what_is_said_of_it(of: list[str], topics: list[str]) -> None:
    """A kind brings its layer and element along."""
    shown = show_rules(Shelf(), OLD.id, of=of)

    assert [one.topic for one in shown.topics] == topics


def test_a_policy_is_laid_over_and_reported() -> None:
    """A looser one is a finding and is not shown as speaking."""
    shown = show_rules(
        Shelf(), OLD.id, policy=[rule("wash.bath_temp", "60 °C")], topic="wash.bath_temp"
    )

    assert [said.edition for said in shown.topics[0].spoken] == ["town/2020"]
    assert [found.message for found in shown.findings] == ["rules.policy.looser"]


@pytest.mark.parametrize(
    ("edition", "topic", "of", "message"),
    [
        ("town/1900", "", [], "rules.fault.no_edition"),
        ("town/2020", "was", [], "rules.fault.topic"),
        ("town/2020", "", ["coat-shall"], "rules.fault.word"),
    ],
)
def test_what_is_not_there_is_refused(
    edition: str, topic: str, of: list[str], message: str
) -> None:
    """A name with a slip is refused, never taken for an empty answer."""
    with pytest.raises(BadInputError) as refusal:
        show_rules(Shelf(), EditionId(edition), topic=topic, of=of)

    assert refusal.value.faults[0].message == message


def test_a_comparison_names_the_pieces_a_change_reaches() -> None:
    """Every piece is looked at with what its kind brings along."""
    pieces = [
        Component(id=ComponentId("c1"), kind=KindId("coat-shell")),
        Component(id=ComponentId("c2"), kind=KindId("gloves")),
    ]
    compared = compare_rules(Shelf(), OLD.id, NEW.id, pieces)

    assert (compared.before.id, compared.after.id, compared.pieces) == (OLD.id, NEW.id, 2)
    assert [(one.topic, one.touches) for one in compared.differences] == [
        ("wash.bath_temp", ("c1", "c2"))
    ]
