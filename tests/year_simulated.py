"""A department's year, day by day, through the tasks and from ledger entries alone.

Everything here is invented. The officer looks at what may be taken, takes it, has it washed, felt,
put together and inspected, and sends liners that are due to be opened to a provider for two weeks;
every other week some members come back from a call. `tests.year_checked` reads what was done.
"""

import datetime as dt
import random
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from sootline.core.basis import (
    CallId,
    ComponentId,
    DeviceId,
    KindId,
    MemberId,
    PlaceId,
    Quantity,
)
from sootline.core.exposure.calls import Answer, Call, Presence
from sootline.core.gear import Custody, Element, find_kind
from sootline.core.intervals import Matter
from sootline.core.job.jobs import Job
from sootline.core.ledger import ClockSource, EntryKind, Established, Occurred
from sootline.core.ledger.acts import Act
from sootline.core.rebuild import AfterWashCheck, Built, Felt
from sootline.core.upkeep.contractor import Manifest, Receipt, Received, Sent, Service
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.inspections import (
    Inspection,
    InspectionKind,
    LinerTest,
    LinerTestDone,
    list_points,
)
from sootline.core.upkeep.planning import Cause
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.deeds import CallCame, Checked, PutTogether, Washed, WashStep
from sootline.tasks.deeds import Deed as Reported
from sootline.tasks.plan_day import Today, plan_today
from sootline.tasks.register_things import HERE
from sootline.tasks.take_in_job import take_in_job
from sootline.tasks.write_reports import write
from sootline.tasks.year_deeds import Fact, YearFact
from sootline.wiring.rules import RULES
from tests.indexed_book import IndexedLedger, indexed_book
from tests.year_department import INSPECTOR, PROVIDER, START, department

WEEK = dt.timedelta(weeks=1)
_APART = (Element.COAT, Element.TROUSERS)
_AWAY_WEEKS = 2
_DRUM = PlaceId("drum")
_AHEAD_DAYS = 28
_DAYS_A_WEEK = 4


@dataclass(frozen=True, kw_only=True)
class Week:
    """One day of a week as it was planned.

    Args:
        riding_before, riding_after: who could ride, without and with what was taken.
        bare: taken from somebody, with nothing to wear meanwhile.
        overdue: matters overdue that morning, and the cause the sheet gives.
    """

    day: dt.date
    taken: tuple[str, ...]
    riding_before: frozenset[MemberId]
    riding_after: frozenset[MemberId]
    bare: tuple[str, ...]
    overdue: tuple[tuple[ComponentId, Matter, str], ...]


@dataclass
class Year:
    """A department's year, as far as it has come."""

    job: Job
    chance: random.Random
    weeks: list[Week] = field(default_factory=list)
    away: list[tuple[dt.datetime, Manifest]] = field(default_factory=list)
    sent: list[Manifest] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.now = START
        self.book = indexed_book(START)
        self.steps = 0
        take_in_job(self.book, self.act(), self.job)

    def act(self) -> Act:
        """Return the next act of the day, a minute after the last."""
        self.steps += 1
        self.now += dt.timedelta(minutes=1)
        ledger = self.book.ledger
        assert isinstance(ledger, IndexedLedger)
        ledger.now = self.now
        return Act(
            idem=f"s{self.steps}",
            occurred=Occurred.at(self.now, ClockSource.SERVER),
            device=DeviceId("office"),
            actor=MemberId("200"),
            established=Established.SIGNED_IN,
        )

    def report(self, deed: Reported, *pieces: ComponentId) -> None:
        """Write a deed, from a job with as much gear as it speaks of."""
        act = self.act()
        write(RULES, self.book, act, self.of(*pieces), deed)

    def of(self, *pieces: ComponentId) -> Job:
        """Return a job of these pieces as the record has them now."""
        known = tuple(one.component for one in self.book.known(*pieces))
        sent = tuple(
            one for one in self.sent if {row.component for row in one.pieces} <= set(pieces)
        )
        upkeep = UpkeepFacts(qualified=self.job.upkeep.qualified, manifests=sent)
        return replace(self.job, now=self.now, components=known, upkeep=upkeep)

    def run(self, weeks: int) -> None:
        """Let weeks go by."""
        for number in range(weeks):
            self.now = START + (number + 1) * WEEK
            self._confirm_clock()
            self._come_back()
            worn = self._call(number) if number % 2 else ()
            self._days(worn)

    def _days(self, worn: tuple[ComponentId, ...]) -> None:
        """Plan a day, and the next ones of the week while spares alone were lacking."""
        for _ in range(_DAYS_A_WEEK):
            job = assemble_job(self.book.register, now=self.now)
            today = plan_today(RULES, job, ahead_days=_AHEAD_DAYS)
            self.weeks.append(_week(today))
            self._work(today, worn)
            if not any(left.cause is Cause.NO_SPARE for left in today.plan.left):
                return
            worn = ()
            self.now = self.now.replace(hour=8, minute=0) + dt.timedelta(days=1)
            self._confirm_clock()

    def _confirm_clock(self) -> None:
        """Say that the clock is right: nobody wrote anything for days."""
        self.book.ledger.append([
            self.act().entry(EntryKind.CLOCK_CONFIRMED, HERE, {"by": "200"})
        ])  # fmt: skip

    def _call(self, number: int) -> tuple[ComponentId, ...]:
        """Let four members come back from a fire in everything that is theirs and here."""
        people = self.chance.sample([one.id for one in self.job.members], 4)
        worn = {
            member: tuple(
                known.component.id for known in self.book.register.components_of(member)
                if known.component.state.custody is not Custody.CONTRACTOR
            )
            for member in people
        }  # fmt: skip
        call = Call(
            id=CallId(f"c{number}"),
            at=self.now - dt.timedelta(hours=3),
            people=tuple(Presence(member=name, worn=pieces) for name, pieces in worn.items()),
        )
        every = tuple(piece for pieces in worn.values() for piece in pieces)
        self.report(CallCame(call=call), *every)
        return every

    def _work(self, today: Today, worn: tuple[ComponentId, ...]) -> None:
        """Wash, inspect and send away what was taken, and wash what came back from the call."""
        dues = [due for bundle in today.plan.taken for due in bundle.dues]
        by_matter: dict[Matter, list[ComponentId]] = defaultdict(list)
        for due in dues:
            by_matter[due.matter].append(due.component)
        self._wash(tuple(dict.fromkeys((*worn, *by_matter[Matter.ADVANCED_CLEANING]))))
        for name in by_matter[Matter.ADVANCED_INSPECTION]:
            self._inspect(name, InspectionKind.ADVANCED, INSPECTOR)
        if by_matter[Matter.LINER_INSPECTION]:
            self._send(tuple(by_matter[Matter.LINER_INSPECTION]))

    def _wash(self, pieces: tuple[ComponentId, ...]) -> None:
        """Wash pieces in a load, hang them, feel them, put them together."""
        if not pieces:
            return
        number = len(self.weeks)
        for step in (WashStep.STARTED, WashStep.ENDED):
            self.report(Washed(step=step, load=number, pieces=pieces, place=_DRUM), *pieces)
        hung = Washed(step=WashStep.HUNG, load=number, pieces=pieces, place=PlaceId("rack"))
        self.report(hung, *pieces)
        for name in pieces:
            kind = find_kind(self._kind(name))
            felt = tuple(Felt(point=point, dry=Answer.YES) for point in kind.touch_points)
            check = AfterWashCheck(component=name, by="120", at=self.now, felt=felt)
            self.report(Checked(check=check), name)
        for element, parts in self._elements(pieces):
            built = Built(element=element, parts=parts, routed_by="120")
            self.report(PutTogether(built=built, by="120"), *parts)

    def _elements(
        self, pieces: tuple[ComponentId, ...]
    ) -> Iterator[tuple[Element, tuple[ComponentId, ...]]]:
        """List the coats and trousers these pieces belong to, while all their parts are here."""
        mine = {one.id: one for one in self.job.components}
        wanted = dict.fromkeys(
            (mine[name].set, find_kind(mine[name].kind).element) for name in pieces
        )
        for group, element in wanted:
            parts = tuple(
                one.id for one in self.job.components
                if one.set == group and find_kind(one.kind).element is element
            )  # fmt: skip
            if element in _APART and all(
                one.component.state.custody is not Custody.CONTRACTOR
                for one in self.book.known(*parts)
            ):
                yield element, parts

    def _inspect(self, name: ComponentId, kind: InspectionKind, by: str) -> None:
        liner = name.endswith("liner")
        tests = (
            LinerTestDone(test=LinerTest.LIGHT, passed=Answer.YES),
            LinerTestDone(test=LinerTest.LEAKAGE, passed=Answer.YES, water_parts=6,
                          waited=Quantity.parse("3 min")),
            LinerTestDone(test=LinerTest.HYDROSTATIC, passed=Answer.YES,
                          waited=Quantity.parse("30 s"), pressure=Quantity.parse("2 psi")),
        )  # fmt: skip
        looked = list_points(self._kind(name), kind)
        fact = Inspection(
            component=name, kind=kind, by=by, at=self.now, looked=looked,
            tests=tests if liner else (),
        )  # fmt: skip
        self._year(fact, name)

    def _send(self, pieces: tuple[ComponentId, ...]) -> None:
        sent = tuple(Sent(component=name, services=(Service.LINER_INSPECTION,)) for name in pieces)
        manifest = Manifest(
            id=f"m{len(self.weeks)}", provider=PROVIDER, at=self.now, by="200", pieces=sent
        )
        self._year(manifest, *pieces)
        self.sent.append(manifest)
        self.away.append((self.now + _AWAY_WEEKS * WEEK - dt.timedelta(days=1), manifest))

    def _come_back(self) -> None:
        """Take in what the provider brings, inspected there the day before."""
        here = [one for one in self.away if one[0] <= self.now]
        self.away = [one for one in self.away if one not in here]
        for _, manifest in here:
            names = tuple(one.component for one in manifest.pieces)
            receipt = Receipt(
                manifest=manifest.id, at=self.now, by="200",
                pieces=tuple(Received(read=name) for name in names),
            )  # fmt: skip
            self._year(receipt, *names)
            self._wash(names)
            for name in names:
                self._inspect(name, InspectionKind.LINER, PROVIDER)

    def _year(self, fact: Fact, *pieces: ComponentId) -> None:
        self.report(YearFact(fact=fact), *pieces)

    def _kind(self, name: ComponentId) -> KindId:
        return next(one.kind for one in self.job.components if one.id == name)


def _week(today: Today) -> Week:
    swapped = {(swap.member, swap.slot) for swap in today.plan.swaps}
    before, after = today.plan.before.now.can, today.plan.after.now.can
    riding = frozenset(one.member for one in before)
    bare = tuple(
        bundle.unit for bundle in today.plan.taken
        if bundle.holder in riding and (bundle.holder, bundle.slot) not in swapped
    )  # fmt: skip
    return Week(
        day=today.today,
        taken=tuple(bundle.unit for bundle in today.plan.taken),
        riding_before=riding,
        riding_after=frozenset(one.member for one in after),
        bare=bare,
        overdue=tuple((row.component, row.matter, row.cause.value) for row in today.overdue.rows),
    )


def simulate(members: int, weeks: int, seed: int, *, spares: int = 2) -> Year:
    """Let a department live some weeks."""
    year = Year(job=department(members, seed, spares=spares), chance=random.Random(seed))  # noqa: S311
    year.run(weeks)
    return year
