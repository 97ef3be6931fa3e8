"""What is decided and done about gear on the floor, beyond calls, loads and checks?"""

from dataclasses import dataclass
from typing import TypeAlias

from sootline.core.basis import CallId, ComponentId
from sootline.core.exposure.calls import Survey
from sootline.core.gear import Component
from sootline.core.rebuild import Next
from sootline.core.rulebook import Decider


@dataclass(frozen=True, kw_only=True)
class HoldLifted:
    """Somebody entitled ends a hold on some pieces.

    Args:
        cause: the hold's, as the decisions name it.
        office: in which office it was decided.
        said: what was decided, in that person's words.
    """

    pieces: tuple[ComponentId, ...]
    cause: str
    by: str
    office: Decider
    said: str


@dataclass(frozen=True, kw_only=True)
class SurveyCame:
    """A survey or a measurement of something at a call is signed."""

    call: CallId
    survey: Survey


@dataclass(frozen=True, kw_only=True)
class Disinfected:
    """Pieces were disinfected.

    Args:
        minutes: for how long the product acted, as its label asks [min].
    """

    pieces: tuple[ComponentId, ...]
    product: str
    minutes: int
    by: str


@dataclass(frozen=True, kw_only=True)
class GuestsCame:
    """Gear of another department came in from a call; it goes back there, not into our seats.

    Args:
        pieces: as they are written down here, each with the department it belongs to.
    """

    call: CallId
    pieces: tuple[Component, ...]


@dataclass(frozen=True, kw_only=True)
class GuestsWent:
    """Gear of another department was handed back.

    Args:
        to: who took it.
    """

    pieces: tuple[ComponentId, ...]
    to: str
    by: str


@dataclass(frozen=True, kw_only=True)
class WashedElsewhere:
    """Gear was washed at home or in a laundry; said without blame, and asked about.

    Args:
        said: how, as far as it is known.
    """

    pieces: tuple[ComponentId, ...]
    by: str
    said: str


@dataclass(frozen=True, kw_only=True)
class Ruled:
    """A person decides what comes next for a piece whose check found something.

    Args:
        said: why, or where it goes.
    """

    piece: ComponentId
    next: Next
    by: str
    said: str


@dataclass(frozen=True, kw_only=True)
class HandedOver:
    """One shift handed over to the next, both by name.

    Args:
        exceptions: what was not on its hook, as it was shown, with the pieces.
    """

    giver: str
    taker: str
    exceptions: tuple[tuple[str, tuple[ComponentId, ...]], ...]
    said: str = ""


FloorDeed: TypeAlias = (
    HoldLifted
    | SurveyCame
    | Disinfected
    | GuestsCame
    | GuestsWent
    | WashedElsewhere
    | Ruled
    | HandedOver
)
FLOOR = (
    HoldLifted,
    SurveyCame,
    Disinfected,
    GuestsCame,
    GuestsWent,
    WashedElsewhere,
    Ruled,
    HandedOver,
)
