"""A job file begins a record, and entering it again adds nothing."""

from dataclasses import replace

from tests.unit.tasks.memory_book import MemoryLedger, MemoryRegister, act

from sootline.core.drying import Readings
from sootline.core.upkeep.facts import UpkeepFacts
from sootline.files.demo import demo_job
from sootline.files.rules import RuleFiles
from sootline.tasks.assemble_job import assemble_job
from sootline.tasks.decide import decide_job
from sootline.tasks.recording import Book
from sootline.tasks.take_in_job import take_in_job


def _empty() -> Book:
    ledger = MemoryLedger()
    return Book(ledger=ledger, register=MemoryRegister(ledger))


def test_a_file_entered_twice() -> None:
    """The second time nothing is new."""
    book, rules = _empty(), RuleFiles()
    job = demo_job(rules)

    first = take_in_job(book, act("f"), job)
    again = take_in_job(book, act("f"), job)

    assert (first.members, first.components) == (len(job.members), len(job.components))
    assert first.entries > first.components
    assert again == replace(first, entries=0)


def test_a_file_without_people_or_gear() -> None:
    """A department alone may be described first."""
    rules = RuleFiles()
    job = replace(
        demo_job(rules), members=(), components=(), calls=(), builds=(), upkeep=UpkeepFacts(),
        readings=Readings(),
    )  # fmt: skip

    assert take_in_job(_empty(), act("f"), job).entries == 1


def test_the_record_knows_what_was_read_in_the_wash_room() -> None:
    """Air, fans, drums, baths and every weighed load, as the file has them."""
    book, job = _empty(), demo_job(RuleFiles())
    take_in_job(book, act("f"), job)

    assert assemble_job(book.register, now=job.now).readings == job.readings


def test_the_record_decides_as_the_file_does() -> None:
    """Last night's gear gets the same fate and the same least cleaning from record and file."""
    book, rules = _empty(), RuleFiles()
    job = demo_job(rules)
    take_in_job(book, act("f"), job)

    again = assemble_job(book.register, now=job.now)

    def decided(one: object) -> dict[str, tuple[str, str]]:
        found = decide_job(rules, one)  # type: ignore[arg-type]
        return {it.component: (it.fate.value, it.level.value) for it in found.decisions}

    assert decided(again) == decided(job)
