"""How does a check, or what was put together after it, come into the record?"""

from collections.abc import Sequence
from dataclasses import replace

from sootline.core.basis import ComponentId, MemberId
from sootline.core.gear import Assembly, CareStage
from sootline.core.job.jobs import Job
from sootline.core.ledger import EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.core.rebuild import AfterWashCheck, BuildVerdict, Next
from sootline.tasks.after_wash_check import hang_up, record_build, record_check
from sootline.tasks.asked_holds import found_at_check
from sootline.tasks.deeds import (
    PutTogether,
)
from sootline.tasks.holds import hold_by_hand
from sootline.tasks.ports import Rules
from sootline.tasks.rebuild_gear import rebuild_gear
from sootline.tasks.recording import Book, also
from sootline.tasks.wash_room import hang, take_down
from sootline.tasks.write_year import draft_fact


def write_check(rules: Rules, book: Book, act: Act, job: Job, check: AfterWashCheck) -> None:
    """Record a check; what passes and was not taken apart goes back on its hook.

    Raises:
        RefusedError: the piece may not, as it stands.
        BadInputError: the piece is not known, or nobody is named.
    """
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


def write_build(rules: Rules, book: Book, act: Act, job: Job, deed: PutTogether) -> None:
    """Record which parts are together; a whole element goes back on its hook.

    Raises:
        RefusedError: a part may not, as it stands.
        BadInputError: a part is not known, or nobody is named.
    """
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
