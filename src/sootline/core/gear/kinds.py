"""What is true of every component of one kind, whatever its label says?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import KindId, MessageId, Quantity


class Element(StrEnum):
    """Which element of the ensemble a component belongs to."""

    COAT = "coat"
    TROUSERS = "trousers"
    COVERALL = "coverall"
    HOOD = "hood"
    GLOVES = "gloves"
    BOOTS = "boots"
    HELMET = "helmet"
    ESCAPE = "escape"
    MASK = "mask"


class Layer(StrEnum):
    """What a component is for the wash: which company it keeps, and what it may meet."""

    SHELL = "shell"
    LINER = "liner"
    SOFT = "soft"
    STRAP = "strap"
    PAD = "pad"
    PADDING = "padding"
    GLOVE = "glove"
    BOOT = "boot"
    HARD = "hard"
    KIT = "kit"
    MASK = "mask"


class WashMethod(StrEnum):
    """How a component is washed, from the most to the least that it must bear."""

    MACHINE = "machine"
    HAND = "hand"
    BRUSH = "brush"
    WIPE = "wipe"
    NONE = "none"


class DryMethod(StrEnum):
    """How a component is dried."""

    CABINET = "cabinet"
    RACK = "rack"
    HANG = "hang"
    FLAT = "flat"
    NONE = "none"


@dataclass(frozen=True, kw_only=True)
class Kind:
    """The facts of one component kind.

    Args:
        separable: kinds that are taken off or out of it before washing.
        governs_set: whether its dates govern the set it belongs to.
        hard_surface: hard surfaces are disinfected, soft goods sanitised, where an edition
            makes that difference.
        touch_points: where a hand must feel it after drying, and where damage shows.
        preparation: steps before washing, in order (common practice).
        usual_wash: common practice where label, guide, edition and policy are silent.
        mesh_bag: whether it goes into a closed mesh bag in the drum.
        mass: typical dry mass of one [lightest, heaviest], for planning until weighed.
    """

    id: KindId
    element: Element
    layer: Layer
    separable: tuple[KindId, ...] = ()
    governs_set: bool = False
    hard_surface: bool = False
    touch_points: tuple[MessageId, ...] = ()
    preparation: tuple[MessageId, ...] = ()
    usual_wash: WashMethod
    usual_dry: tuple[DryMethod, ...]
    mesh_bag: bool = False
    mass: tuple[Quantity, Quantity] | None = None
