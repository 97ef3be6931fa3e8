"""`sootline ride`: who can ride now, in what, when the others, what would a hand-out cost?"""

import argparse
from collections.abc import Iterable, Iterator
from itertools import groupby
from pathlib import Path

from sootline.cli.output import deliver, finding_lines
from sootline.cli.parser import CommandParser
from sootline.cli.pieces import wrapped
from sootline.cli.registry import DONE, PROBLEM
from sootline.core.basis import BadInputError, Fault, Finding, MemberId, MessageId
from sootline.core.job.jobs import Job
from sootline.core.riding import Back, CanRide, ExchangeAnswer, HandOut, Purchase, Wanted, clock
from sootline.tasks.plan_wash import plan_wash
from sootline.tasks.who_can_ride import WhoRides, backs_of, who_can_ride
from sootline.wiring.jobs import read_job
from sootline.wiring.plans import load_planning_times, stop_after
from sootline.wiring.rules import RULES
from sootline.words import name, say

_SIZES = 2  # with so many sizes each is said with its dimension


def add_arguments(parser: CommandParser) -> None:
    """Add JOB, --give and --plan."""
    parser.add_argument("job", type=Path, metavar="JOB", help="riding.cli.help.job")
    parser.add_argument("--give", metavar="MEMBER=SPARE", help="riding.cli.help.give")
    parser.add_argument("--plan", type=float, metavar="S", help="riding.cli.help.plan")


def run(options: argparse.Namespace) -> int:
    """Answer a job; 1 when a crew is below its minimum or something speaks against a hand-out."""
    job = read_job(options.job)
    backs = _planned(job, options.plan) if options.plan is not None else ()
    answer = who_can_ride(RULES, job, backs=backs, hand_out=_hand_out(options.give))
    deliver(answer, _lines(job, answer, options), options)
    return DONE if answer.covered else PROBLEM


def _planned(job: Job, seconds: float) -> tuple[Back, ...]:
    plan = plan_wash(RULES, job, planning=load_planning_times(), stop=stop_after(seconds))
    return backs_of(plan, job)


def _hand_out(text: str | None) -> HandOut | None:
    if text is None:
        return None
    member, mark, spare = text.partition("=")
    if not (member and mark and spare):
        values = (("text", text),)
        message = MessageId("riding.cli.give_form")
        raise BadInputError([Fault(place="--give", message=message, values=values)])
    return HandOut(member=MemberId(member), unit=spare)


def _lines(job: Job, answer: WhoRides, options: argparse.Namespace) -> Iterator[str]:
    lang = options.lang
    yield say("riding.cli.heading", {"time": clock(answer.now, 0)}, lang=lang)
    yield from _spoken(answer.spoken, lang)
    if not answer.riding.best_now:
        yield say("riding.cli.bound", {"most": str(answer.riding.most_now)}, lang=lang)
    yield from _in_what(answer.riding.now.can, lang)
    if answer.riding.away:
        away = ", ".join(answer.riding.away)
        yield from wrapped(say("riding.cli.away", {"members": away}, lang=lang))
    yield from _next_day(answer, lang)
    yield from _purchases(answer.purchases, lang)
    if options.give is not None:
        yield from _give(answer, lang)
    for asked, found in zip(job.riding.exchanges, answer.exchanges, strict=True):
        message = "made" if found.moves else "refused"
        values = {"member": asked.member, "returned": asked.returns, "taken": asked.takes}
        yield from _exchange(say(f"riding.cli.exchange_{message}", values, lang=lang), found, lang)
    yield ""
    yield from wrapped(say("riding.cli.defer", lang=lang))


def _spoken(spoken: Iterable[Finding], lang: str) -> Iterator[str]:
    """Say a crew on a line, and everything about one member on the next."""
    for member, said in groupby(spoken, key=lambda one: dict(one.values).get("member")):
        sentences = [say(one.message, one.values, lang=lang) for one in said]
        if member is not None:
            sentences.insert(0, say("riding.cli.cannot", {"member": member}, lang=lang))
        yield from wrapped(" ".join(sentences), indent=2 if member is None else 4)


def _in_what(can: Iterable[CanRide], lang: str) -> Iterator[str]:
    """Name the spares each rider takes, who looks own gear over first, and who stays outside."""
    riders = tuple(can)
    for one in riders:
        spares = [worn for worn in one.outfit if worn.handed]
        if spares:
            pieces = ", ".join(
                f"{name('slot', worn.slot, lang=lang)} {worn.unit.id}" for worn in spares
            )
            values = {"member": one.member, "pieces": pieces}
            yield from wrapped(say("riding.cli.out_in", values, lang=lang))
    looked = [one.member for one in riders if any(worn.unit.first for worn in one.outfit)]
    if looked:
        yield from wrapped(say("riding.cli.look", {"members": ", ".join(looked)}, lang=lang))
    outside = ", ".join(one.member for one in riders if not one.interior)
    if outside:
        yield from wrapped(say("riding.cli.outside_only", {"members": outside}, lang=lang))


def _next_day(answer: WhoRides, lang: str) -> Iterator[str]:
    if len(answer.steps) > 1:
        yield from ("", say("riding.cli.next", lang=lang))
    for step in answer.steps[1:]:
        values = {
            "time": clock(answer.now, step.minute),
            "n": str(len(step.can)),
            "members": ", ".join(step.gained),
        }
        yield from wrapped(say("riding.cli.step", values, lang=lang))


def _purchases(purchases: tuple[Purchase, ...], lang: str) -> Iterator[str]:
    """List what to buy or borrow; whom fewer pieces would cover too is named there alone."""
    if purchases:
        yield from ("", say("riding.cli.purchases", lang=lang))
    named: set[MemberId] = set()
    for purchase in purchases:
        fresh = [member for member in purchase.covers if member not in named]
        named.update(fresh)
        if fresh:
            pieces = ", ".join(_wanted(piece, lang) for piece in purchase.pieces)
            values = {"pieces": pieces, "members": ", ".join(fresh)}
            yield from wrapped(say("riding.cli.purchase", values, lang=lang))
    only = ", ".join(member for purchase in purchases for member in purchase.only)
    if only and len(purchases) > 1:
        yield from wrapped(say("riding.cli.purchase_only", {"members": only}, lang=lang))


def _wanted(piece: Wanted, lang: str) -> str:
    """Call a piece by what it is and its size: "gloves M", "coat and trousers (chest 42, ...)"."""
    called = name("slot", piece.slot, lang=lang)
    if len(piece.size) < _SIZES:
        return " ".join((called, *(size for _, size in piece.size)))
    sizes = (f"{name('dimension', key, lang=lang)} {size}" for key, size in piece.size)
    return f"{called} ({', '.join(sizes)})"


def _give(answer: WhoRides, lang: str) -> Iterator[str]:
    if not answer.hand_out:
        yield from ("", say("riding.cli.hand_out_free", lang=lang))
        return
    yield from ("", say("riding.cli.hand_out", lang=lang))
    yield from finding_lines(answer.hand_out, lang=lang)


def _exchange(heading: str, answer: ExchangeAnswer, lang: str) -> Iterator[str]:
    yield from ("", heading)
    yield from finding_lines(answer.findings, lang=lang)
