"""What would change if a department adopted another edition, and for which pieces?"""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import ComponentId, RuleId
from sootline.core.rulebook.rules import Edition, Rule


class Change(StrEnum):
    """How one topic differs between two editions."""

    ADDED = "added"
    DROPPED = "dropped"
    CHANGED = "changed"
    NOW_UNSET = "now-unset"
    NOW_STATED = "now-stated"


@dataclass(frozen=True, kw_only=True)
class Difference:
    """One topic on which two editions differ, for the components it is confined to.

    Args:
        before: what the first edition says; a list may stand in several rules; empty is silence.
        after: what the second one says.
        touches: the components given that it reaches.
    """

    topic: RuleId
    traits: tuple[str, ...]
    change: Change
    before: tuple[Rule, ...]
    after: tuple[Rule, ...]
    touches: tuple[ComponentId, ...] = ()


Traits = tuple[ComponentId, frozenset[str]]
_Key = tuple[RuleId, tuple[str, ...]]


def compare_editions(
    before: Edition, after: Edition, components: Iterable[Traits] = ()
) -> tuple[Difference, ...]:
    """List the topics on which two editions differ, in the order the first one has them.

    Args:
        components: each component with its kind, layer, element and traits.
    """
    old, new = _by_topic(before), _by_topic(after)
    pieces = tuple(components)
    found = []
    for key in dict.fromkeys((*old, *new)):
        rules, others = old.get(key, ()), new.get(key, ())
        change = _change(rules, others)
        if change:
            found.append(_difference(change, rules, others, pieces))
    return tuple(found)


def _by_topic(edition: Edition) -> dict[_Key, tuple[Rule, ...]]:
    grouped: dict[_Key, tuple[Rule, ...]] = {}
    for rule in edition.rules:
        key = (rule.topic, tuple(sorted(rule.traits)))
        grouped[key] = (*grouped.get(key, ()), rule)
    return grouped


def _change(before: tuple[Rule, ...], after: tuple[Rule, ...]) -> Change | None:
    if not before or not after:
        return Change.DROPPED if before else Change.ADDED
    old, new = _content(before), _content(after)
    if old == new:
        return None
    if new == {None}:
        return Change.NOW_UNSET
    return Change.NOW_STATED if old == {None} else Change.CHANGED


def _content(rules: tuple[Rule, ...]) -> set[object]:
    """Gather what rules say together, whatever their sources and however a list is spread."""
    said: set[object] = set()
    for rule in rules:
        said.update(rule.value if isinstance(rule.value, tuple) else (rule.value,))
    return said


def _difference(
    change: Change, before: tuple[Rule, ...], after: tuple[Rule, ...], pieces: tuple[Traits, ...]
) -> Difference:
    rule = (before or after)[0]
    touched = tuple(component for component, traits in pieces if rule.covers(traits))
    return Difference(
        topic=rule.topic,
        traits=rule.traits,
        change=change,
        before=before,
        after=after,
        touches=touched,
    )
