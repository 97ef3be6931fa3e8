"""Facts of the year on both desks: in memory and in the record they come to the same.

The department is invented: two members with a coat and a hood each, one trained inspector.
"""

import datetime as dt
from dataclasses import replace
from decimal import Decimal

import pytest
from tests.unit.tasks.memory_book import MemoryLedger, MemoryRegister, act

from sootline.core.basis import (
    BadInputError,
    ComponentId,
    DateSpan,
    EditionId,
    KindId,
    MachineId,
    MemberId,
    SetId,
)
from sootline.core.exposure import Answer
from sootline.core.gear import CareStage, Component, Custody, Label, Life, State
from sootline.core.gear.records import Deed
from sootline.core.job.jobs import JOB_VERSION, Department, Job, Member
from sootline.core.ledger import component
from sootline.core.ledger.folding import fold
from sootline.core.ledger.record_items import RecordItem, RecordStanding, list_record_items
from sootline.core.rebuild import Flaw, FlawFound
from sootline.core.upkeep.contractor import (
    Charge,
    Invoice,
    Manifest,
    Receipt,
    Received,
    Sent,
    Service,
)
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.inspections import (
    Absent,
    Inspection,
    InspectionDay,
    InspectionKind,
    LinerTest,
    LinerTestDone,
    list_points,
)
from sootline.core.upkeep.people.facts import Change, Changed, Measured
from sootline.core.upkeep.qualified import Grade, Qualified, Scope
from sootline.core.upkeep.recalls import Action, Notice, Sighting, Step
from sootline.core.upkeep.repairs import Choice, Decided, Price, Repair, Work
from sootline.core.upkeep.stores import Chore, LogEntry, Supply
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.correct_entry import correct
from sootline.tasks.recording import Book, RefusedError
from sootline.tasks.take_in_job import take_in_job
from sootline.tasks.take_year import take_year
from sootline.tasks.write_year import write_year
from sootline.tasks.year_deeds import Confirmed, Fact
from sootline.wiring.rules import RULES

NOW = dt.datetime(2026, 4, 11, 12, tzinfo=dt.UTC)
COAT, LINER, HOOD, OTHER = (ComponentId(one) for one in ("0412", "0512", "0612", "0413"))
HOOK = State(custody=Custody.HOOK)


def gear(name: ComponentId, kind: str, owner: str = "118") -> Component:
    """Return one piece on its hook."""
    return Component(
        id=name,
        kind=KindId(kind),
        owner=MemberId(owner),
        set=SetId(f"S{owner}"),
        label=Label(style="K4", lot="2104-A" if kind == "coat-liner" else None),
        made=DateSpan.parse("2021-04"),
        in_service=DateSpan.parse("2025-05"),
        state=HOOK,
    )


JOB = Job(
    version=JOB_VERSION,
    title="Vennick",
    now=NOW,
    department=Department(name="Vennick", edition=EditionId("nfpa-1851/2014")),
    members=(Member(id=MemberId("118"), measures=(("chest", "44"),)), Member(id=MemberId("221"))),
    components=(
        gear(COAT, "coat-shell"),
        gear(OTHER, "coat-shell", "221"),
        gear(LINER, "coat-liner"),
        gear(HOOD, "hood"),
    ),
    upkeep=UpkeepFacts(
        qualified=(
            Qualified(
                who="118",
                grade=Grade.TRAINED,
                scopes=(Scope.ADVANCED_INSPECTION,),
                source="class list, invented",
            ),
        )
    ),
)


def inspection(name: ComponentId, *flaws: FlawFound, **given: object) -> Inspection:
    """Return an advanced inspection in which every point was looked at."""
    kind = next(one.kind for one in JOB.components if one.id == name)
    facts: dict[str, object] = {
        "kind": InspectionKind.ADVANCED,
        "looked": list_points(kind, InspectionKind.ADVANCED),
        **given,
    }
    return Inspection(component=name, by="118", at=NOW, flaws=flaws, **facts)  # type: ignore[arg-type]


SHIPMENT = Manifest(
    id="26-01",
    provider="Mendwell",
    at=NOW,
    by="206",
    pieces=(
        Sent(component=COAT, services=(Service.ADVANCED_CLEANING,)),
        Sent(component=HOOD, services=(Service.ADVANCED_INSPECTION,)),
    ),
)
DELIVERY = Receipt(
    manifest="26-01", at=NOW, by="206", pieces=(Received(read="O412"), Received(read="0612"))
)
WORD = Confirmed(receipt=DELIVERY, line=0, component=COAT, by="206")
NOTICE = Notice(
    id="n1", issuer="Aldmere", title="tape", kinds=(KindId("coat-liner"),), styles=("K4",)
)
SEEN = Sighting(notice="n1", component=LINER, by="118", at=NOW, affected=Answer.UNKNOWN)
REPAIR = Repair(component=COAT, works=(Work.TRIM,), by="Mendwell")
PRICE = Price(amount=Decimal(40), currency="USD")
SENT = replace(REPAIR, quote=PRICE, sent=DateSpan.parse("2026-04-01"))
BACK = replace(SENT, back=DateSpan.parse("2026-04-10"), result="trim sewn")
RETIRE = replace(REPAIR, decided=Decided(choice=Choice.RETIRE, by="206", at=NOW, why="worn"))
LIGHT = (LinerTestDone(test=LinerTest.LIGHT, passed=Answer.NO),)


def action(step: Step) -> Action:
    """Return one thing done for the notice."""
    return Action(notice="n1", component=LINER, step=step, by="206", at=NOW)


def record() -> Book:
    """Return a record of the department."""
    ledger = MemoryLedger()
    made = Book(ledger=ledger, register=MemoryRegister(ledger))
    take_in_job(made, act("job"), JOB)
    return made


def in_memory(*facts: Fact) -> Job:
    """Return the job after facts, one by one."""
    job = JOB
    for fact in facts:
        job = take_year(RULES, job, fact)
    return job


def in_record(*facts: Fact) -> Job:
    """Return what the record adds up to after the same."""
    made = record()
    for number, fact in enumerate(facts):
        write_year(RULES, made, act(f"f{number}"), assemble_job(made.register, now=NOW), fact)
    return assemble_job(made.register, now=NOW)


WAYS: dict[str, tuple[Fact, ...]] = {
    "inspected": (inspection(COAT),),
    "soiled": (inspection(COAT, FlawFound(flaw=Flaw.SOILED)),),
    "light through": (inspection(LINER, tests=LIGHT), inspection(LINER, tests=LIGHT)),
    "not looked at": (inspection(COAT, looked=()),),
    "routine": (inspection(COAT, kind=InspectionKind.ROUTINE),),
    "day": (
        InspectionDay(kind=InspectionKind.ADVANCED, on=NOW.date(), planned=(COAT, HOOD)),
        InspectionDay(
            kind=InspectionKind.ADVANCED,
            on=NOW.date(),
            planned=(COAT, HOOD),
            absent=(Absent(component=HOOD, why="on leave"),),
        ),
    ),
    "shipped and back": (SHIPMENT, DELIVERY, WORD),
    "invoiced": (
        SHIPMENT,
        Invoice(
            manifest="26-01",
            number="A1",
            total=PRICE,
            charges=(Charge(read="0412", service=Service.ADVANCED_CLEANING, price=PRICE),),
        ),
    ),
    "repaired": (REPAIR, SENT, BACK, REPAIR),
    "mended here": (
        REPAIR,
        replace(REPAIR, by="", back=DateSpan.parse("2026-04-10"), result="patched by 118"),
    ),
    "given up": (REPAIR, RETIRE),
    "pulled and cleared": (NOTICE, SEEN, action(Step.PULLED), replace(SEEN, affected=Answer.NO)),
    "corrected": (NOTICE, action(Step.PULLED), action(Step.CORRECTED)),
    "recalled and given up": (NOTICE, action(Step.GIVEN_UP)),
    "cleared at once": (NOTICE, replace(SEEN, affected=Answer.NO)),
    "no stop": (replace(NOTICE, stop_use=False), SEEN),
    "measured": (
        Measured(
            member=MemberId("118"),
            on=DateSpan.parse("2026-04-01"),
            by="206",
            measures=(("chest", "46"), ("waist", "38")),
        ),
        Changed(member=MemberId("118"), change=Change.BODY, on=DateSpan.parse("2026-04-05")),
    ),
    "stores": (
        Supply(id="1", name="soap", count=3),
        Supply(id="1", name="soap", count=1),
        Supply(id="2", name="bags", count=9),
        LogEntry(machine=MachineId("drum"), chore=Chore.FLUSH, on=DateSpan.parse("2026-04-01"),
                 by="118"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("facts", WAYS.values(), ids=WAYS.keys())
def test_both_desks_come_to_the_same(facts: tuple[Fact, ...]) -> None:
    """The same facts of the year, the same measures, the same state of each piece."""
    one, other = in_memory(*facts), in_record(*facts)

    assert other.upkeep == one.upkeep
    assert other.members == one.members
    for mine, theirs in zip(
        sorted(one.components, key=lambda piece: piece.id), other.components, strict=True
    ):
        assert (mine.id, mine.state.stage, mine.state.custody, mine.state.life) == (
            theirs.id,
            theirs.state.stage,
            theirs.state.custody,
            theirs.state.life,
        )
        assert [hold.cause for hold in mine.state.open_holds] == [
            hold.cause for hold in theirs.state.open_holds
        ]
        dated = [
            [(record.deed, record.on.earliest) for record in piece.records
             if record.deed is Deed.ADVANCED_INSPECTION]
            for piece in (mine, theirs)
        ]  # fmt: skip
        assert dated[0] == dated[1]


def of(job: Job, name: ComponentId) -> Component:
    """Return one piece."""
    return next(one for one in job.components if one.id == name)


def test_a_piece_is_back_by_its_number_or_a_persons_word() -> None:
    """The hood by its number; the coat, read with a letter, only once somebody says so."""
    sent, came, said = (in_record(*WAYS["shipped and back"][:n]) for n in (1, 2, 3))

    assert {of(sent, one).state.custody for one in (COAT, HOOD)} == {Custody.CONTRACTOR}
    assert of(came, COAT).state.custody is Custody.CONTRACTOR
    assert of(came, HOOD).state.stage is CareStage.TO_WASH
    assert of(said, COAT).state.stage is CareStage.TO_CHECK


def test_what_was_repaired_is_back_to_be_checked() -> None:
    """Away while it is sent, to check when it is back; given up by a person's decision."""
    away, back = in_record(REPAIR, SENT), in_record(REPAIR, SENT, BACK)

    assert of(away, COAT).state.custody is Custody.REPAIR
    assert of(back, COAT).state.stage is CareStage.TO_CHECK
    assert of(in_record(REPAIR, RETIRE), COAT).state.life is Life.RETIRED


def test_inspections_and_repairs_say_what_a_record_must_hold() -> None:
    """On which day, by whom, what was found, what was done: also when it is typed in later.

    Source: US care standard, 2014 edition, topic records (see `core.ledger.record_items`).
    """
    made = record()
    early = replace(inspection(COAT), at=NOW - dt.timedelta(days=40))
    facts: list[Fact] = [early, REPAIR, SENT, BACK]
    for number, fact in enumerate(facts):
        job = assemble_job(made.register, now=NOW)
        write_year(RULES, made, act(f"f{number}"), job, fact)
    life = fold(made.ledger.entries()).piece(component(COAT))
    standing = {one.record_item: one.standing for one in list_record_items(life)}
    done = [one for one in life.records if one.deed is Deed.ADVANCED_INSPECTION]

    assert standing[RecordItem.INSPECTIONS] is standing[RecordItem.REPAIRS] is RecordStanding.THERE
    assert [one.on.earliest for one in done] == [early.at.date()]


def test_a_fact_sent_twice_is_one_fact() -> None:
    """The same key: nothing is written again, nothing is looked at again."""
    made = record()
    job = assemble_job(made.register, now=NOW)
    write_year(RULES, made, act("once"), job, SHIPMENT)
    entries = len(list(made.ledger.entries()))
    write_year(RULES, made, act("once"), assemble_job(made.register, now=NOW), SHIPMENT)

    assert len(list(made.ledger.entries())) == entries


HELD = (inspection(LINER, tests=LIGHT),)
AGAIN = replace(SHIPMENT, pieces=(Sent(component=LINER, services=()),), id="26-02")
BAD: dict[str, tuple[tuple[Fact, ...], Fact]] = {
    "the same shipment twice": ((SHIPMENT,), SHIPMENT),
    "the same notice twice": ((NOTICE,), NOTICE),
    "a delivery of no shipment": ((), DELIVERY),
    "a word on a delivery that is not there": ((SHIPMENT,), WORD),
    "a word on a line that is not there": ((SHIPMENT, DELIVERY), replace(WORD, line=9)),
    "a piece that is not there": ((), replace(inspection(COAT), component=ComponentId("9"))),
    "a held liner sent away": (HELD, AGAIN),
    "sent while it is away": ((SHIPMENT,), replace(SHIPMENT, id="26-02")),
}


@pytest.mark.parametrize(("before", "bad"), BAD.values(), ids=BAD.keys())
def test_what_cannot_be_is_refused_on_both_desks(before: tuple[Fact, ...], bad: Fact) -> None:
    """Nothing of it is kept."""
    with pytest.raises(BadInputError):
        in_memory(*before, bad)
    with pytest.raises((BadInputError, RefusedError)):
        in_record(*before, bad)


def test_facts_about_what_is_not_here_stay_out_of_a_job() -> None:
    """Another station's pieces: their facts stay in the record, and in no job without them."""
    made = record()
    for number, fact in enumerate((*WAYS["day"], SHIPMENT, DELIVERY, WORD, NOTICE, SEEN)):
        job = assemble_job(made.register, now=NOW)
        write_year(RULES, made, act(f"f{number}"), job, fact)
    job = assemble_job(_Without(made.register, LINER, COAT), now=NOW)  # type: ignore[arg-type]

    assert [len(one.pieces) for one in job.upkeep.manifests] == [1]
    assert [one.planned for one in job.upkeep.inspection_days] == [(HOOD,)]
    assert (job.upkeep.sightings, len(job.upkeep.receipts)) == ((), 1)


def test_a_word_on_a_delivery_that_was_taken_back_is_none() -> None:
    """The word stays in the record; in the job nothing is left to speak of."""
    made = record()
    for number, fact in enumerate(WAYS["shipped and back"]):
        job = assemble_job(made.register, now=NOW)
        write_year(RULES, made, act(f"f{number}"), job, fact)
    taken = next(
        one.seq for one in made.ledger.entries() if one.read_header().item.endswith("delivery-f1")
    )
    correct(made, act("undo"), taken, reason="wrong van", withdrawn=True)

    assert assemble_job(made.register, now=NOW).upkeep.receipts == ()


class _Without:
    """A register as a station sees it that some pieces do not belong to."""

    def __init__(self, register: object, *names: ComponentId) -> None:
        self._register, self._names = register, names

    def components(self) -> list[object]:
        """Return the pieces of this station."""
        every = self._register.components()  # type: ignore[attr-defined]
        return [one for one in every if one.component.id not in self._names]

    def __getattr__(self, name: str) -> object:
        return getattr(self._register, name)
