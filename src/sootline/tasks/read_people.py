"""What does the record say of people beyond their names: who tried what on, and who left?"""

from collections.abc import Iterable, Iterator

from sootline.core.basis import ComponentId, MemberId
from sootline.core.job.jobs import Job
from sootline.core.ledger import name_of
from sootline.core.ledger.things import ThingLife
from sootline.core.riding import TryOn
from sootline.tasks.take_people import without_leaver


def read_try_ons(people: Iterable[ThingLife]) -> Iterator[TryOn]:
    """List which pieces were tried on by whom, and who signed, as far as anybody did."""
    for life in people:
        tried = life.facts.get("tried")
        for piece, signed in (tried if isinstance(tried, dict) else {}).items():
            yield TryOn(
                component=ComponentId(piece),
                member=MemberId(name_of(life.item)),
                signed_by=str(signed) if signed else None,
            )


def without_leavers(job: Job, people: Iterable[ThingLife]) -> Job:
    """Take those who left off the list, as far as they have no gear any more."""
    for life in people:
        if life.facts.get("left"):
            job = without_leaver(job, MemberId(name_of(life.item)))
    return job
