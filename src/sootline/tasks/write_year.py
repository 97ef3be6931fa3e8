"""How does a fact of the year come into the record, with what it does to gear?"""

import json
from collections.abc import Iterator
from dataclasses import replace

from sootline.core.gear import Event, EventKind
from sootline.core.job.checks import check_job
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.core.ledger import Draft, EntryKind, ItemKind, component, item
from sootline.core.ledger.acts import Act
from sootline.core.rebuild import Built
from sootline.core.upkeep.inspections import Inspection, InspectionKind
from sootline.core.upkeep.repairs import Repair
from sootline.tasks.holds import open_hold
from sootline.tasks.ports import Rules
from sootline.tasks.read_year import BUILT, FACT_FORMS
from sootline.tasks.recording import Book, also, refuse_unless
from sootline.tasks.year_deeds import Fact
from sootline.tasks.year_events import Follows, follows
from sootline.tasks.year_facts import with_fact

_FORM_OF = {form: word for word, form in FACT_FORMS.items()} | {Built: BUILT}
_NOTHING = "nothing"
_INSPECTED = {
    InspectionKind.ROUTINE: EntryKind.INSPECTED_ROUTINE,
    InspectionKind.ADVANCED: EntryKind.INSPECTED_ADVANCED,
    InspectionKind.LINER: EntryKind.INSPECTED_LINER,
}


def write_year(rules: Rules, book: Book, act: Act, job: Job, fact: Fact) -> None:
    """Record a fact of the year: the fact itself, and an entry for everything it does to gear.

    Args:
        job: as the record has it now.

    Raises:
        RefusedError: a component may not, as it stands.
        BadInputError: it names what is not there, or was written down before.
        OvertakenError: somebody wrote about one of the components since.
    """
    first = draft_fact(act, fact)
    if book.answered(act, first):
        return
    after = check_job(replace(job, upkeep=with_fact(job.upkeep, fact)))
    every = follows(rules, job, after, fact)
    known = book.known(*(one.component for one in every))
    for one, what in zip(known, every, strict=True):
        refuse_unless([one], what.events)
    drafts = [draft for one in every for draft in _drafts(act, fact, one)]
    book.record([first, *drafts], known)


def draft_fact(act: Act, fact: "Fact | Built") -> Draft:
    """Return the entry that holds a fact itself, apart from what it does to gear."""
    document = json.loads(encode(type(fact), fact, indent=None))
    word = _FORM_OF[type(fact)]
    thing = item(ItemKind.YEAR_FACT, f"{word}-{act.idem}")
    return act.entry(EntryKind.REGISTERED, thing, {"form": word, "fact": document})


def _drafts(act: Act, fact: Fact, what: Follows) -> Iterator[Draft]:
    thing = component(what.component)
    if isinstance(fact, Inspection):
        found = ", ".join(flaw.flaw.value for flaw in fact.flaws) or _NOTHING
        day = fact.at.date().isoformat()
        looked = {"by": fact.by, "said": fact.kind.value, "on": day, "findings": found}
        counts = what.record is not None or fact.kind is InspectionKind.ROUTINE
        kind = _INSPECTED[fact.kind] if counts else EntryKind.NOTED
        yield act.entry(kind, thing, looked)
    if what.mended:
        assert isinstance(fact, Repair)  # nothing else mends
        said = {"by": fact.by or act.actor, "said": what.mended}
        yield also(act, "mended", EntryKind.REPAIRED, thing, said)
    for place, event in enumerate(what.events):
        if event.hold is not None:
            yield open_hold(act, what.component, event.hold, mark=f"{place}")
        else:
            yield also(act, f"{place}", EntryKind(event.kind.value), thing, _said(act, event))


def _said(act: Act, event: Event) -> dict[str, str]:
    said = {"by": event.by or act.actor}
    if event.place is not None:
        said["place"] = event.place
    if event.kind is EventKind.RETIRED:
        said["reason"] = event.said or "-"
    if event.kind is EventKind.HOLD_RELEASED:
        assert event.cause is not None
        assert event.office is not None
        said |= {"cause": event.cause, "office": event.office.value, "said": event.said or "-"}
    return said
