"""How does a deed reported from a screen come into the record?"""

import json
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import assert_never

from sootline.core.basis import BadInputError, CallId, ComponentId, Fault, MemberId, MessageId
from sootline.core.exposure.calls import Call, Presence
from sootline.core.gear import Assembly, CareStage, Element, Event, EventKind, find_kind
from sootline.core.job.codec import encode
from sootline.core.job.jobs import Job
from sootline.core.ledger import EntryKind, ItemKind, component, item
from sootline.core.ledger.acts import Act
from sootline.core.rebuild import AfterWashCheck, BuildVerdict, Next
from sootline.core.rulebook import Level
from sootline.tasks.after_wash_check import hang_up, record_build, record_check
from sootline.tasks.answer_question import Answered, answer_question
from sootline.tasks.asked_holds import found_at_check
from sootline.tasks.decide import decide_job
from sootline.tasks.deeds import (
    CallCame,
    Checked,
    Deed,
    HazardsSaid,
    LookedOver,
    PersonSaid,
    Planned,
    PutTogether,
    Washed,
    WashStep,
)
from sootline.tasks.floor_deeds import FLOOR, FloorDeed
from sootline.tasks.hold_said import HoldSaid, write_hold
from sootline.tasks.holds import hold_by_hand
from sootline.tasks.people_deeds import PeopleDeed
from sootline.tasks.ports import Known, Rules
from sootline.tasks.reading_deeds import ReadingTaken
from sootline.tasks.rebuild_gear import rebuild_gear
from sootline.tasks.record_call import call_of, record_call
from sootline.tasks.recorded_plan import plan_item, plan_said
from sootline.tasks.recording import Book, also, refuse_unless
from sootline.tasks.take_readings import write_reading
from sootline.tasks.wash_room import begin_load, end_load, fail_load, hang, take_down, wash_by_hand
from sootline.tasks.write_floor import write_floor
from sootline.tasks.write_people import write_people
from sootline.tasks.write_year import draft_fact, write_year
from sootline.tasks.year_deeds import YearFact

_TAKEN_APART = (Element.COAT, Element.TROUSERS, Element.COVERALL)
_AGAIN = ("", *"bcdefghij")
_LEVELS = tuple(Level)


def write(rules: Rules, book: Book, act: Act, job: Job, deed: Deed) -> None:
    """Record a deed.

    Args:
        job: as the record has it now.

    Raises:
        RefusedError: a piece may not, as it stands.
        BadInputError: something named is not known, or was recorded before.
        OvertakenError: somebody wrote about one of the pieces since.
    """
    match deed:
        case CallCame(call=call):
            record_call(book, act, call)
        case Answered():
            answer_question(book, act, deed)
        case HoldSaid():
            write_hold(book, act, deed)
        case PersonSaid(call=name, presence=presence):
            _say_where(book, act, name, presence)
        case HazardsSaid(call=name, hazards=hazards):
            call = replace(_recorded(book, name), hazards=hazards)
            _change_call(book, act, call, "hazards")
        case Washed():
            _wash(rules, book, act, job, deed)
        case LookedOver(pieces=pieces):
            _look_over(book, act, pieces)
        case Checked(check=check):
            _check(rules, book, act, job, check)
        case PutTogether():
            _put_together(rules, book, act, job, deed)
        case Planned(plan=plan, station=station, because=because):
            said = {**plan_said(plan), **({"because": because} if because else {})}
            book.ledger.append([act.entry(EntryKind.PLANNED, plan_item(station), said)])
        case _:
            _beyond(rules, book, act, job, deed)


def _beyond(
    rules: Rules,
    book: Book,
    act: Act,
    job: Job,
    deed: FloorDeed | PeopleDeed | YearFact | ReadingTaken,
) -> None:
    """Record what is no step of a call, a load or a check."""
    if isinstance(deed, YearFact):
        write_year(rules, book, act, job, deed.fact)
    elif isinstance(deed, ReadingTaken):
        write_reading(book, act, job, deed.reading)
    elif isinstance(deed, FLOOR):
        write_floor(rules, book, act, job, deed)
    else:
        write_people(rules, book, act, job, deed)


def _recorded(book: Book, name: CallId) -> Call:
    life = book.register.thing(item(ItemKind.CALL, name))
    if life is None:
        fault = MessageId("tasks.no_such_thing")
        raise BadInputError([Fault(place="call", message=fault, values=(("id", name),))])
    return call_of({**life.facts, "id": name})


def _change_call(book: Book, act: Act, call: Call, field: str) -> None:
    """Record what is newly known of a call; the latest word on a field counts."""
    said = json.loads(encode(Call, call, indent=None))
    changes = {field: said.get(field, [])}
    book.ledger.append([act.entry(EntryKind.FACTS_CHANGED, item(ItemKind.CALL, call.id), changes)])


def _say_where(book: Book, act: Act, name: CallId, presence: Presence) -> None:
    """Put in where one person was; what was worn stays as it was recorded when the call came."""
    call = _recorded(book, name)
    people = tuple(
        replace(presence, worn=one.worn) if one.member == presence.member else one
        for one in call.people
    )
    _change_call(book, act, replace(call, people=people), "people")
    worn = next((one.worn or () for one in people if one.member == presence.member), ())
    if presence.bags:
        _bag(book, act, worn, ", ".join(presence.bags))


def _bag(book: Book, act: Act, pieces: Sequence[ComponentId], bags: str) -> None:
    """Record that what is still worn went into bags; what went on since stays where it is."""
    known = [one for one in book.known(*pieces) if one.component.state.stage is CareStage.WORN]
    said = {"by": act.actor, "place": bags}
    drafts = [act.entry(EntryKind.BAGGED, component(one.component.id), said) for one in known]
    if drafts:
        book.record(drafts, known)


def _wash(rules: Rules, book: Book, act: Act, job: Job, deed: Washed) -> None:
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


def _look_over(book: Book, act: Act, pieces: Sequence[ComponentId]) -> None:
    known = book.known(*pieces)
    refuse_unless(known, [Event(kind=EventKind.LOOKED_OVER, by=act.actor)])
    said = {"by": act.actor}
    kind = EntryKind.LOOKED_OVER
    book.record([act.entry(kind, component(one.component.id), said) for one in known], known)


def _check(rules: Rules, book: Book, act: Act, job: Job, check: AfterWashCheck) -> None:
    """Record a check; what passes and was not taken apart goes back on its hook."""
    (known,) = book.known(check.component)
    pieces, stage = (check.component,), known.component.state.stage
    if stage is CareStage.WASHED:
        # Felt before anybody wrote down where it hung.
        hung = replace(act, idem=f"{act.idem}/hung")
        hang(book, hung, pieces, by=check.by, place="-")
    if stage in (CareStage.WASHED, CareStage.DRYING):
        take_down(book, replace(act, idem=f"{act.idem}/down"), pieces, by=check.by)
    felt = _as_felt(job, check.component) if book.told else job
    result = rebuild_gear(rules, replace(felt, checks=(check,), builds=()))
    (verdict,) = result.pieces
    record_check(book, act, check, verdict)
    _attach(book, act, check)
    if verdict.next is Next.WASH_AGAIN:
        again, thing = replace(act, idem=f"{act.idem}/again"), component(check.component)
        book.record([again.entry(EntryKind.RETURNED_SOILED, thing, {"by": check.by})])
    if verdict.next is Next.HOLD and not known.component.state.open_holds:
        seen = ", ".join(one.flaw for one in check.flaws)
        hold_by_hand(
            book,
            replace(act, idem=f"{act.idem}/hold"),
            check.component,
            found_at_check(by=check.by, said=seen, at=check.at),
        )
    whole = known.component.state.assembly is Assembly.ASSEMBLED
    if verdict.next is Next.BACK and whole and not (book.told and _disagrees(book, pieces)):
        _hook(book, act, pieces, known.component.owner, by=check.by)


def _attach(book: Book, act: Act, check: AfterWashCheck) -> None:
    """Record that photos of what was found belong to the piece."""
    for photo in dict.fromkeys(flaw.photo for flaw in check.flaws if flaw.photo):
        said = {"sha256": photo, "by": check.by, "said": "after-wash-check"}
        attached = also(act, photo, EntryKind.ATTACHED, component(check.component), said)
        book.ledger.append([attached])


def _as_felt(job: Job, piece: ComponentId) -> Job:
    """Let a check that was told speak for itself, whatever the record says of its piece by now."""
    return replace(
        job,
        components=tuple(
            replace(one, state=replace(one.state, stage=CareStage.TO_CHECK, holds=()))
            if one.id == piece
            else one
            for one in job.components
        ),
    )


def _disagrees(book: Book, pieces: Sequence[ComponentId]) -> bool:
    """Whether a check that was told has not brought its piece to where a check brings it."""
    return any(one.component.state.stage is not CareStage.CHECKED for one in book.known(*pieces))


def _put_together(rules: Rules, book: Book, act: Act, job: Job, deed: PutTogether) -> None:
    """Record which parts are together; a whole element goes back on its hook."""
    result = rebuild_gear(rules, replace(job, checks=(), builds=(deed.built,)))
    verdict = result.elements[-1].verdict
    assembly = _assembly(verdict)
    record_build(book, act, deed.built, by=deed.by, assembly=assembly)
    book.ledger.append([draft_fact(act, deed.built)])
    if assembly is Assembly.ASSEMBLED:
        (first, *_) = book.known(*deed.built.parts)
        _hook(book, act, deed.built.parts, first.component.owner, by=deed.by)


def _assembly(verdict: BuildVerdict) -> Assembly:
    if verdict.complete:
        return Assembly.ASSEMBLED
    return Assembly.INCOMPLETE if verdict.lacking else Assembly.MISMATCHED


def _hook(
    book: Book, act: Act, pieces: Sequence[ComponentId], owner: MemberId | None, *, by: str
) -> None:
    hanging = replace(act, idem=f"{act.idem}/hook")
    hang_up(book, hanging, pieces, by=by, place=owner or "rack")
