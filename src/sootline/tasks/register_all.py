"""Everything a department writes into one file for its register comes in as one act."""

from dataclasses import dataclass

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.core.gear import Component
from sootline.core.job.jobs import Member
from sootline.core.job.things import Bag, Contractor, Place, Supply
from sootline.core.laundry.rooms import DryingPlace, Sink, Washer
from sootline.core.ledger import Appended
from sootline.core.ledger.acts import Act
from sootline.tasks.recording import Book
from sootline.tasks.register_gear import draft_components
from sootline.tasks.register_things import draft_things


@dataclass(frozen=True, kw_only=True)
class Things:
    """What may be registered, kind by kind; each as a job file writes it."""

    members: tuple[Member, ...] = ()
    places: tuple[Place, ...] = ()
    bags: tuple[Bag, ...] = ()
    machines: tuple[Washer, ...] = ()
    sinks: tuple[Sink, ...] = ()
    racks: tuple[DryingPlace, ...] = ()
    supplies: tuple[Supply, ...] = ()
    contractors: tuple[Contractor, ...] = ()
    components: tuple[Component, ...] = ()


def register_all(
    book: Book, act: Act, things: Things, *, station: str = "", grant: str = ""
) -> tuple[Appended, ...]:
    """Register everything, or nothing.

    Args:
        station: to which all of it belongs; blank is not said.
        grant: the grant the components were bought with.

    Raises:
        BadInputError: something is registered already, or there is nothing.
    """
    others = (
        *things.members, *things.places, *things.bags, *things.machines, *things.sinks,
        *things.racks, *things.supplies, *things.contractors,
    )  # fmt: skip
    drafts = draft_things(book, act, others, station=station) if others else []
    if things.components:
        drafts += draft_components(book, act, things.components, station=station, grant=grant)
    if not drafts:
        raise BadInputError([Fault(place="things", message=MessageId("tasks.nothing"))])
    return book.ledger.append(drafts)
