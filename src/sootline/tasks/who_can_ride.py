"""Who can ride now, in what, who more by when, and what would put the others in a seat?"""

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from zoneinfo import ZoneInfo

from sootline.core.basis import BadInputError, DateSpan, Fault, Finding, MessageId, MinuteSpan
from sootline.core.care import Decision
from sootline.core.exposure import Answer
from sootline.core.gear import Component
from sootline.core.intervals import Due, Matter
from sootline.core.job.jobs import Job
from sootline.core.riding import (
    Back,
    Exchange,
    ExchangeAnswer,
    ExchangeFacts,
    HandOut,
    Purchase,
    Records,
    Rider,
    Riding,
    Situation,
    Step,
    arrange,
    check_exchange,
    check_hand_out,
    list_purchases,
    say_coverage,
    slots_of,
    timeline,
    who_rides,
)
from sootline.core.riding.garments import Kept
from sootline.core.riding.wearable import Known, judge_wear, list_out
from sootline.tasks.judge_gear import Judged, judge
from sootline.tasks.plan_wash import PlanResult
from sootline.tasks.ports import Rules

_AT = "riding"  # the field of the job that names stand in


@dataclass(frozen=True, kw_only=True)
class WhoRides:
    """The answer, with everything said about it.

    Args:
        riding: now and at each arrival.
        steps: the next 24 hours.
        purchases: what would put those left out in a seat.
        hand_out: what speaks against the hand-out asked about; none when nothing does.
        exchanges: the exchanges of the job, in its order.
        spoken: the answer for now, to be read over the radio.
    """

    now: dt.datetime
    riding: Riding
    steps: tuple[Step, ...]
    purchases: tuple[Purchase, ...]
    hand_out: tuple[Finding, ...]
    exchanges: tuple[ExchangeAnswer, ...]
    spoken: tuple[Finding, ...]

    @property
    def covered(self) -> bool:
        """Whether every crew has its minimum now and nothing speaks against a hand-out."""
        return all(crew.met for crew in self.riding.now.crews) and not self.hand_out


def who_can_ride(
    rules: Rules,
    job: Job,
    *,
    backs: Sequence[Back] = (),
    hand_out: HandOut | None = None,
    judged: Judged | None = None,
    ahead: bool = True,
) -> WhoRides:
    """Answer from a job: its members, gear, calls, and what it says about riding.

    A cleaning that is merely due keeps nobody off; one that a call asks for does.

    Args:
        backs: when the plan has components back, in minutes from the job's moment.
        hand_out: a spare about to be given to somebody.
        judged: what was judged of this very job already.
        ahead: whether the next 24 hours and purchases are asked for; without them it is quicker.

    Raises:
        BadInputError: the job names an edition, a kind, a member or a piece that does not exist.
    """
    known = judged or judge(rules, job)
    dues = tuple(due for listed in known.dues.values() for due in listed)
    decisions = tuple(known.after_calls.values())
    _refuse_strangers(job)
    floor = _situation(job, dues, decisions, tuple(backs), known.elements)
    riding = who_rides(floor)
    return WhoRides(
        now=floor.now,
        riding=riding,
        steps=timeline(floor) if ahead else (),
        purchases=list_purchases(floor, riding) if ahead else (),
        hand_out=check_hand_out(floor, hand_out) if hand_out else (),
        exchanges=tuple(
            check_exchange(_exchange(job, facts, dues, decisions)) for facts in job.riding.exchanges
        ),
        spoken=say_coverage(riding.now, floor.now),
    )


def backs_of(plan: PlanResult, job: Job) -> tuple[Back, ...]:
    """Take from a plan when each washed component is back, with its owner's last piece.

    The plan counts from its own start; here minutes count from the job's moment.
    """
    shift = MinuteSpan.exactly(int((plan.aim.start - job.now) / dt.timedelta(minutes=1)))
    washed = {one for sort in plan.loads.sorting.sorts for one in sort.components}
    at = {back.member: back.at + shift for back in plan.worksheet.back if back.at is not None}
    return tuple(
        Back(component=component.id, when=at[component.owner])
        for component in job.components
        if component.id in washed and component.owner in at
    )


def ride_situation(
    rules: Rules, job: Job, dues: tuple[Due, ...], *, judged: Judged | None = None
) -> Situation:
    """Return what "who can ride" rests on, for a task that changes it and asks again.

    Args:
        dues: of every component; only retirement matters here.
        judged: what was judged of the job already, where somebody did.

    Raises:
        BadInputError: the job names an edition, a kind, a member or a piece that does not exist.
    """
    _refuse_strangers(job)
    judged = judged or judge(rules, job)
    return _situation(job, dues, tuple(judged.after_calls.values()), ())


def _situation(
    job: Job,
    dues: tuple[Due, ...],
    decisions: tuple[Decision, ...],
    backs: tuple[Back, ...],
    kept: Kept | None = None,
) -> Situation:
    records = Records(
        now=job.now.astimezone(ZoneInfo(job.department.zone)),
        facts=job.riding,
        components=job.components,
        decisions=decisions,
        dues=dues,
        backs=backs,
    )
    return arrange(records, _riders(job), kept)


def _riders(job: Job) -> Iterator[Rider]:
    """Join members with their duties; who is not known to be qualified inside is not counted so."""
    facts = job.riding
    duties = {duty.member: duty for duty in facts.duties}
    for member in job.members:
        duty = duties.get(member.id)
        inside = duty is not None and duty.interior is Answer.YES
        needs = facts.needs if inside or facts.outside_needs is None else facts.outside_needs
        yield Rider(
            id=member.id,
            crew=member.crew,
            priority=member.priority,
            interior=inside,
            away=duty is not None and duty.away,
            needs=slots_of(needs, mixed_sets=facts.mixed_sets),
            measures=member.measures,
        )


def _exchange(
    job: Job, facts: ExchangeFacts, dues: tuple[Due, ...], decisions: tuple[Decision, ...]
) -> Exchange:
    pieces = {component.id: component for component in job.components}
    takes = pieces[facts.takes]
    known = Known(
        decisions={decision.component: decision for decision in decisions},
        out=list_out(dues),
        backs={},
        arrivals={},
    )
    return Exchange(
        member=facts.member,
        on=job.now.astimezone(ZoneInfo(job.department.zone)).date(),
        returns=pieces[facts.returns],
        takes=takes,
        worn=facts.worn,
        washed=facts.washed,
        first_day_out=_first_day_out(takes, dues),
        bars=judge_wear(takes, known).reasons,
        signed_by=_signed_by(job, facts),
        warn_months_left=job.riding.warn_months_left,
    )


def _first_day_out(component: Component, dues: tuple[Due, ...]) -> DateSpan:
    days = (
        due.first_day
        for due in dues
        if due.component == component.id and due.matter is Matter.RETIREMENT
    )
    return next(days, DateSpan())


def _signed_by(job: Job, facts: ExchangeFacts) -> str | None:
    return next(
        (
            try_on.signed_by
            for try_on in job.riding.try_ons
            if (try_on.component, try_on.member) == (facts.takes, facts.member)
        ),
        None,
    )


def _refuse_strangers(job: Job) -> None:
    """Refuse loans, duties, try-ons and exchanges of pieces and people the job does not hold."""
    pieces = frozenset(str(component.id) for component in job.components)
    people = frozenset(str(member.id) for member in job.members)
    riding = job.riding
    named = [
        *((f"{_AT}.loans[{n}]", one, pieces) for n, loan in enumerate(riding.loans)
          for one in loan.components),
        *((f"{_AT}.exchanges[{n}]", one, pieces) for n, swap in enumerate(riding.exchanges)
          for one in (swap.returns, swap.takes)),
        *((f"{_AT}.exchanges[{n}]", swap.member, people)
          for n, swap in enumerate(riding.exchanges)),
        *((f"{_AT}.duties[{n}]", duty.member, people) for n, duty in enumerate(riding.duties)),
        *((f"{_AT}.try_ons[{n}]", one.component, pieces) for n, one in enumerate(riding.try_ons)),
    ]  # fmt: skip
    faults = [
        Fault(place=place, message=MessageId("riding.stranger"), values=(("id", name),))
        for place, name, known in named
        if name not in known
    ]
    if faults:
        raise BadInputError(faults)
