"""Intervals over everything that speaks."""

from tests.unit.gear.gear_cases import book, guide, piece, rule, unset

from sootline.core.gear import resolve_months
from sootline.core.rulebook.rules import RuleKind

TOPIC = "inspect.advanced.months"


def test_the_shortest_counts() -> None:
    """A maker who wants it sooner is heard."""
    rules = book(rule(TOPIC, 12), policy=(rule(TOPIC, 18),))

    interval = resolve_months(TOPIC, piece(), guide(None, (TOPIC, 6), ("other", 1)), rules)

    assert [months for months, _ in interval.months] == [6, 12, 18]
    assert interval.shortest is not None
    assert interval.shortest[1].edition == "guide"


def test_nobody_speaking_is_no_interval() -> None:
    """Nothing is made up, and there is nothing to ask."""
    interval = resolve_months(TOPIC, piece(), None, book())

    assert (interval.shortest, interval.unset) == (None, ())


def test_an_unset_interval_is_a_question_beside_the_known_one() -> None:
    """The maker's six months count until the edition is read."""
    rules = book(unset(TOPIC, kind=RuleKind.INTERVAL))

    interval = resolve_months(TOPIC, piece(), guide(None, (TOPIC, 6)), rules)

    assert interval.shortest is not None
    assert [ground.rule for ground in interval.unset] == [TOPIC]


def test_an_interval_may_be_confined_to_a_trait() -> None:
    """Reflective shells have a shorter life than others."""
    rules = book(rule("retire.months", 120), rule("retire.months", 60, "aluminised"))

    shell = resolve_months("retire.months", piece("coat-shell", None, "aluminised"), None, rules)
    hood = resolve_months("retire.months", piece("hood"), None, rules)

    assert [months for months, _ in shell.months] == [60, 120]
    assert [months for months, _ in hood.months] == [120]
