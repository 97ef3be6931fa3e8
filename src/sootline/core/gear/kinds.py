"""What is true of every component of one kind, whatever its label says?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.basis import (
    Confidence,
    EditionId,
    Ground,
    KindId,
    MessageId,
    Quantity,
    RuleId,
)

KIND_EDITION = EditionId("practice/gear")
COMMON_PRACTICE = "common practice, no published source"


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
    OTHER_WEAR = "other-wear"


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
    OTHER_WEAR = "other-wear"


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


class Applies(StrEnum):
    """When a step of preparation is taken."""

    ALWAYS = "always"
    IN_DRUM = "in-drum"
    TAKEN_APART = "taken-apart"
    IN_ONE_PIECE = "in-one-piece"
    BARRIER_INWARD = "barrier-inward"
    BARRIER_OUTWARD = "barrier-outward"


@dataclass(frozen=True, kw_only=True)
class Preparation:
    """One step before washing.

    Args:
        step: the step's own name ("pockets"); its two sentences are found by it.
        applies: when it is taken; the maker's text may ask for the opposite.
    """

    step: str
    applies: Applies = Applies.ALWAYS

    @property
    def act(self) -> MessageId:
        """The message that says what to do."""
        return MessageId(f"gear.prep.{self.step}")

    @property
    def skipped(self) -> MessageId:
        """The message that says what goes wrong if it is skipped."""
        return MessageId(f"gear.skip.{self.step}")


@dataclass(frozen=True, kw_only=True)
class Kind:
    """The facts of one component kind; all of them common practice, no published source.

    Args:
        separable: kinds that are taken off or out of it before washing.
        governs_set: whether its dates govern the set it belongs to.
        hard_surface: hard surfaces are disinfected, soft goods sanitised, where an edition
            makes that difference.
        materials: everything it may be made of ("fabric", "leather", "rubber", "foam",
            "hard-surface"), in the words a product's label uses; a product must name them all.
        traits: what every component of the kind has of the traits rules are confined to.
        touch_points: where a hand must feel it after drying, and where damage shows.
        preparation: steps before washing, in order.
        usual_wash: where label, guide, edition and policy are silent.
        mesh_bag: whether it goes into a closed mesh bag in the drum.
        mass: typical dry mass of one [lightest, heaviest], from memory, for planning until
            weighed.
    """

    id: KindId
    element: Element
    layer: Layer
    separable: tuple[KindId, ...] = ()
    governs_set: bool = False
    hard_surface: bool = False
    materials: tuple[str, ...] = ("fabric",)
    traits: tuple[str, ...] = ()
    touch_points: tuple[MessageId, ...] = ()
    preparation: tuple[Preparation, ...] = ()
    usual_wash: WashMethod
    usual_dry: tuple[DryMethod, ...]
    mesh_bag: bool = False
    mass: tuple[Quantity, Quantity] | None = None

    @property
    def ground(self) -> Ground:
        """Return what a finding cites when it rests on this kind's usual treatment."""
        return self._ground(Confidence.PRACTICE)

    @property
    def mass_ground(self) -> Ground:
        """Return what an estimate cites when it rests on this kind's typical mass."""
        return self._ground(Confidence.MEMORY)

    def _ground(self, confidence: Confidence) -> Ground:
        return Ground(
            rule=RuleId(f"kind.{self.id}"),
            edition=KIND_EDITION,
            source=COMMON_PRACTICE,
            confidence=confidence,
        )
