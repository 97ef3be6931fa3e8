"""Who speaks on the care of a component, in what order, and how is each cited?"""

from collections.abc import Iterator
from dataclasses import dataclass

from sootline.core.basis import (
    BadInputError,
    Confidence,
    EditionId,
    Fault,
    Ground,
    MessageId,
    RuleId,
)
from sootline.core.gear.kinds import Kind
from sootline.core.gear.labels import CareText, Guide, Label
from sootline.core.rulebook.rules import Edition, Rule, Rulebook

LABEL = EditionId("label")
GUIDE = EditionId("guide")


@dataclass(frozen=True, kw_only=True)
class MakerText:
    """Care instructions of the maker, on the label or in the guide, and how they are cited."""

    edition: EditionId
    care: CareText
    source: str

    def ground(self, field: str) -> Ground:
        """Return what a finding cites when it rests on one field of this text."""
        return Ground(
            rule=RuleId(f"{self.edition}.{field}"),
            edition=self.edition,
            source=self.source,
            confidence=Confidence.STATED,
        )


@dataclass(frozen=True, kw_only=True)
class Sources:
    """Everything that speaks on one component, in the order of precedence.

    Args:
        readable: False when the label could not be read, so that its limits are not known.
        maker: the label, then the guide where there is one.
        traits: the component's traits, its kind's, and its kind, element, layer and materials.
    """

    kind: Kind
    readable: bool
    maker: tuple[MakerText, ...]
    rulebook: Rulebook
    traits: frozenset[str]

    def rules(self, topic: str, *texts: Edition) -> Iterator[tuple[Rule, Ground]]:
        """Walk the rules on a topic, text by text, confined ones before general ones."""
        for text in texts:
            for rule in text.on(topic, self.traits):
                yield rule, rule.ground(text.id)


def label_text(label: Label) -> MakerText:
    """Cite a label by maker and style as far as they are known."""
    named = " ".join(part for part in (label.maker, label.style) if part)
    return MakerText(edition=LABEL, care=label.care, source=named or "label")


def guide_text(guide: Guide) -> MakerText:
    """Cite a maker's guide by its title."""
    return MakerText(edition=GUIDE, care=guide.care, source=guide.title)


def kind_traits(kind: Kind, traits: tuple[str, ...] = ()) -> frozenset[str]:
    """Collect everything a rule may be confined to that this component has."""
    own = (kind.id, kind.element.value, kind.layer.value)
    return frozenset((*traits, *kind.traits, *own))


def unreadable_word(rule: Rule, ground: Ground, word: str) -> BadInputError:
    """Build the refusal of a rule whose word names nothing that can be done."""
    fault = Fault(
        place=f"{ground.edition}: {rule.topic}",
        message=MessageId("gear.rule.unknown_word"),
        values=(("given", word), ("topic", rule.topic)),
    )
    return BadInputError([fault])
