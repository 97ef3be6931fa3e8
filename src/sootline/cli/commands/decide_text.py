"""How do the decisions of a job read on a terminal: calls to make, holds, then gear by member?"""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from sootline.cli.output import finding_lines, printable
from sootline.cli.pieces import called, listed, wrapped
from sootline.core.basis import ComponentId, Finding
from sootline.core.care import Decision, Fate
from sootline.core.gear import Component, Hold
from sootline.core.job.jobs import Job
from sootline.core.rulebook import Decider
from sootline.tasks.decide import Decided
from sootline.words import name, say

_QUIET = (Fate.HOOK,)


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
    yield from _first(decided.decisions, lang)
    yield from _holds(decided.decisions, pieces, job, lang)
    yield from _gear(decided.decisions, pieces, lang, every=every)
    yield from _cautions(decided.decisions, lang)
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
    words = [name("fate", decision.fate, lang=lang)]
    if decision.fate in (Fate.WASH, Fate.HOLD):
        words.append(name("level", decision.level, lang=lang))
        if decision.disinfection:
            words.append(name("disinfection", decision.disinfection, lang=lang))
    if decision.fate is Fate.WASH:
        words.append(name("wash_method", decision.wash, lang=lang))
        if decision.separation.alone:
            words.append(say("decide.alone", lang=lang))
        elif decision.separation.hazards:
            hazards = ", ".join(decision.separation.hazards)
            words.append(say("decide.apart", {"contaminant": hazards}, lang=lang))
    return ", ".join(words)


def _now(job: Job) -> str:
    return job.now.strftime("%Y-%m-%d %H:%M")


def _first(decisions: Sequence[Decision], lang: str) -> Iterator[str]:
    calls = _once(found for decision in decisions for found in decision.first)
    if calls:
        yield from ("", say("decide.first", lang=lang))
        yield from finding_lines(calls, lang=lang)


def _holds(
    decisions: Sequence[Decision], pieces: dict[ComponentId, Component], job: Job, lang: str
) -> Iterator[str]:
    people = {one.office: one.person for one in job.department.care.appointments}
    held: dict[tuple[str, str], list[tuple[Component, Hold]]] = defaultdict(list)
    for decision in decisions:
        piece = pieces[decision.component]
        for hold in decision.open_holds:
            held[hold.cause, piece.owner or "-"].append((piece, hold))
    if held:
        yield from ("", say("decide.holds", lang=lang))
    for (_, owner), every in held.items():
        hold = every[0][1]
        what = listed([one for one, _ in every], lang, among=job.components)
        yield from wrapped(f"{printable(owner)}: {what}")
        values = {
            "decider": _office(hold.decider, people, lang),
            "deputy": _office(hold.deputy, people, lang),
            "hours": str(hold.escalate_after_h),
            "question": say(hold.question, hold.reason.values if hold.reason else (), lang=lang),
        }
        yield from wrapped(say("decide.hold", values, lang=lang), indent=6)


def _office(office: Decider, people: Mapping[Decider, str | None], lang: str) -> str:
    """Return an office with the person who holds it tonight, where that is known."""
    person = people.get(office)
    return f"{name('decider', office, lang=lang)} {printable(person or '')}".rstrip()


def _gear(
    decisions: Sequence[Decision],
    pieces: dict[ComponentId, Component],
    lang: str,
    *,
    every: bool,
) -> Iterator[str]:
    groups: dict[tuple[str, str], list[Component]] = defaultdict(list)
    quiet = 0
    for decision in decisions:
        piece = pieces[decision.component]
        if decision.fate in _QUIET and not every:
            quiet += 1
            continue
        groups[piece.owner or "-", needs(decision, lang)].append(piece)
    owners = dict.fromkeys(owner for owner, _ in groups)
    yield from ("", say("decide.gear", lang=lang))
    for owner in owners:
        yield f"  {printable(owner)}"
        for (whose, need), components in groups.items():
            if whose == owner:
                what = listed(components, lang, among=pieces.values())
                yield from wrapped(f"{need}: {what}", indent=4)
    if quiet:
        yield from wrapped(say("decide.quiet", {"n": str(quiet)}, lang=lang))


def _cautions(decisions: Sequence[Decision], lang: str) -> Iterator[str]:
    for heading, part in (("decide.cautions", "cautions"), ("decide.unknowns", "unknowns")):
        found = _once(one for decision in decisions for one in getattr(decision, part))
        if found:
            yield from ("", say(heading, lang=lang))
            for one in found:
                yield from wrapped(f"- {say(one.message, one.values, lang=lang)}")


def _once(findings: Iterator[Finding]) -> tuple[Finding, ...]:
    """Keep the first of findings that say the same."""
    return tuple({(one.message, one.values): one for one in findings}.values())
