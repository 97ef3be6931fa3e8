"""The county's recall, from a job file and from the record (Dunmarrow, invented).

Counts, reasons and people to tell are the officer's own (see `test_dunmarrow`); here they must
come out the same when the register was read from a file, and when it stands in the record.
"""

import datetime as dt
from dataclasses import replace

import pytest
from tests.spec.test_dunmarrow import NOTICE, REGISTER, SHELL, pulled, seen
from tests.unit.tasks.memory_book import MemoryLedger, MemoryRegister, act

from sootline.core.basis import BadInputError, ComponentId, EditionId, MemberId
from sootline.core.gear import Element, Life
from sootline.core.job.codec import decode, encode
from sootline.core.job.jobs import JOB_VERSION, Department, Job, Member
from sootline.core.rebuild import Built
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.core.upkeep.recalls import Affected, NoticeClosed
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.deeds import PutTogether
from sootline.tasks.match_recall import NoticeResult, match_recalls
from sootline.tasks.recording import Book
from sootline.tasks.take_in_job import take_in_job
from sootline.tasks.write_reports import write
from sootline.tasks.year_deeds import Fact, YearFact
from sootline.wiring.rules import RULES

NOW = dt.datetime(2026, 3, 2, 10, tzinfo=dt.UTC)
FITTED = Built(element=Element.COAT, parts=(SHELL.id, ComponentId("12")))
PIECES = (*REGISTER, SHELL)
JOB = Job(
    version=JOB_VERSION,
    now=NOW,
    department=Department(name="County", edition=EditionId("nfpa-1851/2014")),
    members=tuple(Member(id=MemberId(f"m{piece.id}")) for piece in PIECES),
    components=PIECES,
    builds=(FITTED,),
    upkeep=UpkeepFacts(notices=(NOTICE,)),
)


def from_file() -> Job:
    """Return the job as read back from its file."""
    return decode(Job, encode(Job, JOB))


def from_record() -> Job:
    """Return the job as the record of that file adds up to."""
    return assemble_job(record().register, now=NOW)


def record(job: Job = JOB) -> Book:
    """Return a record that took the file in."""
    ledger = MemoryLedger()
    made = Book(ledger=ledger, register=MemoryRegister(ledger))
    take_in_job(made, act("job"), job)
    return made


def say(made: Book, key: str, fact: Fact) -> None:
    """Write one fact of the year down."""
    job = assemble_job(made.register, now=NOW)
    write(RULES, made, act(key), job, YearFact(fact=fact))


def answer(job: Job) -> NoticeResult:
    """Return the one notice's answer."""
    return match_recalls(job).notices[0]


@pytest.mark.parametrize("job", [from_file(), from_record()], ids=["file", "record"])
def test_counts_to_the_unit(job: Job) -> None:
    """4 affected, 5 possible, 1 gone, 4 (and the shell) not affected; whoever has each is told."""
    found = answer(job)
    standing = {
        affected: [int(one.match.component) for one in found.concerned
                   if one.match.affected is affected]
        for affected in Affected
    }  # fmt: skip

    assert sorted(standing[Affected.AFFECTED]) == [1, 3, 11, 12]
    assert sorted(standing[Affected.POSSIBLE]) == [4, 5, 6, 9, 14]
    assert standing[Affected.GONE] == [10]
    assert sorted(int(one.component) for one in found.others) == [2, 7, 8, 13, 99]
    assert {"D05", "D17", "m99", "m12"} <= set(found.tell)
    assert not found.closure.closed


def test_a_recall_is_closed_by_a_person_when_nothing_is_left() -> None:
    """Closing is refused while anything is unseen, and counts once all is seen and pulled."""
    made = record()
    closed = NoticeClosed(notice="n1", by="118", at=NOW)
    with pytest.raises(BadInputError) as early:
        say(made, "early", closed)
    steps: list[Fact] = [*(seen(n) for n in (4, 5, 6, 9, 14)), *pulled(1, 3, 11, 12)]
    for number, one in enumerate(steps):
        say(made, f"step-{number}", one)
    say(made, "close", closed)
    job = assemble_job(made.register, now=NOW)

    assert early.value.faults[0].message == "tasks.notice_open"
    assert job.upkeep.closed == (closed,)
    assert match_recalls(job).closed


def test_a_liner_back_in_its_own_shell_is_inside_no_other() -> None:
    """Fitted anew with its own set: the other member wears it no longer."""
    own = replace(SHELL, id=ComponentId("98"), set=REGISTER[11].set)
    made = record(replace(JOB, components=(*PIECES, own)))
    job = assemble_job(made.register, now=NOW)
    deed = PutTogether(built=Built(element=Element.COAT, parts=(own.id, ComponentId("12"))), by="1")
    write(RULES, made, act("home"), job, deed)

    assert job.builds == (FITTED,)
    assert assemble_job(made.register, now=NOW).builds == ()


def test_gone_gear_is_there_while_a_notice_speaks_of_its_kind() -> None:
    """Without a notice, what was disposed of is no part of a job."""
    made = record(replace(JOB, upkeep=UpkeepFacts()))
    lives = {one.state.life for one in assemble_job(made.register, now=NOW).components}

    assert Life.DISPOSED not in lives
