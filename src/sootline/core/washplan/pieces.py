"""How does each piece on its way through the wash room look in the neutral problem?"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from sootline.core.basis import Bearing, ComponentId, Finding, MemberId, PlaceId, finding
from sootline.core.gear.kinds import WashMethod
from sootline.core.laundry.goods import entered
from sootline.core.laundry.rooms import WashRoom
from sootline.core.laundry.sharing import apart
from sootline.core.laundry.sorts import Sort
from sootline.core.washplan.durations import Clock, Pace, Work
from sootline.core.washplan.facts import Piece
from sootline.core.washplan.handled import Handled
from sootline.core.washplan.hanging import Hung, Places, hang
from sootline.core.washplan.instance import MOST_AMOUNT
from sootline.core.washplan.question import Question
from sootline.core.washplan.temperatures import hottest
from sootline.core.washplan.weights import Scale

POOL = MemberId("(pool)")
BASIN = PlaceId("basin")
BENCH = PlaceId("bench")
_NEVER = MOST_AMOUNT
_BATH = "wash.bath_temp"


@dataclass(frozen=True, kw_only=True)
class Carried:
    """One neutral piece and the components it stands for.

    Args:
        dries_at: its racks by name, or how it dries when it needs none ("hang", "flat").
    """

    piece: ComponentId
    components: tuple[ComponentId, ...]
    sort: str
    dries_at: str


@dataclass(kw_only=True)
class Draft:
    """The pieces made, with what was refused and noted on the way."""

    pieces: list[Piece] = field(default_factory=list)
    carried: list[Carried] = field(default_factory=list)
    refused: list[Finding] = field(default_factory=list)
    notes: list[Finding] = field(default_factory=list)


def make_pieces(
    handled: Sequence[Handled], places: Places, scale: Scale, question: Question, pace: Pace
) -> Draft:
    """Make the neutral pieces; a component nobody gives a time for is refused, never dropped."""
    clock = Clock(room=question.room, planning=question.planning)
    draft = Draft()
    for one in handled:
        hung = hang(one, handled, places, clock)
        works = [work for kind in one.kinds if (work := clock.work(kind))]
        if hung is None or len(works) < len(one.components):
            draft.refused.extend(_refused(one, "no_time"))
            continue
        if _too_heavy(one, scale):
            draft.refused.extend(_refused(one, "too_heavy"))
            continue
        draft.notes.extend((*hung.notes, *(work.note for work in works if work.note)))
        ids = tuple(component.id for component in one.components)
        at = one.drying.elsewhere or ", ".join(one.drying.places)
        draft.carried.append(
            Carried(piece=one.id, components=ids, sort=one.sort.id, dries_at=str(at))
        )
        draft.pieces.append(_piece(one, hung, works, scale=scale, question=question, pace=pace))
    return draft


def _refused(handled: Handled, why: str) -> Iterator[Finding]:
    for component in handled.components:
        names = {"component": component.id, "kind": component.kind}
        yield finding(Bearing.ASKS, f"laundry.refused.{why}", entered("room"), **names)


def _too_heavy(handled: Handled, scale: Scale) -> bool:
    """Whether rounding between units pushes a piece over every drum it would just fit."""
    weight = sum(scale.up(mass) for mass in handled.masses)
    settings = handled.sort.settings
    return bool(settings) and all(scale.down(one.limit) < weight for one in settings)


def _piece(
    handled: Handled,
    hung: Hung,
    works: Sequence[Work],
    *,
    scale: Scale,
    question: Question,
    pace: Pace,
) -> Piece:
    sort = handled.sort
    by_hand = sort.method is not WashMethod.MACHINE
    wiping = question.room.between_min if apart(sort.separation) else 0
    return Piece(
        id=handled.id,
        member=_member(handled, question),
        type="+".join(kind.id for kind in handled.kinds),
        size=_size(handled),
        weight=sum(scale.up(mass) for mass in handled.masses),
        family=sort.id,
        max_temp=_max_temp(handled, question),
        prep=sum(pace.of(work.prepare) for work in works),
        inspect=sum(pace.of(work.check) for work in works),
        hand_station=station(sort, question.room) if by_hand else None,
        hand_min=sum(pace.of(work.hand) for work in works) + wiping if by_hand else 0,
        units=hung.units,
        # The neutral rack is open to all: a time nobody would choose keeps a piece off it.
        dry_rack=pace.of(hung.rack) if hung.rack else _NEVER,
        dry_cab=pace.of(hung.cabinet) if hung.cabinet else None,
    )


def station(sort: Sort, room: WashRoom) -> PlaceId:
    """Return the kind of place a sort is washed at by hand."""
    benches = {sink.id for sink in room.sinks if sink.bench}
    return BENCH if sort.places[0] in benches else BASIN


def _member(handled: Handled, question: Question) -> MemberId:
    owner = handled.components[0].owner
    known = any(member.id == owner for member in question.members)
    return owner if owner is not None and known else POOL


def _size(handled: Handled) -> str:
    named = (f"{name} {value}" for one in handled.components for name, value in one.size)
    return ", ".join(named)


def _max_temp(handled: Handled, question: Question) -> int:
    names = {component.id for component in handled.components}
    return hottest(
        limit
        for decision in question.decisions
        if decision.component in names
        for limit, _ in decision.terms.limit(_BATH).limits
    )
