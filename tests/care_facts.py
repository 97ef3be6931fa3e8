"""Builds the facts that tests of exposure and care start from; all of them invented."""

# ruff: noqa: ANN401 - facts are handed on to dataclasses, which know their types

import datetime as dt
from collections.abc import Iterable, Sequence
from functools import cache
from typing import Any

from sootline.core.basis import (
    Bearing,
    CallId,
    ComponentId,
    Confidence,
    ContaminantId,
    EditionId,
    Finding,
    Ground,
    KindId,
    MemberId,
    MessageId,
    RuleId,
    SetId,
)
from sootline.core.care import CarePolicy, Decision, Due, decide_care
from sootline.core.exposure import Answer, Call, Exposure, Hazard, Presence, Remark, Zone
from sootline.core.exposure.grade import grade_exposure
from sootline.core.gear import Component
from sootline.core.gear.labels import CareText, Guide, Label
from sootline.core.gear.state import Hold
from sootline.core.rulebook import (
    ContaminantRule,
    Knowledge,
    Rule,
    Rulebook,
    RuleKind,
    assemble,
)
from sootline.core.rulebook.contaminants import Decider
from sootline.files.rules import RuleFiles

NOW = dt.datetime(2026, 3, 2, 4, 0, tzinfo=dt.UTC)
FIRE_AT = dt.datetime(2026, 3, 1, 22, 0, tzinfo=dt.UTC)
EDITION = "nfpa-1851/2020"
EDITIONS = ("nfpa-1851/2014", "nfpa-1851/2020", "nfpa-1850/2026", "iso-23616/2024")


@cache
def book(edition: str = EDITION, policy: tuple[Rule, ...] = ()) -> Rulebook:
    """Return the shipped rulebook under an adopted edition."""
    files = RuleFiles()
    adopted = files.edition(EditionId(edition))
    return assemble(adopted=adopted, policy=policy, practice=files.practice()).rulebook


def contaminants() -> tuple[ContaminantRule, ...]:
    """Return what the shipped common practice asks for each contaminant."""
    return RuleFiles().contaminants()


def contaminant(name: str) -> ContaminantRule:
    """Return one shipped contaminant rule."""
    return next(rule for rule in contaminants() if rule.id == name)


def piece(
    kind: str, owner: str | None = "A", *, care: CareText | None = None, **facts: Any
) -> Component:
    """Make a component of a member's own set."""
    facts.setdefault("id", ComponentId(f"{owner or 'pool'}-{kind}"))
    facts.setdefault("set", SetId(f"set-{owner}") if owner else None)
    if care is not None:
        facts["label"] = Label(care=care)
    return Component(kind=KindId(kind), owner=MemberId(owner) if owner else None, **facts)


def person(member: str = "A", *zones: Zone, **facts: Any) -> Presence:
    """Make one person's presence; inside and in smoke unless told otherwise."""
    if not zones and "zones" not in facts:
        zones = (Zone.INSIDE,)
        facts.setdefault("smoke", Answer.YES)
    facts.setdefault("zones", zones)
    return Presence(member=MemberId(member), **facts)


def bystander(member: str = "A", **facts: Any) -> Presence:
    """Make somebody at the pump throughout, in no smoke."""
    return person(member, Zone.PUMP, smoke=Answer.NO, **facts)


def fire(*people: Presence, **facts: Any) -> Call:
    """Make a call."""
    facts.setdefault("id", CallId("c1"))
    return Call(at=FIRE_AT, people=people, **facts)


def hazard(
    name: str, knowledge: Knowledge = Knowledge.KNOWN, said_by: str | None = "captain", **facts: Any
) -> Hazard:
    """Make a statement on a hazard of a call."""
    return Hazard(contaminant=ContaminantId(name), knowledge=knowledge, said_by=said_by, **facts)


def remark(component: Component, name: str | None = None, **facts: Any) -> Remark:
    """Make a remark on one component."""
    facts.setdefault("said_by", "captain")
    return Remark(
        component=component.id, contaminant=ContaminantId(name) if name else None, **facts
    )


def rule(topic: str, kind: RuleKind, value: Any, **facts: Any) -> Rule:
    """Make a rule of a department's own policy."""
    return Rule(
        topic=RuleId(topic),
        kind=kind,
        value=value,
        source="policy of this test",
        confidence=Confidence.POLICY,
        **facts,
    )


def decide(
    components: Sequence[Component],
    calls: Iterable[Call] = (),
    *,
    rulebook: Rulebook | None = None,
    policy: CarePolicy | None = None,
    rules: Sequence[ContaminantRule] | None = None,
    guides: Iterable[Guide] = (),
    due: Iterable[Due] = (),
    now: dt.datetime = NOW,
) -> tuple[Decision, ...]:
    """Decide under the shipped rules unless a test brings its own."""
    return decide_care(
        components=components,
        guides=guides,
        calls=tuple(calls),
        rulebook=rulebook or book(),
        contaminants=contaminants() if rules is None else rules,
        policy=policy or CarePolicy(),
        now=now,
        due=due,
    )


def decide_one(component: Component, *calls: Call, **facts: Any) -> Decision:
    """Decide on one component."""
    return decide([component], calls, **facts)[0]


def grade(
    components: Sequence[Component],
    *calls: Call,
    rulebook: Rulebook | None = None,
    now: dt.datetime | None = None,
) -> tuple[Exposure, ...]:
    """Grade under the shipped rules."""
    return grade_exposure(
        components=components,
        calls=calls,
        rulebook=rulebook or book(),
        contaminants=contaminants(),
        now=now,
    )


def due(component: Component, **facts: Any) -> Due:
    """Make a cleaning that is due by date."""
    ground = Ground(
        rule=RuleId("clean.advanced.count_in_12_months"),
        edition=EditionId(EDITION),
        source="policy of this test",
        confidence=Confidence.POLICY,
    )
    why = Finding(bearing=Bearing.REQUIRES, message=MessageId("due.cleaning"), ground=ground)
    return Due(component=component.id, finding=why, **facts)


def hold(cause: str, **facts: Any) -> Hold:
    """Make a hold as it stands in the record."""
    return Hold(
        cause=cause,
        question=MessageId("care.hold.contaminant"),
        decider=facts.pop("decider", Decider.SAFETY_OFFICER),
        deputy=Decider.CHIEF,
        escalate_after_h=12,
        **facts,
    )


def said(findings: Iterable[Finding]) -> list[str]:
    """List the message ids of findings."""
    return [finding.message for finding in findings]


def causes(decision: Decision) -> list[str]:
    """List what holds a component open."""
    return [hold.cause for hold in decision.open_holds]
