"""How is a component washed and dried, and what is forbidden, over everything that speaks?

For a method the first source that speaks counts; what any source forbids falls through to the
next less demanding method that nobody forbids.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeVar

from sootline.core.basis import Ground
from sootline.core.gear.kinds import DryMethod, WashMethod
from sootline.core.gear.labels import Act
from sootline.core.gear.sources import Sources, unreadable_word
from sootline.core.gear.terms import Ban, ResolvedFlag, ResolvedMethod, Voice
from sootline.core.rulebook.rules import Rule

FORBIDDEN = ("wash.forbidden", "dry.forbidden")
WASH = "wash.method"
_Word = TypeVar("_Word", bound=StrEnum)
_FORBIDDEN_BY: dict[WashMethod, frozenset[Act]] = {
    WashMethod.MACHINE: frozenset({Act.MACHINE_WASH, Act.ANY_WASH}),
    WashMethod.HAND: frozenset({Act.HAND_WASH, Act.ANY_WASH}),
    WashMethod.BRUSH: frozenset({Act.ANY_WASH}),
    WashMethod.WIPE: frozenset({Act.ANY_WASH}),
    WashMethod.NONE: frozenset(),
}


@dataclass(frozen=True, kw_only=True)
class ResolvedDrying:
    """The drying methods left, who named them, and the prohibition that took others away."""

    methods: tuple[DryMethod, ...]
    ground: Ground
    ban: Ban | None = None


def resolve_bans(sources: Sources) -> tuple[Ban, ...]:
    """List everything any source forbids, in the order of precedence.

    Raises:
        BadInputError: a rule forbids something that is not an act.
    """
    bans: list[Ban] = []
    for text in sources.maker:
        bans += [Ban(act=act, ground=text.ground("forbids")) for act in text.care.forbids]
        if text.care.wash is WashMethod.NONE:
            bans.append(Ban(act=Act.ANY_WASH, ground=text.ground("wash")))
    for topic in FORBIDDEN:
        for rule, ground in sources.rules(topic, *sources.rulebook.texts):
            bans += [
                Ban(act=_named(Act, rule, ground, word), ground=ground) for word in _words(rule)
            ]
    return tuple(dict.fromkeys(bans))


def resolve_method(sources: Sources, bans: tuple[Ban, ...]) -> ResolvedMethod:
    """Choose the method of the first source that speaks, as far as nobody forbids it.

    Raises:
        BadInputError: a rule names a method that does not exist.
    """
    spoken = _wash_voices(sources)
    wanted, ground = spoken[0]
    wash = wanted
    while ban := _ban_on(wash, bans):
        wash, ground = _less_demanding(wash), ban.ground
    voices = tuple(Voice(text=method.value, ground=said) for method, said in spoken)
    return ResolvedMethod(wash=wash, wanted=wanted, ground=ground, voices=voices)


def resolve_drying(sources: Sources, bans: tuple[Ban, ...]) -> ResolvedDrying:
    """Choose the drying methods of the first source that speaks, less what is forbidden.

    A machine that may not dry it rules out the cabinet; hanging in the shade stays.
    """
    methods, ground = _dry_wanted(sources)
    ban = next((ban for ban in bans if ban.act is Act.MACHINE_DRY), None)
    if ban is None or DryMethod.CABINET not in methods:
        return ResolvedDrying(methods=methods, ground=ground)
    left = tuple(method for method in methods if method is not DryMethod.CABINET)
    return ResolvedDrying(methods=left or (DryMethod.HANG,), ground=ban.ground, ban=ban)


def resolve_flag(sources: Sources, field: str) -> ResolvedFlag:
    """Return what the first of label and guide that speaks says on a yes-or-no field."""
    for text in sources.maker:
        value = {
            "barrier_outward": text.care.barrier_outward,
            "assembled": text.care.assembled,
        }[field]
        if value is not None:
            return ResolvedFlag(value=value, ground=text.ground(field))
    return ResolvedFlag(value=None)


def _wash_voices(sources: Sources) -> list[tuple[WashMethod, Ground]]:
    """List every source that names a wash method, in order; the kind's usual one is the last."""
    spoken = [
        (text.care.wash, text.ground("wash"))
        for text in sources.maker
        if text.care.wash is not None
    ]
    for rule, ground in sources.rules(WASH, *sources.rulebook.texts):
        spoken += [(_named(WashMethod, rule, ground, word), ground) for word in _words(rule)]
    return [*spoken, (sources.kind.usual_wash, sources.kind.ground)]


def _dry_wanted(sources: Sources) -> tuple[tuple[DryMethod, ...], Ground]:
    """Return what the first source that speaks names for drying."""
    for text in sources.maker:
        if text.care.dry:
            return text.care.dry, text.ground("dry")
    return sources.kind.usual_dry, sources.kind.ground


def _ban_on(method: WashMethod, bans: tuple[Ban, ...]) -> Ban | None:
    """Return the first prohibition that rules a method out."""
    return next((ban for ban in bans if ban.act in _FORBIDDEN_BY[method]), None)


def _less_demanding(method: WashMethod) -> WashMethod:
    """Return the next method down; nothing is below NONE, which nothing forbids."""
    order = list(WashMethod)
    return order[order.index(method) + 1]


def _words(rule: Rule) -> tuple[str, ...]:
    """Return the words of a list or a choice; an unset rule has none."""
    if isinstance(rule.value, tuple):
        return rule.value
    return (rule.value,) if isinstance(rule.value, str) else ()


def _named(acts: type[_Word], rule: Rule, ground: Ground, word: str) -> _Word:
    """Read a rule's word as an act or a method."""
    try:
        return acts(word)
    except ValueError as error:
        raise unreadable_word(rule, ground, word) from error
