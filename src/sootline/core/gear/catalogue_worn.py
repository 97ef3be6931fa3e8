"""What is true of hoods, gloves, boots, the escape kit and the mask?

Common practice, no published source; masses are from memory.
"""

from sootline.core.basis import KindId
from sootline.core.gear import catalogue_parts as p
from sootline.core.gear.kinds import (
    DryMethod,
    Element,
    Kind,
    Layer,
    Preparation,
    WashMethod,
)

_THIN_SPOTS = Preparation(step="thin_spots")
_FINGERS_EMPTY = Preparation(step="fingers_empty")
_BOOT_STEPS = (
    Preparation(step="insoles_out"),
    Preparation(step="mud_off"),
    Preparation(step="laces_loosened"),
)
_BOOT_POINTS = p.touch("toe", "heel", "sole_edge", "boot_lining")

_HOODS = (
    Kind(
        id=KindId("hood"),
        element=Element.HOOD,
        layer=Layer.SOFT,
        touch_points=p.touch("face_opening", "hood_seams"),
        preparation=(_THIN_SPOTS,),
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.LAID,
        mass=p.pounds("0.2", "0.3"),
    ),
    Kind(
        id=KindId("hood-particulate"),
        element=Element.HOOD,
        layer=Layer.SOFT,
        traits=("particulate-blocking",),
        touch_points=p.touch("face_opening", "hood_seams", "barrier_panels"),
        preparation=(_THIN_SPOTS, p.MESH_BAG),
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.LAID,
        mesh_bag=True,
        mass=p.pounds("0.3", "0.4"),
    ),
)

_GLOVES = Kind(
    id=KindId("gloves"),
    element=Element.GLOVES,
    layer=Layer.GLOVE,
    materials=("fabric", "leather"),
    touch_points=p.touch("fingertips", "glove_lining", "glove_wrist"),
    preparation=(_FINGERS_EMPTY, p.CLOSURES),
    usual_wash=WashMethod.HAND,
    usual_dry=(DryMethod.RACK, DryMethod.HANG),
    mass=p.pounds("0.6", "1.0"),
)

_BOOTS = (
    Kind(
        id=KindId("boots-leather"),
        element=Element.BOOTS,
        layer=Layer.BOOT,
        separable=p.parts("insoles"),
        materials=("leather",),
        traits=("leather",),
        touch_points=_BOOT_POINTS,
        preparation=_BOOT_STEPS,
        usual_wash=WashMethod.HAND,
        usual_dry=(DryMethod.RACK,),
        mass=p.pounds("5", "8"),
    ),
    Kind(
        id=KindId("boots-rubber"),
        element=Element.BOOTS,
        layer=Layer.BOOT,
        separable=p.parts("insoles"),
        materials=("rubber",),
        traits=("rubber",),
        touch_points=_BOOT_POINTS,
        preparation=_BOOT_STEPS[:2],
        usual_wash=WashMethod.HAND,
        usual_dry=(DryMethod.RACK,),
        mass=p.pounds("6", "9"),
    ),
    Kind(
        id=KindId("insoles"),
        element=Element.BOOTS,
        layer=Layer.PAD,
        materials=("fabric", "foam"),
        touch_points=p.touch("foam"),
        usual_wash=WashMethod.HAND,
        usual_dry=p.LAID,
    ),
)

_ESCAPE = (
    Kind(
        id=KindId("escape-belt"),
        element=Element.ESCAPE,
        layer=Layer.KIT,
        touch_points=p.touch("webbing", "stitching", "clips"),
        preparation=(p.STRAPS_LOOKED_OVER, Preparation(step="maker_rules")),
        usual_wash=WashMethod.NONE,
        usual_dry=p.HUNG,
    ),
    Kind(
        id=KindId("escape-kit"),
        element=Element.ESCAPE,
        layer=Layer.KIT,
        touch_points=p.touch("rope", "webbing", "stitching"),
        preparation=(p.STRAPS_LOOKED_OVER, Preparation(step="maker_rules")),
        usual_wash=WashMethod.NONE,
        usual_dry=p.HUNG,
        mass=p.pounds("3", "6"),
    ),
)

_MASK = Kind(
    id=KindId("mask"),
    element=Element.MASK,
    layer=Layer.MASK,
    hard_surface=True,
    materials=("hard-surface", "rubber"),
    preparation=(Preparation(step="to_technician"),),
    usual_wash=WashMethod.NONE,
    usual_dry=(DryMethod.NONE,),
)

WORN = (*_HOODS, _GLOVES, *_BOOTS, *_ESCAPE, _MASK)
