"""On what terms may this component be washed and dried, and how often must things be done?

Limits are the strictest of label, maker's guide, adopted edition and policy; a prohibition holds
if any source forbids; an interval is the shortest; for a method the first source that speaks
counts. Nothing goes beyond label or maker, and what is not known lowers nothing.
"""

from functools import lru_cache

from sootline.core.basis import Ground, KindId
from sootline.core.gear.catalogue import find_kind
from sootline.core.gear.components import Component
from sootline.core.gear.labels import Guide
from sootline.core.gear.limits import LIMIT_TOPICS, resolve_limit, unset_grounds
from sootline.core.gear.methods import (
    resolve_bans,
    resolve_drying,
    resolve_flag,
    resolve_method,
)
from sootline.core.gear.sources import MakerText, Sources, guide_text, kind_traits, label_text
from sootline.core.gear.terms import CareTerms, ResolvedInterval
from sootline.core.gear.weighing import list_limit_notes, list_method_notes, list_questions
from sootline.core.rulebook.rules import Rulebook, RuleKind


def resolve_terms(component: Component, guide: Guide | None, rulebook: Rulebook) -> CareTerms:
    """Resolve every limit, prohibition and method for one component, with every source.

    Args:
        guide: the maker's guide that covers it; None where there is none.

    Raises:
        BadInputError: the kind is unknown, or a rule names an act or a method that does not
            exist.
    """
    book = _Same(rulebook)
    maker = (label_text(component.label), *((guide_text(guide),) if guide else ()))
    traits = tuple(sorted(set(component.traits)))
    return _resolve(component.kind, component.label.readable, maker, traits, book)


def resolve_months(
    topic: str, component: Component, guide: Guide | None, rulebook: Rulebook
) -> ResolvedInterval:
    """Gather every interval on a topic over guide, edition and policy, shortest first.

    Raises:
        BadInputError: the kind is unknown.
    """
    kind = find_kind(component.kind)
    sources = Sources(
        kind=kind,
        readable=component.label.readable,
        maker=(),
        rulebook=rulebook,
        traits=kind_traits(kind, component.traits),
    )
    stated: list[tuple[int, Ground]] = []
    if guide:
        ground = guide_text(guide).ground(topic)
        stated += [(months, ground) for spoken, months in guide.months if spoken == topic]
    for rule, ground in sources.rules(topic, rulebook.adopted, rulebook.policy):
        if rule.kind is RuleKind.INTERVAL and isinstance(rule.value, int):
            stated.append((rule.value, ground))
    shortest_first = tuple(sorted(stated, key=lambda one: one[0]))
    unset = unset_grounds(topic, sources)
    return ResolvedInterval(topic=topic, months=shortest_first, unset=unset)


class _Same:
    """The very same rulebook as part of a key, so that its rules are not hashed each time."""

    def __init__(self, rulebook: Rulebook) -> None:
        self.rulebook = rulebook

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and self.rulebook is other.rulebook

    def __hash__(self) -> int:
        return id(self.rulebook)


@lru_cache(maxsize=4096)
def _resolve(
    kind_id: KindId,
    readable: bool,
    maker: tuple[MakerText, ...],
    traits: tuple[str, ...],
    book: _Same,
) -> CareTerms:
    kind = find_kind(kind_id)
    sources = Sources(
        kind=kind,
        readable=readable,
        maker=maker,
        rulebook=book.rulebook,
        traits=kind_traits(kind, traits),
    )
    limits = tuple(resolve_limit(topic, sources) for topic in LIMIT_TOPICS)
    bans = resolve_bans(sources)
    method = resolve_method(sources, bans)
    drying = resolve_drying(sources, bans)
    return CareTerms(
        limits=limits,
        bans=bans,
        method=method,
        dry=drying.methods,
        dry_ground=drying.ground,
        barrier_outward=resolve_flag(sources, "barrier_outward"),
        assembled=resolve_flag(sources, "assembled"),
        questions=tuple(list_questions(sources, limits)),
        notes=(
            *list_limit_notes(limits, book.rulebook.adopted.id),
            *list_method_notes(method, drying),
        ),
    )
