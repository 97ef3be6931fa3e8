"""Components, texts and rulebooks in few words, for tests of gear. All of it is invented."""

from sootline.core.basis import (
    ComponentId,
    Confidence,
    DateSpan,
    EditionId,
    GuideId,
    KindId,
    Limit,
    MessageId,
    RuleId,
    SetId,
    Side,
    parse_limit,
)
from sootline.core.gear import (
    CareText,
    Component,
    Guide,
    Hold,
    Label,
    State,
    resolve_terms,
)
from sootline.core.gear.terms import CareTerms
from sootline.core.rulebook.contaminants import Decider
from sootline.core.rulebook.rules import (
    Edition,
    EditionStatus,
    Rule,
    Rulebook,
    RuleKind,
    Value,
)

KINDS_OF_VALUE = {
    Limit: RuleKind.LIMIT,
    int: RuleKind.INTERVAL,
    tuple: RuleKind.LIST,
    str: RuleKind.CHOICE,
}


def at_most(text: str) -> Limit:
    """Make an upper limit from its text."""
    return parse_limit(text, Side.AT_MOST)


def at_least(text: str) -> Limit:
    """Make a lower limit from its text."""
    return parse_limit(text, Side.AT_LEAST)


def rule(topic: str, value: Value, *traits: str, decision: str | None = None) -> Rule:
    """Make a rule; its kind follows from its value."""
    return Rule(
        topic=RuleId(topic),
        kind=KINDS_OF_VALUE[type(value)],
        value=value,
        source="invented",
        confidence=Confidence.STATED,
        traits=traits,
        decision=decision,
    )


def unset(topic: str, *traits: str, kind: RuleKind = RuleKind.LIMIT) -> Rule:
    """Make a rule whose value nobody has read yet."""
    return Rule(
        topic=RuleId(topic),
        kind=kind,
        value=None,
        source="not read",
        confidence=Confidence.LOW,
        traits=traits,
    )


def text(name: str, *rules: Rule) -> Edition:
    """Make a text of a rulebook."""
    return Edition(
        id=EditionId(name),
        title=name,
        body=name,
        status=EditionStatus.CURRENT,
        in_force=DateSpan(),
        rules=rules,
    )


def book(
    *adopted: Rule, policy: tuple[Rule, ...] = (), practice: tuple[Rule, ...] = ()
) -> Rulebook:
    """Make a rulebook from the rules of its three texts."""
    return Rulebook(
        adopted=text("edition", *adopted),
        policy=text("policy", *policy),
        practice=text("practice", *practice),
    )


def piece(
    kind: str = "coat-shell",
    care: CareText | None = None,
    *traits: str,
    readable: bool = True,
    name: str = "1",
    of_set: str | None = None,
    state: State | None = None,
) -> Component:
    """Make a component of a kind, with what its label says."""
    return Component(
        id=ComponentId(name),
        kind=KindId(kind),
        set=SetId(of_set) if of_set else None,
        traits=traits,
        label=Label(care=care or CareText(), readable=readable),
        state=state or State(),
    )


def guide(care: CareText | None = None, *months: tuple[str, int]) -> Guide:
    """Make a maker's guide."""
    return Guide(id=GuideId("g"), title="Guide", care=care or CareText(), months=months)


def terms(
    component: Component, rulebook: Rulebook | None = None, maker: Guide | None = None
) -> CareTerms:
    """Resolve the terms of a component."""
    return resolve_terms(component, maker, rulebook or book())


def hold(cause: str = "powder") -> Hold:
    """Make an open hold that the safety officer decides, or the chief."""
    return Hold(
        cause=cause,
        question=MessageId("care.ask.powder"),
        decider=Decider.SAFETY_OFFICER,
        deputy=Decider.CHIEF,
        escalate_after_h=12,
    )
