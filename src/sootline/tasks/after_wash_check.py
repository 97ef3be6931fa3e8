"""Somebody feels, sees and puts together what was washed: how is it recorded, and what follows?"""

import json
from collections.abc import Sequence

from sootline.core.basis import ComponentId
from sootline.core.gear import Assembly, Event, EventKind
from sootline.core.job.codec import encode
from sootline.core.ledger import Appended, EntryKind, component
from sootline.core.ledger.acts import Act
from sootline.core.rebuild import AfterWashCheck, Built, Next, Verdict
from sootline.tasks.recording import Book, refuse_unless, required


def record_check(
    book: Book, act: Act, check: AfterWashCheck, verdict: Verdict
) -> tuple[Appended, ...]:
    """Record what a named person felt and saw.

    Only a check that leaves nothing open counts as the touch check; any other is kept as a note
    with what it found, and the component stays where it is.

    Args:
        verdict: what follows from this check.

    Raises:
        RefusedError: nothing is open, but the component cannot be checked as it stands.
        BadInputError: the record does not know the component.
    """
    (known,) = book.known(check.component)
    found = json.loads(encode(AfterWashCheck, check, indent=None))
    said = {"by": check.by, "check": found, "next": verdict.next.value}
    thing = component(check.component)
    if verdict.next is not Next.BACK:
        note = act.entry(EntryKind.NOTED, thing, {**said, "said": verdict.next.value})
        return book.record([note], [known])
    draft = act.entry(EntryKind.TOUCH_CHECKED, thing, said)
    if not book.answered(act, draft):
        refuse_unless([known], [Event(kind=EventKind.TOUCH_CHECKED, by=check.by)])
    return book.record([draft], [known])


def record_build(
    book: Book, act: Act, built: Built, *, by: str, assembly: Assembly
) -> tuple[Appended, ...]:
    """Record which components were put together, and how they stand to each other.

    Raises:
        RefusedError: with every part that is not checked, or held.
        BadInputError: nobody is named, or the record does not know a part.
    """
    required(by=by)
    known = book.known(*built.parts)
    document = json.loads(encode(Built, built, indent=None))
    said = {"by": by, "assembly": assembly.value, "built": document}
    drafts = [act.entry(EntryKind.REBUILT, component(part), said) for part in built.parts]
    if not book.answered(act, drafts[0]):
        refuse_unless(known, [Event(kind=EventKind.REBUILT, by=by, assembly=assembly)])
    return book.record(drafts, known)


def hang_up(
    book: Book, act: Act, pieces: Sequence[ComponentId], *, by: str, place: str
) -> tuple[Appended, ...]:
    """Record that components are back on their owner's hook.

    Raises:
        RefusedError: with every one that is not checked, not together, or held.
        BadInputError: nobody or no place is named, or the record does not know one.
    """
    required(by=by, place=place)
    known = book.known(*dict.fromkeys(pieces))
    said = {"by": by, "place": place}
    drafts = [act.entry(EntryKind.BACK_ON_HOOK, component(one), said) for one in pieces]
    if not book.answered(act, drafts[0]):
        refuse_unless(known, [Event(kind=EventKind.BACK_ON_HOOK, by=by)])
    return book.record(drafts, known)
