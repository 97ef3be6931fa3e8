"""What bears on each component: its calls, exposures, due cleanings, terms and who secured it?"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import TypeVar

from sootline.core.basis import ComponentId, GuideId, MemberId
from sootline.core.care.cases import Case, Concern, Texts
from sootline.core.care.decisions import Due
from sootline.core.exposure.calls import Answer, Call
from sootline.core.exposure.grade import grade_wearings
from sootline.core.exposure.grades import Exposure
from sootline.core.exposure.wearing import Wearing, find_wearings
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.labels import Guide
from sootline.core.gear.resolve import resolve_terms

_Key = TypeVar("_Key")
_One = TypeVar("_One")


@dataclass(frozen=True, kw_only=True)
class _Index:
    """Everything that bears on components, looked up by component or by person."""

    wearings: dict[ComponentId, tuple[Wearing, ...]]
    concerns: dict[ComponentId, tuple[Concern, ...]]
    dues: dict[ComponentId, tuple[Due, ...]]
    guides: dict[GuideId, Guide]
    skin: dict[MemberId, tuple[Call, ...]]
    evidence: dict[ComponentId, tuple[Call, ...]]
    hurt: dict[MemberId, tuple[Call, ...]]


def gather_cases(
    components: Sequence[Component],
    guides: Iterable[Guide],
    calls: Sequence[Call],
    due: Iterable[Due],
    texts: Texts,
) -> Iterator[Case]:
    """Gather for each component everything that bears on it, in one pass over the calls.

    Raises:
        BadInputError: a component's kind is unknown, or a rule names a method there is none of.
    """
    index = _index(components, guides, calls, due, texts)
    for component in components:
        wearings = index.wearings.get(component.id, ())
        people = _people(component, wearings)
        guide = index.guides.get(component.guide) if component.guide else None
        yield Case(
            component=component,
            kind=find_kind(component.kind),
            terms=resolve_terms(component, guide, texts.rulebook),
            wearings=wearings,
            guide=guide,
            concerns=index.concerns.get(component.id, ()),
            due=index.dues.get(component.id, ()),
            reached_skin=_of_people(people, index.skin),
            evidence=index.evidence.get(component.id, ()),
            casualty=_of_people(people, index.hurt),
        )


def _index(
    components: Sequence[Component],
    guides: Iterable[Guide],
    calls: Sequence[Call],
    due: Iterable[Due],
    texts: Texts,
) -> _Index:
    found = find_wearings(components, calls)
    exposures = grade_wearings(
        wearings=found,
        components=components,
        rulebook=texts.rulebook,
        contaminants=tuple(texts.contaminants.values()),
        now=texts.now,
    )
    return _Index(
        wearings=_grouped((one.component.id, one) for one in found),
        concerns=_grouped((one.component, _concern(one, texts)) for one in exposures),
        dues=_grouped((one.component, one) for one in due),
        guides={guide.id: guide for guide in guides},
        skin=_grouped(_skin_reached(found, texts)),
        evidence=_grouped((one, call) for call in calls for one in call.evidence),
        hurt=_grouped((member, call) for call in calls for member in call.casualties),
    )


def _grouped(pairs: Iterable[tuple[_Key, _One]]) -> dict[_Key, tuple[_One, ...]]:
    groups: dict[_Key, list[_One]] = defaultdict(list)
    for key, one in pairs:
        groups[key].append(one)
    return {key: tuple(group) for key, group in groups.items()}


def _concern(exposure: Exposure, texts: Texts) -> Concern:
    return Concern(exposure=exposure, rule=texts.contaminants.get(exposure.contaminant))


def _skin_reached(wearings: Iterable[Wearing], texts: Texts) -> Iterator[tuple[MemberId, Call]]:
    """Name the people whose skin something that asks for disinfection has reached, and where."""
    for wearing in wearings:
        for remark in wearing.remarks:
            rule = texts.contaminants.get(remark.contaminant) if remark.contaminant else None
            if rule and rule.disinfect and remark.reached_skin is Answer.YES:
                for member in _people(wearing.component, (wearing,)):
                    yield member, wearing.call


def _people(component: Component, wearings: Iterable[Wearing]) -> tuple[MemberId, ...]:
    """List whose gear it is and who wore it, each once."""
    worn_by = [person.member for wearing in wearings for person in wearing.people]
    owner = [component.owner] if component.owner else []
    return tuple(dict.fromkeys((*owner, *worn_by)))


def _of_people(
    people: Iterable[MemberId], calls: dict[MemberId, tuple[Call, ...]]
) -> tuple[Call, ...]:
    if not calls:
        return ()
    found = {call.id: call for member in people for call in calls.get(member, ())}
    return tuple(found.values())
