"""What does the record come to for the question who can ride?"""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.basis import ComponentId, MinuteSpan
from sootline.core.care import Decision
from sootline.core.gear import Component
from sootline.core.intervals import Due
from sootline.core.riding.facts import Back, RidingFacts
from sootline.core.riding.garments import Kept, list_garments
from sootline.core.riding.outfits import list_units
from sootline.core.riding.situation import Rider, Situation, minutes_until
from sootline.core.riding.wearable import Known, list_out


@dataclass(frozen=True, kw_only=True)
class Records:
    """What is recorded and what other stages have found.

    Args:
        now: the moment asked about, in the department's zone.
        decisions: what care asks for after the calls.
        dues: from intervals; only retirement matters here.
        backs: when the plan has components back.
    """

    now: dt.datetime
    facts: RidingFacts
    components: tuple[Component, ...]
    decisions: tuple[Decision, ...] = ()
    dues: tuple[Due, ...] = ()
    backs: tuple[Back, ...] = ()


def arrange(records: Records, riders: Iterable[Rider], kept: Kept | None = None) -> Situation:
    """Bring record, decisions, plan and loans together.

    Args:
        kept: elements of an earlier call, as `list_garments` left them.

    Raises:
        BadInputError: a component is of an unknown kind.
    """
    facts = records.facts
    known = Known(
        decisions={decision.component: decision for decision in records.decisions},
        out=list_out(records.dues),
        backs={back.component: back.when for back in records.backs},
        arrivals=_arrivals(records),
    )
    garments = list_garments(records.components, known, facts.also_needed, kept)
    return Situation(
        now=records.now,
        riders=tuple(riders),
        units=list_units(garments, facts, records.now),
        fit=facts.fit,
        one_size=facts.one_size,
        crews=facts.crews,
    )


def _arrivals(records: Records) -> dict[ComponentId, MinuteSpan]:
    """Count from now when lent pieces are here; a promise of the past is here."""
    arrivals: dict[ComponentId, MinuteSpan] = {}
    for loan in records.facts.loans:
        first = minutes_until(loan.arrives, records.now)
        late = minutes_until(loan.latest or loan.arrives, records.now)
        span = MinuteSpan(earliest=first, likely=first, late=late)
        arrivals |= dict.fromkeys(loan.components, span)
    return arrivals
