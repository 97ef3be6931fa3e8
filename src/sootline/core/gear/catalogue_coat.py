"""What is true of the coat, and of what comes off and out of it?

Common practice, no published source; masses are from memory.
"""

from sootline.core.basis import KindId
from sootline.core.gear import catalogue_parts as p
from sootline.core.gear.kinds import Element, Kind, Layer, WashMethod

COAT = (
    Kind(
        id=KindId("coat-shell"),
        element=Element.COAT,
        layer=Layer.SHELL,
        separable=p.parts("coat-liner", "drag-device", "wristlets", "name-panel", "mic-strap"),
        governs_set=True,
        touch_points=p.touch("cuffs", "collar", "armpits", "pocket_corners", "under_trim"),
        preparation=(*p.SHELL_FIRST, p.DRAG_DEVICE_OUT, *p.SHELL_LAST),
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.AIR_DRIED,
        mass=p.pounds("3.5", "5"),
    ),
    Kind(
        id=KindId("coat-liner"),
        element=Element.COAT,
        layer=Layer.LINER,
        separable=p.parts("wristlets"),
        governs_set=True,
        touch_points=p.touch("cuffs", "collar", "armpits", "between_layers", "liner_seams"),
        preparation=p.LINER_STEPS,
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.AIR_DRIED,
        mass=p.pounds("2.5", "4"),
    ),
    Kind(
        id=KindId("drag-device"),
        element=Element.COAT,
        layer=Layer.STRAP,
        governs_set=True,
        touch_points=p.touch("webbing", "stitching"),
        preparation=p.STRAP_STEPS,
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.HUNG,
        mesh_bag=True,
        mass=p.pounds("0.2", "0.4"),
    ),
    Kind(
        id=KindId("wristlets"),
        element=Element.COAT,
        layer=Layer.SOFT,
        touch_points=p.touch("thumb_holes"),
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.LAID,
    ),
    Kind(
        id=KindId("name-panel"),
        element=Element.COAT,
        layer=Layer.SOFT,
        touch_points=p.touch("letters"),
        preparation=(p.HOOK_COVERED,),
        usual_wash=WashMethod.HAND,
        usual_dry=p.LAID,
    ),
    Kind(
        id=KindId("mic-strap"),
        element=Element.COAT,
        layer=Layer.STRAP,
        touch_points=p.touch("clips"),
        preparation=p.STRAP_STEPS,
        usual_wash=WashMethod.HAND,
        usual_dry=p.HUNG,
        mesh_bag=True,
    ),
)
