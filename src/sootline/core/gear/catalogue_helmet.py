"""What is true of the helmet and of everything that comes off it?

Common practice, no published source; masses are from memory.
"""

from sootline.core.basis import KindId
from sootline.core.gear import catalogue_parts as p
from sootline.core.gear.kinds import (
    Applies,
    DryMethod,
    Element,
    Kind,
    Layer,
    Preparation,
    WashMethod,
)

_FASTENER_CLOSED = Preparation(step="fastener_closed")

HELMET = (
    Kind(
        id=KindId("helmet-shell"),
        element=Element.HELMET,
        layer=Layer.HARD,
        separable=p.parts(
            "helmet-padding",
            "ear-neck-cover",
            "chin-strap",
            "face-shield",
            "goggles",
            "front-piece",
        ),
        hard_surface=True,
        materials=("hard-surface",),
        touch_points=p.touch("rim", "under_suspension", "shell_surface"),
        preparation=(
            p.ACCESSORIES,
            Preparation(step="front_piece_off"),
            Preparation(step="soft_parts_out", applies=Applies.TAKEN_APART),
        ),
        usual_wash=WashMethod.BRUSH,
        usual_dry=(DryMethod.RACK, DryMethod.HANG),
        mass=p.pounds("2", "3.5"),
    ),
    Kind(
        id=KindId("helmet-padding"),
        element=Element.HELMET,
        layer=Layer.PADDING,
        materials=("fabric", "foam"),
        touch_points=p.touch("headband", "sweatband", "foam"),
        preparation=(_FASTENER_CLOSED,),
        usual_wash=WashMethod.HAND,
        usual_dry=p.LAID,
        mass=p.pounds("0.3", "0.8"),
    ),
    Kind(
        id=KindId("ear-neck-cover"),
        element=Element.HELMET,
        layer=Layer.SOFT,
        touch_points=p.touch("cover_seams", "cover_fasteners"),
        preparation=(_FASTENER_CLOSED,),
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.LAID,
        mass=p.pounds("0.1", "0.3"),
    ),
    Kind(
        id=KindId("chin-strap"),
        element=Element.HELMET,
        layer=Layer.STRAP,
        touch_points=p.touch("webbing", "clips"),
        preparation=(p.STRAPS_LOOKED_OVER, p.MESH_BAG),
        usual_wash=WashMethod.HAND,
        usual_dry=p.HUNG,
        mesh_bag=True,
        mass=p.pounds("0.1", "0.2"),
    ),
    Kind(
        id=KindId("face-shield"),
        element=Element.HELMET,
        layer=Layer.HARD,
        hard_surface=True,
        materials=("hard-surface",),
        touch_points=p.touch("lens", "hinges"),
        preparation=(Preparation(step="grit_rinsed"),),
        usual_wash=WashMethod.WIPE,
        usual_dry=(DryMethod.RACK, DryMethod.HANG),
        mass=p.pounds("0.3", "0.6"),
    ),
    Kind(
        id=KindId("goggles"),
        element=Element.HELMET,
        layer=Layer.HARD,
        hard_surface=True,
        materials=("hard-surface", "foam"),
        touch_points=p.touch("lens", "goggle_foam", "goggle_strap"),
        preparation=(Preparation(step="goggles_off"), Preparation(step="grit_rinsed")),
        usual_wash=WashMethod.HAND,
        usual_dry=(DryMethod.RACK, DryMethod.HANG),
        mass=p.pounds("0.2", "0.4"),
    ),
    Kind(
        id=KindId("front-piece"),
        element=Element.HELMET,
        layer=Layer.HARD,
        materials=("leather", "hard-surface"),
        touch_points=p.touch("stitching"),
        usual_wash=WashMethod.WIPE,
        usual_dry=(DryMethod.RACK,),
    ),
)
