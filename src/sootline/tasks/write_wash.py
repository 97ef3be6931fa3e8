"""How does a deed of the wash room come into the record?"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import assert_never

from sootline.core.basis import ComponentId
from sootline.core.gear import Assembly, CareStage, Element, Event, EventKind, find_kind
from sootline.core.job.jobs import Job
from sootline.core.ledger import EntryKind, ItemKind, component, item
from sootline.core.ledger.acts import Act
from sootline.core.rulebook import Level
from sootline.tasks.decide import decide_job
from sootline.tasks.deeds import (
    Washed,
    WashStep,
)
from sootline.tasks.ports import Known, Rules
from sootline.tasks.recording import Book, refuse_unless
from sootline.tasks.wash_room import begin_load, end_load, fail_load, hang, wash_by_hand

_TAKEN_APART = (Element.COAT, Element.TROUSERS, Element.COVERALL)
_AGAIN = ("", *"bcdefghij")
_LEVELS = tuple(Level)


def write_wash(rules: Rules, book: Book, act: Act, job: Job, deed: Washed) -> None:
    """Record what happened in the wash room.

    Raises:
        RefusedError: a piece may not, as it stands.
        BadInputError: the load is not there, is over, or something named is not known.
    """
    pieces, by = deed.pieces, act.actor
    match deed.step:
        case WashStep.STARTED:
            _bring(book, act, pieces)
            level = _level(rules, job, pieces)
            load = _free(book, job, deed.load)
            begin_load(book, act, load, pieces, machine=deed.place, by=by, level=level)
        case WashStep.ENDED:
            end_load(book, act, _running(book, job, deed.load), by=by)
        case WashStep.FAILED:
            fail_load(book, act, _running(book, job, deed.load), by=by, said=deed.said)
        case WashStep.BY_HAND:
            _bring(book, act, pieces)
            wash_by_hand(book, act, pieces, by=by, level=_level(rules, job, pieces))
        case WashStep.HUNG:
            hang(book, act, pieces, by=by, place=deed.place)
        case _:
            assert_never(deed.step)


def _bring(book: Book, act: Act, pieces: Sequence[ComponentId]) -> None:
    """Record that soiled pieces came to the wash room and were taken apart and sorted."""
    known = book.known(*pieces)
    fresh = [one for one in known if one.component.state.stage is not CareStage.TO_WASH]
    back, sort = Event(kind=EventKind.RETURNED_SOILED), Event(kind=EventKind.SORTED)
    if not book.told:
        refuse_unless(fresh, [back, sort])
        refuse_unless([one for one in known if one not in fresh], [sort])
    said: dict[str, str] = {"by": act.actor}
    if fresh:
        coming = replace(act, idem=f"{act.idem}/back")
        kind = EntryKind.RETURNED_SOILED
        drafts = [coming.entry(kind, component(one.component.id), said) for one in fresh]
        book.record(drafts, fresh)
    sorting = replace(act, idem=f"{act.idem}/sorted")
    book.record([
        sorting.entry(EntryKind.SORTED, component(one.component.id), said | _apart(one))
        for one in known
    ])  # fmt: skip


def _apart(known: Known) -> dict[str, str]:
    apart = find_kind(known.component.kind).element in _TAKEN_APART
    return {"assembly": Assembly.APART.value} if apart else {}


def _level(rules: Rules, job: Job, pieces: Iterable[ComponentId]) -> Level:
    """Return the most thorough cleaning that any of the pieces is to have.

    What no call asks for is washed because its cleaning comes due: that is an advanced one.
    """
    wanted = frozenset(pieces)
    levels = [one.level for one in decide_job(rules, job).decisions if one.component in wanted]
    planned = (Level.ADVANCED if one is Level.LOOK else one for one in levels)
    return max(planned, key=_LEVELS.index, default=Level.ADVANCED)


def _names(job: Job, number: int) -> Iterator[str]:
    """List the names a load of this number has in turn: one that stopped is begun anew."""
    return (f"{job.now:%y%m%d}-{number}{again}" for again in _AGAIN)


def _free(book: Book, job: Job, number: int) -> str:
    return next(name for name in _names(job, number) if not _started(book, name))


def _running(book: Book, job: Job, number: int) -> str:
    """Return the name of the load that was started last, or of the one that will have been."""
    begun = [name for name in _names(job, number) if _started(book, name)]
    return begun[-1] if begun else next(_names(job, number))


def _started(book: Book, name: str) -> bool:
    """Whether a load was started; of one that was not, it may be told already how it went."""
    life = book.register.thing(item(ItemKind.LOAD, name))
    return life is not None and EntryKind.LOAD_STARTED.value in life.facts
