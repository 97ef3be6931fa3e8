"""A call is taken as it is told; entries are put right by new ones; the record makes a job."""

from dataclasses import replace

import pytest
from tests.unit.tasks.memory_book import (
    COAT,
    LINER,
    MAREN,
    NOON,
    MemoryLedger,
    MemoryRegister,
    act,
    book,
    coat,
    state_of,
)

from sootline.core.basis import BadInputError, CallId, ComponentId, EditionId, MachineId, MemberId
from sootline.core.exposure import Call, Presence, Zone
from sootline.core.gear import CareStage, Component, Custody
from sootline.core.job.jobs import Department, Member
from sootline.core.job.things import DepartmentFacts
from sootline.core.laundry.rooms import Washer
from sootline.core.ledger import EntryKind, Established, KeyReusedError, Second, component
from sootline.core.rulebook.contaminants import Level
from sootline.files.demo import demo_job
from sootline.files.rules import RuleFiles
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.correct_entry import correct, erase
from sootline.tasks.hand_out_gear import return_soiled
from sootline.tasks.record_call import record_call
from sootline.tasks.recording import Book
from sootline.tasks.register_gear import register_components
from sootline.tasks.register_things import describe_department, register_things
from sootline.tasks.wash_room import wash_by_hand

INSIDE = Presence(member=MAREN, zones=(Zone.INSIDE,))
FIRE = Call(id=CallId("26-031"), at=NOON, people=(INSIDE,))
HERE = DepartmentFacts(
    department=Department(name="Tarn Hollow", edition=EditionId("nfpa-1851/2020"))
)


def test_a_call_writes_out_what_was_worn() -> None:
    """Of whom nobody said it, everything the person owns was worn, on hold or not."""
    made = book(coat(), coat(LINER, stage=CareStage.TO_WASH))

    record_call(made, act("c", minute=1), FIRE)

    assert (state_of(made).stage, state_of(made, LINER).stage) == (CareStage.WORN, CareStage.WORN)
    kinds = [entry.read_header().kind for entry in made.ledger.entries(3)]
    assert kinds == [EntryKind.CALL_RECORDED, EntryKind.WORN, EntryKind.WORN]


def test_a_call_told_again() -> None:
    """The same call under the same key is one, also after gear has changed hands."""
    made = book(coat(), coat(LINER))
    record_call(made, act("c", minute=1), FIRE)
    register_components(made, act("n", minute=2), [coat(ComponentId("0999"))])

    again = record_call(made, act("c", minute=1), FIRE)

    assert all(one.repeated for one in again)


def test_another_call_under_the_same_key() -> None:
    """Other words under a key are another request."""
    made = book()
    record_call(made, act("c", minute=1), FIRE)

    with pytest.raises(KeyReusedError):
        record_call(made, act("c", minute=1), replace(FIRE, title="other"))


def test_a_call_with_strangers() -> None:
    """Members and pieces nobody registered are all listed, as is a number in use."""
    made = book()
    record_call(made, act("c", minute=1), FIRE)
    stranger = Presence(member=MemberId("999"), worn=(ComponentId("9"),))

    with pytest.raises(BadInputError) as raised:
        record_call(made, act("d"), replace(FIRE, people=(stranger,)))

    assert [(fault.place, fault.message) for fault in raised.value.faults] == [
        ("id", "tasks.registered_already"),
        ("people[0].member", "tasks.no_such_member"),
        ("people[0].worn", "tasks.no_such_component"),
    ]


def test_a_correction_withdraws() -> None:
    """What never happened counts no more, and stays to be seen."""
    made = book()
    (_, worn) = record_call(made, act("c", minute=1), FIRE)

    correct(made, act("x", minute=2), worn.entry.seq, reason="other coat", withdrawn=True)

    assert state_of(made).stage is CareStage.CHECKED
    assert len(list(made.ledger.entries())) == worn.entry.seq + 1


def test_a_correction_moves_an_entry() -> None:
    """A misread number counts for the piece that was meant."""
    made = book(coat(), coat(LINER))
    inside = replace(INSIDE, worn=(COAT,))
    worn = record_call(made, act("c", minute=1), replace(FIRE, people=(inside,)))[1]

    correct(made, act("x"), worn.entry.seq, reason="misread", about=component(LINER))

    assert (state_of(made).stage, state_of(made, LINER).stage) == (
        CareStage.CHECKED, CareStage.WORN,
    )  # fmt: skip


@pytest.mark.parametrize("seq", [0, 99])
def test_there_must_be_an_entry(seq: int) -> None:
    """Nothing that is not there is put right."""
    with pytest.raises(BadInputError) as raised:
        correct(book(), act("x"), seq, reason="misread", withdrawn=True)

    assert raised.value.faults[0].message == "tasks.no_such_entry"


def test_a_correction_of_nothing() -> None:
    """It must say what was otherwise."""
    with pytest.raises(BadInputError) as raised:
        correct(book(), act("x"), 1, reason="misread")

    assert raised.value.faults[0].message == "tasks.nothing"


def test_two_people_erase() -> None:
    """The entry stands, and says that it was erased under another."""
    made = book()
    second = Second(person=MemberId("500"), established=Established.SECOND_FACTOR)

    (done,) = erase(made, act("x"), 2, second=second, reason="court order")

    header = done.entry.read_header()
    assert (header.erases, header.second) == (2, second)


def test_one_person_does_not_erase() -> None:
    """The second is somebody else."""
    second = Second(person=MemberId("200"), established=Established.SIGNED_IN)

    with pytest.raises(BadInputError):
        erase(book(), act("x"), 2, second=second, reason="court order")


def test_the_record_makes_a_job() -> None:
    """Department, members, gear, machines, and calls whose gear is still soiled."""
    made = book(coat(), coat(LINER))
    describe_department(made, act("d"), HERE)
    washer = Washer(id=MachineId("M1"), limit=None, programmes=())
    register_things(made, act("w"), [washer])
    record_call(made, act("c", minute=1), FIRE)

    job = assemble_job(made.register, now=NOON)

    assert [one.id for one in job.components] == [COAT, LINER]
    assert (job.members[0].crew, job.wash_room.washers) == ("E2", (washer,))
    assert job.calls[0].people[0].worn == (COAT, LINER)


def test_washed_gear_leaves_its_call() -> None:
    """What was washed since is not judged by that call again; evidence always is."""
    made = book(coat(), coat(LINER), coat(ComponentId("3"), custody=Custody.EVIDENCE))
    describe_department(made, act("d"), HERE)
    record_call(made, act("c", minute=1), FIRE)
    return_soiled(made, act("rs", minute=2), [COAT], by="118")
    wash_by_hand(made, act("h", minute=3), [COAT], by="118", level=Level.ADVANCED)

    job = assemble_job(made.register, now=NOON)

    assert job.calls[0].people[0].worn == (LINER, ComponentId("3"))


def test_a_call_that_is_over() -> None:
    """When nothing of it is soiled any more the job does not hold it."""
    made = book()
    describe_department(made, act("d"), HERE)
    record_call(made, act("c", minute=1), FIRE)
    return_soiled(made, act("rs", minute=2), [COAT], by="118")
    wash_by_hand(made, act("h", minute=3), [COAT], by="118", level=Level.ADVANCED)

    assert assemble_job(made.register, now=NOON).calls == ()


def test_a_department_nobody_described() -> None:
    """Without its texts nothing can be decided."""
    with pytest.raises(BadInputError) as raised:
        assemble_job(book().register, now=NOON)

    assert raised.value.faults[0].message == "tasks.no_department"


def test_a_job_comes_back_from_the_record() -> None:
    """The demo department, written down piece by piece, makes the same gear and room again."""
    job = demo_job(RuleFiles())
    ledger = MemoryLedger()
    made = Book(ledger=ledger, register=MemoryRegister(ledger))
    facts = DepartmentFacts(
        department=job.department, guides=job.guides, wash_room=job.wash_room, riding=job.riding
    )
    describe_department(made, act("d"), facts)
    register_things(made, act("m"), job.members)
    register_components(made, act("g"), job.components)

    again = assemble_job(made.register, now=job.now)

    assert (again.department, again.guides, again.wash_room, again.riding) == (
        job.department, job.guides, job.wash_room, job.riding,
    )  # fmt: skip
    assert [_sorted(one, "measures") for one in again.members] == sorted(
        (_sorted(one, "measures") for one in job.members), key=lambda one: str(one["id"])
    )
    by_id = {one.id: one for one in job.components}
    for one in again.components:
        held = replace(one.state, holds=())
        before = by_id[one.id]
        assert held == replace(before.state, holds=())
        assert _sorted(replace(one, state=held), "size") == _sorted(
            replace(before, state=held), "size"
        )


def _sorted(thing: Member | Component, name: str) -> dict[str, object]:
    """Return a thing whose mapping is in the order of the record's one form."""
    return {**thing.__dict__, name: sorted(getattr(thing, name))}
