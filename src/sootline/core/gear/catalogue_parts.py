"""What do the kinds of the catalogue have in common, in short names for its tables?

All of it is common practice, no published source; masses are from memory.
"""

from sootline.core.basis import KindId, MessageId, Quantity, quantity
from sootline.core.gear.kinds import Applies, DryMethod, Preparation

AIR_DRIED = (DryMethod.CABINET, DryMethod.RACK, DryMethod.HANG)
HUNG = (DryMethod.HANG, DryMethod.RACK)
LAID = (DryMethod.RACK, DryMethod.FLAT)

POCKETS = Preparation(step="pockets")
ACCESSORIES = Preparation(step="accessories")
NAME_PANEL_OFF = Preparation(step="name_panel", applies=Applies.TAKEN_APART)
LINER_OUT = Preparation(step="liner_out", applies=Applies.TAKEN_APART)
LINER_STAYS = Preparation(step="liner_stays", applies=Applies.IN_ONE_PIECE)
DRAG_DEVICE_OUT = Preparation(step="drag_device_out", applies=Applies.TAKEN_APART)
SUSPENDERS_OFF = Preparation(step="suspenders_off", applies=Applies.TAKEN_APART)
KNEE_PADS_OUT = Preparation(step="knee_pads_out", applies=Applies.TAKEN_APART)
ESCAPE_KIT_OUT = Preparation(step="escape_kit_out")
HOOK_COVERED = Preparation(step="hook_covered")
CLOSURES = Preparation(step="closures")
PRETREAT = Preparation(step="pretreat")
BARRIER_INWARD = Preparation(step="barrier_inward", applies=Applies.BARRIER_INWARD)
BARRIER_OUTWARD = Preparation(step="barrier_outward", applies=Applies.BARRIER_OUTWARD)
LINER_OPENINGS = Preparation(step="liner_openings")
STRAPS_LOOKED_OVER = Preparation(step="straps_looked_over")
MESH_BAG = Preparation(step="mesh_bag", applies=Applies.IN_DRUM)

SHELL_FIRST = (POCKETS, ACCESSORIES, NAME_PANEL_OFF, LINER_OUT, LINER_STAYS)
SHELL_LAST = (HOOK_COVERED, CLOSURES, PRETREAT)
LINER_STEPS = (BARRIER_INWARD, BARRIER_OUTWARD, LINER_OPENINGS, PRETREAT)
STRAP_STEPS = (STRAPS_LOOKED_OVER, MESH_BAG)


def parts(*kinds: str) -> tuple[KindId, ...]:
    """List the kinds that come off or out of another."""
    return tuple(KindId(kind) for kind in kinds)


def touch(*points: str) -> tuple[MessageId, ...]:
    """List the places a hand must feel, as message ids."""
    return tuple(MessageId(f"gear.touch.{point}") for point in points)


def pounds(lightest: str, heaviest: str) -> tuple[Quantity, Quantity]:
    """Give a typical dry mass as a range [lb]."""
    return quantity(f"{lightest} lb"), quantity(f"{heaviest} lb")
