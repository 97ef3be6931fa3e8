"""What must each component undergo after these calls, what does it bear, who decides, and why?

A decision names the strictest requirement, the ceiling of label, maker, edition and policy, every
hold with its decider, every reason with its source, and what nobody knows. It never says what a
piece is free of.
"""

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence

from sootline.core.basis import Finding
from sootline.core.care.advice import list_unknowns, note, warn
from sootline.core.care.buildings import BuildingConcern, judge_buildings, survey_note
from sootline.core.care.cases import Case, Texts
from sootline.core.care.decisions import Decision, Due
from sootline.core.care.disinfection import DisinfectionPlan, plan_disinfection
from sootline.core.care.fates import choose_fate, choose_method, is_sealed, separate
from sootline.core.care.floors import find_floor
from sootline.core.care.gathering import gather_cases
from sootline.core.care.holds import (
    end_by_survey,
    hold_above_ceiling,
    hold_for_buildings,
    hold_for_concerns,
    merge,
)
from sootline.core.care.policy import CarePolicy
from sootline.core.care.preparation import prepare
from sootline.core.care.securing import refuse, secure, torn_and_soiled
from sootline.core.exposure.calls import Call
from sootline.core.gear.components import Component
from sootline.core.gear.labels import Guide
from sootline.core.gear.state import Hold
from sootline.core.rulebook.contaminants import ContaminantRule, Level
from sootline.core.rulebook.rules import Rulebook


def decide_care(
    *,
    components: Sequence[Component],
    guides: Iterable[Guide],
    calls: Sequence[Call],
    rulebook: Rulebook,
    contaminants: Sequence[ContaminantRule],
    policy: CarePolicy,
    now: dt.datetime,
    due: Iterable[Due] = (),
) -> tuple[Decision, ...]:
    """Decide on every component, in the order given.

    Args:
        calls: the calls whose exposures are not dealt with yet.
        due: cleanings that are due whatever happened.

    Raises:
        BadInputError: a component's kind is unknown, or a rule names a method there is none of.
    """
    texts = Texts(
        rulebook=rulebook,
        contaminants={rule.id: rule for rule in contaminants},
        policy=policy,
        now=now,
    )
    cases = gather_cases(components, guides, calls, due, texts)
    return tuple(_decide(case, texts) for case in cases)


def _decide(case: Case, texts: Texts) -> Decision:
    floor = find_floor(case, texts)
    plan = plan_disinfection(case, texts)
    buildings = tuple(one for wearing in case.wearings for one in judge_buildings(wearing, texts))
    holds = _holds(case, texts, floor.level, plan, buildings)
    refused = refuse(case)
    fate = choose_fate(case, floor.level, holds, refused=refused is not None)
    sealed = is_sealed(case.concerns, fate, holds)
    wet = next((one.ground for one in case.concerns if one.wet), None)
    return Decision(
        component=case.component.id,
        fate=fate,
        level=floor.level,
        disinfection=plan.word if plan else None,
        product=plan.product.name if plan and plan.product else None,
        contact_min=plan.product.contact_min if plan and plan.product else None,
        wash=choose_method(case, fate, floor.level),
        terms=case.terms,
        separation=separate(case.concerns, buildings),
        sealed=sealed,
        holds=holds,
        preparation=prepare(case, fate, sealed=sealed, wet=wet),
        first=plan.first if plan else (),
        reasons=tuple(
            dict.fromkeys(
                (
                    *((refused,) if refused else ()),
                    *floor.reasons,
                    *_held_because(holds),
                    *(plan.reasons if plan else ()),
                    *_surveyed(buildings),
                    *note(case),
                )
            )
        ),
        unknowns=(
            *list_unknowns(case, buildings, texts),
            *(one.finding for one in buildings if one.apart),
            *(plan.unknowns if plan else ()),
        ),
        cautions=warn(case, buildings, fate, texts),
    )


def _holds(
    case: Case,
    texts: Texts,
    level: Level,
    plan: DisinfectionPlan | None,
    buildings: Sequence[BuildingConcern],
) -> tuple[Hold, ...]:
    """Join what is recorded with everything that holds the component now."""
    concerning = tuple(hold_for_concerns(case, texts))
    own = frozenset(hold.cause.partition(".")[0] for hold in concerning)
    return merge(
        end_by_survey(case, texts),
        (
            *secure(case, texts),
            *torn_and_soiled(case, texts),
            *concerning,
            *(plan.holds if plan else ()),
            *hold_for_buildings(buildings, texts),
            *hold_above_ceiling(case, level, own, texts),
        ),
    )


def _held_because(holds: Iterable[Hold]) -> Iterator[Finding]:
    """Give the reason of every hold, ended or not: the history is kept."""
    return (hold.reason for hold in holds if hold.reason is not None)


def _surveyed(buildings: Iterable[BuildingConcern]) -> Iterator[Finding]:
    return (survey_note(one, one.ended_by) for one in buildings if one.ended_by)
