"""How do the decisions of a job read on a terminal: calls to make, holds, then gear by member?"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import TypeAlias

from sootline.cli.commands.decide_at_hand import at_hand_lines
from sootline.cli.output import finding_lines, printable
from sootline.cli.pieces import called, listed, whose, wrapped
from sootline.core.basis import ComponentId, Finding
from sootline.core.care import Decision, Fate
from sootline.core.gear import Component, Hold
from sootline.core.job.jobs import Job
from sootline.core.rulebook import Decider
from sootline.tasks.decide import Decided
from sootline.words import name, say

Pieces: TypeAlias = Mapping[ComponentId, Component]

_FEW = 3
_QUIET = (Fate.HOOK,)
# Messages on a contaminant say "it", so they stand under its name.
_OF_HAZARD = "hazard."


def decided_lines(
    job: Job, decided: Decided, lang: str, *, why: Sequence[str], every: bool
) -> Iterator[str]:
    """Return the decisions as text.

    Args:
        why: components to give every reason for, instead of the overview.
        every: also list what nothing happened to.
    """
    pieces = {component.id: component for component in job.components}
    yield say("decide.heading", {"title": printable(job.title), "now": _now(job)}, lang=lang)
    yield from finding_lines(decided.findings, lang=lang)
    if why:
        for decision in decided.decisions:
            if decision.component in why:
                yield from explained(decision, pieces[decision.component], lang)
        return
    yield from _first(decided.decisions, pieces, lang)
    yield from _holds(decided.decisions, pieces, job, lang)
    yield from _gear(decided.decisions, pieces, lang, every=every)
    yield from _told("cautions", decided.decisions, pieces, lang)
    yield from at_hand_lines(job, decided, lang)
    yield from _told("unknowns", decided.decisions, pieces, lang)
    yield ""
    yield from wrapped(say("decide.more", lang=lang), indent=0)


def explained(decision: Decision, component: Component, lang: str) -> Iterator[str]:
    """Return one decision with every reason, limit, step and open question."""
    yield ""
    yield f"{called(component, lang)}: {needs(decision, lang)}"
    for part in (decision.first, decision.reasons, decision.unknowns, decision.cautions):
        yield from finding_lines(part, lang=lang)
    for limit in decision.terms.limits:
        for stated, ground in limit.limits:
            values = {
                "topic": limit.topic,
                "limit": str(stated),
                "edition": ground.edition,
                "source": ground.source,
            }
            yield from wrapped(say("decide.limit", values, lang=lang))
        for voice in limit.as_typed:
            values = {"topic": limit.topic, "text": voice.text}
            yield from wrapped(say("decide.as_typed", values, lang=lang))
    for number, step in enumerate(decision.preparation, 1):
        act, skipped = say(step.act, lang=lang), say(step.skipped, lang=lang)
        yield from wrapped(f"{number}. {act} ({skipped})")


def needs(decision: Decision, lang: str) -> str:
    """Say in a few words what a component needs: fate, level, disinfection, method."""
    fate = name("fate", decision.fate, lang=lang)
    if decision.fate not in (Fate.WASH, Fate.HOLD):
        return fate
    words = [name("level", decision.level, lang=lang)]
    if decision.disinfection:
        words.append(name("disinfection", decision.disinfection, lang=lang))
    if decision.fate is Fate.HOLD:
        return say("decide.then", {"fate": fate, "work": ", ".join(words)}, lang=lang)
    words.append(name("wash_method", decision.wash, lang=lang))
    if decision.separation.alone:
        words.append(say("decide.alone", lang=lang))
    elif decision.separation.hazards:
        hazards = ", ".join(decision.separation.hazards)
        words.append(say("decide.apart", {"contaminant": hazards}, lang=lang))
    return ", ".join((fate, *words))


def _now(job: Job) -> str:
    return job.now.strftime("%Y-%m-%d %H:%M")


def _first(decisions: Sequence[Decision], pieces: Pieces, lang: str) -> Iterator[str]:
    calls: dict[Finding, list[Component]] = defaultdict(list)
    for decision in decisions:
        for found in decision.first:
            calls[found].append(pieces[decision.component])
    if calls:
        yield from ("", say("decide.first", lang=lang))
    for found, components in calls.items():
        for owner, theirs in _by_owner(components, lang).items():
            what = listed(theirs, lang, among=pieces.values())
            values = {"whose": owner, "pieces": what}
            yield from wrapped(say("decide.held", values, lang=lang))
        yield from finding_lines([found], lang=lang)


def _holds(decisions: Sequence[Decision], pieces: Pieces, job: Job, lang: str) -> Iterator[str]:
    """List every question once, who decides it, and whose gear waits for it."""
    people = {one.office: one.person for one in job.department.care.appointments}
    held: dict[tuple[str, str], list[Decision]] = defaultdict(list)
    for decision in decisions:
        for hold in decision.open_holds:
            held[_question(hold, lang), _deciders(hold, people, lang)].append(decision)
    if held:
        yield from ("", say("decide.holds", lang=lang))
    for (question, deciders), waiting in held.items():
        yield from wrapped(question)
        yield from wrapped(deciders, indent=6)
        for sealed in (True, False):
            components = [pieces[one.component] for one in waiting if one.sealed is sealed]
            for owner, theirs in _by_owner(components, lang).items():
                what = listed(theirs, lang, among=pieces.values())
                message = "decide.held.sealed" if sealed else "decide.held"
                values = {"whose": owner, "pieces": what}
                yield from wrapped(say(message, values, lang=lang), indent=6)


def _by_owner(components: Iterable[Component], lang: str) -> dict[str, list[Component]]:
    owners: dict[str, list[Component]] = defaultdict(list)
    for component in components:
        owners[whose(component, lang)].append(component)
    return owners


def _question(hold: Hold, lang: str) -> str:
    return say(hold.question, hold.reason.values if hold.reason else (), lang=lang)


def _deciders(hold: Hold, people: Mapping[Decider, str | None], lang: str) -> str:
    values = {
        "decider": _office(hold.decider, people, lang),
        "deputy": _office(hold.deputy, people, lang),
        "hours": str(hold.escalate_after_h),
    }
    return say("decide.hold", values, lang=lang)


def _office(office: Decider, people: Mapping[Decider, str | None], lang: str) -> str:
    """Return an office with the person who holds it tonight, where that is known."""
    person = people.get(office)
    return f"{name('decider', office, lang=lang)} {printable(person or '')}".rstrip()


def _gear(
    decisions: Sequence[Decision], pieces: Pieces, lang: str, *, every: bool
) -> Iterator[str]:
    groups: dict[tuple[str, str], list[Component]] = defaultdict(list)
    quiet = 0
    for decision in decisions:
        piece = pieces[decision.component]
        if decision.fate in _QUIET and not every:
            quiet += 1
            continue
        groups[whose(piece, lang), needs(decision, lang)].append(piece)
    owners = dict.fromkeys(owner for owner, _ in groups)
    yield from ("", say("decide.gear", lang=lang))
    for owner in owners:
        yield f"  {owner}"
        for (holder, need), components in groups.items():
            if holder == owner:
                what = listed(components, lang, among=pieces.values())
                yield from wrapped(f"{need}: {what}", indent=4)
    if quiet:
        yield from wrapped(say("decide.quiet", {"n": str(quiet)}, lang=lang))


def _told(part: str, decisions: Sequence[Decision], pieces: Pieces, lang: str) -> Iterator[str]:
    """List cautions or open questions once, under the contaminant they speak of.

    What concerns least gear stands first, because it is the least usual.
    """
    told: dict[str, dict[str, list[Component]]] = defaultdict(lambda: defaultdict(list))
    gear: dict[str, dict[str, None]] = defaultdict(dict)
    for decision in decisions:
        piece = pieces[decision.component]
        for found in getattr(decision, part):
            about = found.value("contaminant") if found.message.startswith(_OF_HAZARD) else ""
            told[about][say(found.message, found.values, lang=lang)].append(piece)
            gear[about][whose(piece, lang)] = None
    if told:
        yield from ("", say(f"decide.{part}", lang=lang))
    for about in sorted(told, key=lambda about: (about != "", len(gear[about]))):
        if about:
            values = {"contaminant": about, "members": ", ".join(gear[about])}
            yield from wrapped(say("decide.about", values, lang=lang))
        for sentence, components in told[about].items():
            text = sentence if about else _with_pieces(sentence, components, lang)
            yield from wrapped(f"- {text}", indent=4 if about else 2)


def _with_pieces(sentence: str, components: Sequence[Component], lang: str) -> str:
    """Add what a sentence is about: the pieces where they are few, else whose they are."""
    owners = _by_owner(components, lang)
    what = ", ".join(owners)
    if len(components) <= _FEW:
        what = "; ".join(f"{owner}: {listed(them, lang)}" for owner, them in owners.items())
    return say("decide.told", {"text": sentence, "pieces": what}, lang=lang)
