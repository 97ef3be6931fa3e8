"""Rulebooks, coats and people for the tests of the year; everything here is invented."""

import datetime as dt

from sootline.core.basis import ComponentId, DateSpan, EditionId, KindId, MemberId, Quantity, SetId
from sootline.core.exposure import Answer
from sootline.core.gear import CareStage, Component, State
from sootline.core.rebuild import FlawFound
from sootline.core.rulebook import Rule, Rulebook, assemble
from sootline.core.upkeep.inspections import (
    Bench,
    Inspection,
    InspectionKind,
    LinerTest,
    LinerTestDone,
    list_points,
)
from sootline.core.upkeep.qualified import Grade, Qualified, Scope
from sootline.wiring.rules import RULES

DAY = dt.date(2026, 4, 11)
AT = dt.datetime(2026, 4, 11, 10, tzinfo=dt.UTC)
INSPECTOR = Qualified(
    who="118",
    grade=Grade.TRAINED,
    scopes=(Scope.ADVANCED_INSPECTION, Scope.BASIC_REPAIR),
    source="class list, invented",
)
PROVIDER = Qualified(
    who="Mendwell",
    grade=Grade.VERIFIED,
    scopes=(Scope.LINER_INSPECTION, Scope.ADVANCED_REPAIR),
    source="certificate 12, invented",
)
NOTHING_THROUGH = (
    LinerTestDone(test=LinerTest.LIGHT, passed=Answer.YES),
    LinerTestDone(
        test=LinerTest.LEAKAGE,
        passed=Answer.YES,
        water_parts=6,
        waited=Quantity.parse("3 min"),
    ),
)


def book(edition: str = "nfpa-1851/2014", policy: tuple[Rule, ...] = ()) -> Rulebook:
    """Return the rules a department under an edition goes by."""
    adopted = RULES.edition(EditionId(edition))
    return assemble(adopted=adopted, policy=policy, practice=RULES.practice()).rulebook


def bench(edition: str = "nfpa-1851/2014", policy: tuple[Rule, ...] = ()) -> Bench:
    """Return what inspections are judged by, on the day."""
    return Bench(rulebook=book(edition, policy), people=(INSPECTOR, PROVIDER), today=DAY)


def part(name: str, kind: str = "coat-shell", **given: object) -> Component:
    """Return one component of a set named like itself before the first dash."""
    facts: dict[str, object] = {
        "set": SetId(name.partition("-")[0]),
        "owner": MemberId(f"m{name.partition('-')[0]}"),
        "made": DateSpan.parse("2022-03"),
        "in_service": DateSpan.parse("2025-04-11"),
        "state": State(stage=CareStage.CHECKED),
        **given,
    }
    return Component(id=ComponentId(name), kind=KindId(kind), **facts)  # type: ignore[arg-type]


def inspect(
    component: Component,
    *flaws: FlawFound,
    kind: InspectionKind = InspectionKind.ADVANCED,
    by: str = "118",
    **given: object,
) -> Inspection:
    """Return an inspection in which every point was looked at and nothing came through."""
    liner = component.kind.endswith("liner") and kind is InspectionKind.ADVANCED
    facts: dict[str, object] = {
        "looked": list_points(component.kind, kind),
        "tests": NOTHING_THROUGH if liner else (),
        **given,
    }
    return Inspection(
        component=component.id,
        kind=kind,
        by=by,
        at=AT,
        flaws=flaws,
        **facts,  # type: ignore[arg-type]
    )
