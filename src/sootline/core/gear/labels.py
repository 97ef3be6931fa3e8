"""What does a label or a maker's guide say about care, and on what is it silent?"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from sootline.core.basis import AtMostForm, DateSpan, GuideId, Limit, Quantity, Side
from sootline.core.gear.kinds import DryMethod, WashMethod


class Act(StrEnum):
    """Something a text may forbid doing to a component."""

    MACHINE_WASH = "machine-wash"
    HAND_WASH = "hand-wash"
    ANY_WASH = "any-wash"
    DISINFECT = "disinfect"
    CHLORINE_BLEACH = "chlorine-bleach"
    OXYGEN_BLEACH = "oxygen-bleach"
    SOFTENER = "softener"
    STARCH = "starch"
    SOLVENT = "solvent"
    DRY_CLEAN = "dry-clean"
    POWER_WASHER = "power-washer"
    TOP_LOADER = "top-loader"
    TUMBLE_DRY = "tumble-dry"
    HEATED_DRY = "heated-dry"
    MACHINE_DRY = "machine-dry"
    SUN_DRY = "sun-dry"
    IRON = "iron"


@dataclass(frozen=True, kw_only=True)
class CareText:
    """Care instructions as one text gives them; a field it does not mention is None.

    Args:
        wash: the method the text names.
        wash_temp: the hottest bath as a number.
        wash_words: the hottest bath in words, as typed ("warm"); no number is read into it.
        dry: the drying methods the text names.
        dry_temp: the hottest drying air or basket.
        extraction: the hardest spin [G].
        ph_low, ph_high: the range of the detergent.
        forbids: what the text forbids.
        barrier_outward: True when the text wants the moisture barrier outward in the drum.
        assembled: True when the text wants it washed in one piece, not taken apart.
        disinfectants: materials or products the text allows for disinfection.
    """

    wash: WashMethod | None = None
    wash_temp: Annotated[Limit | None, AtMostForm()] = None
    wash_words: str | None = None
    dry: tuple[DryMethod, ...] = ()
    dry_temp: Annotated[Limit | None, AtMostForm()] = None
    extraction: Quantity | None = None
    ph_low: Quantity | None = None
    ph_high: Quantity | None = None
    forbids: tuple[Act, ...] = ()
    barrier_outward: bool | None = None
    assembled: bool | None = None
    disinfectants: tuple[str, ...] = ()

    def limit(self, topic: str) -> Limit | None:
        """Return the text's own limit on a topic of the rulebook; None where it is silent."""
        numbers: dict[str, tuple[Side, Quantity | None]] = {
            "wash.extraction": (Side.AT_MOST, self.extraction),
            "wash.ph_low": (Side.AT_LEAST, self.ph_low),
            "wash.ph_high": (Side.AT_MOST, self.ph_high),
        }
        if topic == "wash.bath_temp":
            return self.wash_temp
        if topic == "dry.air_temp":
            return self.dry_temp
        side, value = numbers.get(topic, (Side.AT_MOST, None))
        return Limit(side=side, values=(value,)) if value else None


@dataclass(frozen=True, kw_only=True)
class Label:
    """What is sewn in: identity, dates, care; unreadable is said, not guessed.

    Args:
        care: the care instructions; all None when the label is silent or unreadable.
        readable: False when it could not be read at all.
    """

    care: CareText = CareText()
    readable: bool = True
    maker: str | None = None
    style: str | None = None
    lot: str | None = None
    serial: str | None = None
    edition: str | None = None
    made: DateSpan = DateSpan()


@dataclass(frozen=True, kw_only=True)
class Guide:
    """A maker's user guide for some styles: care, intervals, and how it is cited.

    Args:
        title: how the guide is cited (invented makers in the demo).
        months: intervals by topic of the rulebook that the maker shortens.
        exchange: whether the maker allows a liner from another set of the same style and size;
            None is silent, which is no permission.
    """

    id: GuideId
    title: str
    care: CareText = CareText()
    months: tuple[tuple[str, int], ...] = ()
    exchange: bool | None = None
