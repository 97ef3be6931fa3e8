"""What has the department decided for itself about holds, products and who decides?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import ContaminantId
from sootline.core.rulebook.contaminants import Decider


class ProductUse(StrEnum):
    """What a product is for, by its own label."""

    DISINFECTANT = "disinfectant"
    SANITISER = "sanitiser"
    DETERGENT = "detergent"


@dataclass(frozen=True, kw_only=True)
class Product:
    """A product at hand, by what its own label says.

    Args:
        materials: the materials its label names ("fabric", "leather", "rubber", "foam",
            "hard-surface").
        against: what its label claims to act on; empty is not read yet.
        contact_min: its contact time [min]; None is not stated.
    """

    name: str
    use: ProductUse
    materials: tuple[str, ...] = ()
    against: tuple[ContaminantId, ...] = ()
    contact_min: int | None = None


@dataclass(frozen=True, kw_only=True)
class Appointment:
    """Who holds a deciding office tonight, and who stands in.

    Args:
        escalate_after_h: hours until its undecided holds go up [h]; it only shortens.
    """

    office: Decider
    person: str | None = None
    deputy: str | None = None
    escalate_after_h: int | None = None


@dataclass(frozen=True, kw_only=True)
class BuildingHold:
    """Hold gear from an old building until a survey is signed.

    Args:
        built_before: the year from which on a building counts as newer.
        opened: hold only what was there when ceilings or walls were opened.
    """

    contaminant: ContaminantId
    built_before: int
    opened: bool = True


@dataclass(frozen=True, kw_only=True)
class CarePolicy:
    """The department's own choices on holds, products and who decides.

    Methods and limits of its own are rules of its policy edition, not listed here.

    Args:
        escalate_after_h: hours until an undecided hold goes up where neither the contaminant nor
            the office says so [h]. Source: common practice, no published source.
    """

    building_holds: tuple[BuildingHold, ...] = ()
    appointments: tuple[Appointment, ...] = ()
    products: tuple[Product, ...] = ()
    escalate_after_h: int = 12
