"""Larkmoor and the swapped liners (invented), asked of the record instead of a job file.

Common practice, no published source; Larkmoor's outcome is that of tests/spec/test_larkmoor.py.
"""

import datetime as dt
import json
from dataclasses import replace

import pytest
from tests.integration.store_acts import store_in
from tests.integration.store_databases import Database
from tests.spec.test_larkmoor import NOW, SWAP, larkmoor, messages
from tests.spec.test_swapped_liners import LINER_A, LINER_B, LINER_C, SILENT, A, B, C

from sootline.core.basis import DeviceId, EditionId, ItemId, MemberId
from sootline.core.gear import Assembly, CareStage, Component, Custody, State
from sootline.core.gear.records import Deed, Record
from sootline.core.intervals import Matter
from sootline.core.job.jobs import Department, Job, Member
from sootline.core.job.things import DepartmentFacts
from sootline.core.ledger import ClockSource, EntryKind, Established, Occurred, component
from sootline.core.ledger.acts import Act
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.folding import fold_facts
from sootline.core.ledger.lives import PieceLife
from sootline.core.riding import ExchangeAnswer, TryOn
from sootline.storage.ledger import LedgerStore
from sootline.storage.register import RegisterStore
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.correct_entry import correct
from sootline.tasks.exchange_gear import exchange_gear
from sootline.tasks.list_due import due_gear
from sootline.tasks.recording import Book, RefusedError
from sootline.tasks.register_gear import register_components
from sootline.tasks.register_things import describe_department, register_things
from sootline.tasks.who_can_ride import who_can_ride
from sootline.wiring.rules import RULES

K = EntryKind


def _act(key: str, *, actor: str = "118", at: dt.datetime = NOW) -> Act:
    return Act(
        idem=key,
        occurred=Occurred.at(at, ClockSource.WALL),
        device=DeviceId("office"),
        actor=MemberId(actor),
        established=Established.SIGNED_IN,
    )


def _described(store: LedgerStore, facts: DepartmentFacts, members: tuple[str, ...]) -> Book:
    book = Book(ledger=store, register=RegisterStore())
    describe_department(book, _act("d"), facts)
    register_things(book, _act("m"), [Member(id=MemberId(one)) for one in members])
    return book


# Larkmoor: P5 gives back X1, worn on 5 August and washed on the 2nd, and takes X2.


@pytest.fixture
def larkmoor_book(database: Database) -> Book:
    """Record X1 with its wash and the call it was worn at, and X2 on the rack."""
    job = larkmoor()
    facts = DepartmentFacts(
        department=job.department, riding=replace(job.riding, exchanges=(), try_ons=())
    )
    book = _described(store_in(database, lambda: NOW), facts, ("P5",))
    washed = Record(deed=Deed.ADVANCED_CLEANING, on=SWAP.washed)
    x1, x2 = job.components
    on_hook = State(custody=Custody.HOOK, stage=CareStage.CHECKED, holder=SWAP.member)
    register_components(book, _act("x1"), [replace(x1, records=(washed,), state=on_hook)])
    register_components(book, _act("x2"), [x2])
    fire = _act("fire", at=dt.datetime(2026, 8, 5, 20, tzinfo=dt.UTC))
    book.ledger.append([fire.entry(K.WORN, component("X1"), {"member": "P5"})])
    return book


def _asked(book: Book, *, signed_by: str | None = None) -> ExchangeAnswer:
    """Ask with what the record knows of X1."""
    job = assemble_job(book.register, now=NOW)
    (x1,) = book.known(SWAP.returns)
    days = {record.deed: record.on for record in x1.component.records}
    swap = replace(SWAP, worn=days[Deed.WORN], washed=days[Deed.ADVANCED_CLEANING])
    tried = TryOn(component=SWAP.takes, member=SWAP.member, signed_by=signed_by)
    riding = replace(job.riding, exchanges=(swap,), try_ons=(tried,))
    (answer,) = who_can_ride(RULES, replace(job, riding=riding)).exchanges
    return answer


def test_larkmoor_is_answered_from_the_record_as_from_the_file(larkmoor_book: Book) -> None:
    """X1 first to the wash, X2 with eleven months left, not inside until the try-on is signed."""
    from_file = who_can_ride(RULES, larkmoor()).exchanges[0]
    answer = _asked(larkmoor_book)

    assert messages(answer) == messages(from_file)
    assert (answer.issuable, answer.interior, answer.months_left) == (False, False, 11)
    assert _asked(larkmoor_book, signed_by="Lt. 31").interior


def test_larkmoor_both_moves_are_one_act_of_the_record(larkmoor_book: Book) -> None:
    """X1 waits for its wash, X2 is P5's."""
    answer = _asked(larkmoor_book)

    done = exchange_gear(larkmoor_book, _act("swap"), SWAP, answer, by="206")
    x1, x2 = larkmoor_book.known(SWAP.returns, SWAP.takes)

    assert len({one.entry.read_header().idem.partition("/")[0] for one in done}) == 1
    assert x1.component.state.stage is CareStage.TO_WASH
    assert x2.component.state.holder == "P5"


def test_larkmoor_neither_moves_when_another_has_x2(larkmoor_book: Book) -> None:
    """P6 took it meanwhile: nothing is recorded."""
    issued = {"holder": "P6"}
    larkmoor_book.ledger.append([_act("p6").entry(K.ISSUED, component(SWAP.takes), issued)])
    before = larkmoor_book.ledger.head()

    with pytest.raises(RefusedError):
        exchange_gear(larkmoor_book, _act("swap"), SWAP, _asked(larkmoor_book), by="206")
    assert larkmoor_book.ledger.head() == before


# Port Vessick: liners a and b came back in each other's shells; B with a was worn at a car fire.

PARTS = (A, LINER_A, B, LINER_B, C, LINER_C)


@pytest.fixture
def swapped(database: Database) -> Book:
    """Record the parts, the rebuild, the car fire, and what the rebuild turned out to be."""
    now = dt.datetime(2026, 3, 1, 12, tzinfo=dt.UTC)
    department = Department(name="Port Vessick", edition=EditionId("nfpa-1851/2014"))
    facts = DepartmentFacts(department=department, guides=(SILENT,))
    book = _described(store_in(database, lambda: now), facts, ("101", "102", "103"))
    checked = State(custody=Custody.WASH_ROOM, stage=CareStage.CHECKED, assembly=Assembly.APART)
    register_components(book, _act("r", at=now), [replace(one, state=checked) for one in PARTS])
    rebuilt = _act("rebuilt", at=now + dt.timedelta(minutes=1))
    said = {"by": "131"}
    done = book.ledger.append([rebuilt.entry(K.REBUILT, component(one.id), said) for one in PARTS])
    fire = _act("fire", at=now + dt.timedelta(minutes=2))
    worn = {"member": "102", "call": "car-fire"}
    book.ledger.append([fire.entry(K.WORN, component(one.id), worn) for one in (B, LINER_A)])
    found = _act("found", at=now + dt.timedelta(minutes=3))
    hold = {"cause": "rebuild.match", "question": "rebuild.ask.match",
            "decider": "gear-officer", "deputy": "safety-officer"}  # fmt: skip
    mixed = (A, B, LINER_A, LINER_B)
    book.ledger.append([found.entry(K.HOLD_OPENED, component(one.id), hold) for one in mixed])
    for one in done[:4]:
        correct(book, found, one.entry.seq, reason="liners swapped",
                says={"by": "131", "assembly": "mismatched"})  # fmt: skip
    return book


def _life(book: Book, one: Component) -> PieceLife:
    thing = ItemId(component(one.id))
    return fold_facts(read_facts(book.ledger.entries())).piece(thing)


@pytest.mark.parametrize("one", PARTS, ids=lambda one: one.id)
def test_the_car_fire_is_on_shell_b_and_liner_a_alone(swapped: Book, one: Component) -> None:
    """Worn by 102; 101 and 103 were exposed to nothing."""
    worn = [(exposure.member, exposure.call) for exposure in _life(swapped, one).exposures]

    assert worn == ([("102", "car-fire")] if one in (B, LINER_A) else [])


def test_the_job_of_the_record_holds_a_and_b_and_not_c(swapped: Book) -> None:
    """Mismatch, compatibility not known; C stands as it was checked; liner a needs a wash."""
    job = assemble_job(swapped.register, now=dt.datetime(2026, 3, 1, 13, tzinfo=dt.UTC))
    state = {str(one.id): one.state for one in job.components}

    held = {name for name, one in state.items() if one.open_holds}
    assert held == {"A", "B", "a", "b"}
    assert {state[name].assembly for name in held} == {Assembly.MISMATCHED}
    assert (state["C"].stage, state["c"].stage) == (CareStage.CHECKED, CareStage.CHECKED)
    assert (state["a"].stage, state["b"].stage) == (CareStage.WORN, CareStage.CHECKED)


def test_mixed_sets_go_out_with_their_earliest_part(swapped: Book) -> None:
    """May 2029 for A with b and for B with a, from the record's own dates."""
    job: Job = assemble_job(swapped.register, now=dt.datetime(2026, 3, 1, 13, tzinfo=dt.UTC))
    dues = due_gear(RULES, job).items
    out = {
        str(one.component.id): one.due.first_day
        for one in dues
        if one.due.matter is Matter.RETIREMENT
    }

    for mixed in (("A", "b"), ("B", "a")):
        first = min(out[name].earliest or dt.date.max for name in mixed)
        assert first == dt.date(2029, 5, 1)


def test_what_was_first_written_stays(swapped: Book) -> None:
    """The rebuild that was put right is still read, with who wrote it."""
    entries = [one for one in swapped.ledger.entries() if one.read_header().kind is K.REBUILT]

    assert all(json.loads(one.payload or "{}") == {"by": "131"} for one in entries)
    assert len(entries) == len(PARTS)
