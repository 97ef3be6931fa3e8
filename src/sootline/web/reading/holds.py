"""How does one hold read: what is asked, by which rule, who may answer, which pieces wait?"""

from collections.abc import Iterable
from dataclasses import dataclass

from sootline.core.gear import Component, Hold
from sootline.core.gear.records import Deed, Record
from sootline.core.job.jobs import Job
from sootline.core.rulebook import Decider
from sootline.tasks.decide import Decided
from sootline.web.reading.saying import Said, said

_DISINFECT = "disinfect"
_BUILDING = "building."


@dataclass(frozen=True, kw_only=True)
class HoldShown:
    """The whole screen.

    Args:
        contaminant: what it is about; empty where it is about no such thing.
        call: at which call; empty where it is about none.
        disinfected: what is recorded of disinfections of these pieces.
        offices: in which of them the reader may end it.
        product: what the decisions propose, and how long its label says.
    """

    hold: Hold
    pieces: tuple[Component, ...]
    contaminant: str
    call: str
    disinfected: tuple[tuple[Component, Record], ...]
    offices: tuple[Decider, ...]
    product: str
    minutes: int | None

    @property
    def asked(self) -> Said:
        """The question."""
        values = self.hold.reason.values if self.hold.reason else ()
        return Said(message=self.hold.question, values=values)

    @property
    def who(self) -> Said:
        """Who decides, who stands in, when it goes higher."""
        told = dict(self.hold.reason.values) if self.hold.reason else {}
        return said(
            "web.needs.who",
            decider=self.hold.decider,
            person=told.get("person", ""),
            deputy=self.hold.deputy,
            stand_in=told.get("stand_in", ""),
            hours=self.hold.escalate_after_h,
        )

    @property
    def asks_disinfection(self) -> bool:
        """Whether it waits for a disinfection to be recorded."""
        return f".{_DISINFECT}/" in self.hold.cause

    @property
    def asks_survey(self) -> bool:
        """Whether a survey or a measurement could answer it."""
        return bool(self.contaminant and self.call) and not self.asks_disinfection


def read_hold(
    job: Job, decided: Decided, cause: str, offices: Iterable[Decider]
) -> HoldShown | None:
    """Lay one hold out; None where no piece is held for that cause."""
    by_id = {component.id: component for component in job.components}
    held = [
        (decision, hold)
        for decision in decided.decisions
        for hold in decision.open_holds
        if hold.cause == cause
    ]
    if not held:
        return None
    (decision, hold), pieces = held[0], tuple(by_id[one.component] for one, _ in held)
    contaminant, call = _about(cause)
    entitled = (hold.decider, hold.deputy)
    return HoldShown(
        hold=hold,
        pieces=pieces,
        contaminant=contaminant,
        call=call if call in [one.id for one in job.calls] else "",
        disinfected=tuple(
            (piece, record)
            for piece in pieces
            for record in piece.records
            if record.deed is Deed.DISINFECTED
        ),
        offices=tuple(one for one in offices if one in entitled),
        product=decision.product or "",
        minutes=decision.contact_min,
    )


def _about(cause: str) -> tuple[str, str]:
    """Return which contaminant and which call a hold is about, from its stable name."""
    topic, _, call = cause.partition("/")
    if topic.startswith(_BUILDING):
        return topic.removeprefix(_BUILDING), call
    contaminant, dot, _ = topic.partition(".")
    return (contaminant, call) if dot else ("", "")
