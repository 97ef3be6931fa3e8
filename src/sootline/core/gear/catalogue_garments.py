"""What is true of trousers, coveralls and other wear, and of what comes off and out of them?

Common practice, no published source; masses are from memory.
"""

from sootline.core.basis import KindId
from sootline.core.gear import catalogue_parts as p
from sootline.core.gear.kinds import DryMethod, Element, Kind, Layer, WashMethod

_TROUSERS = (
    Kind(
        id=KindId("trouser-shell"),
        element=Element.TROUSERS,
        layer=Layer.SHELL,
        separable=p.parts("trouser-liner", "suspenders", "knee-pads", "escape-belt", "escape-kit"),
        governs_set=True,
        touch_points=p.touch("leg_cuffs", "knees", "crotch", "pocket_corners", "under_trim"),
        preparation=(
            p.POCKETS,
            p.ESCAPE_KIT_OUT,
            p.LINER_OUT,
            p.LINER_STAYS,
            p.SUSPENDERS_OFF,
            p.KNEE_PADS_OUT,
            *p.SHELL_LAST,
        ),
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.AIR_DRIED,
        mass=p.pounds("3", "4"),
    ),
    Kind(
        id=KindId("trouser-liner"),
        element=Element.TROUSERS,
        layer=Layer.LINER,
        governs_set=True,
        touch_points=p.touch("leg_cuffs", "knees", "crotch", "between_layers", "liner_seams"),
        preparation=p.LINER_STEPS,
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.AIR_DRIED,
        mass=p.pounds("2", "3"),
    ),
    Kind(
        id=KindId("suspenders"),
        element=Element.TROUSERS,
        layer=Layer.STRAP,
        touch_points=p.touch("webbing", "clips", "stitching"),
        preparation=p.STRAP_STEPS,
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.HUNG,
        mesh_bag=True,
        mass=p.pounds("0.5", "0.8"),
    ),
    Kind(
        id=KindId("knee-pads"),
        element=Element.TROUSERS,
        layer=Layer.PAD,
        materials=("fabric", "foam"),
        touch_points=p.touch("foam"),
        usual_wash=WashMethod.HAND,
        usual_dry=p.LAID,
        mass=p.pounds("0.4", "0.8"),
    ),
)

_COVERALL = (
    Kind(
        id=KindId("coverall-shell"),
        element=Element.COVERALL,
        layer=Layer.SHELL,
        separable=p.parts("coverall-liner", "drag-device", "knee-pads", "name-panel"),
        governs_set=True,
        touch_points=p.touch("cuffs", "collar", "armpits", "knees", "crotch", "under_trim"),
        preparation=(*p.SHELL_FIRST, p.DRAG_DEVICE_OUT, p.KNEE_PADS_OUT, *p.SHELL_LAST),
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.AIR_DRIED,
        mass=p.pounds("5.5", "7.5"),
    ),
    Kind(
        id=KindId("coverall-liner"),
        element=Element.COVERALL,
        layer=Layer.LINER,
        governs_set=True,
        touch_points=p.touch(
            "cuffs", "collar", "armpits", "knees", "crotch", "between_layers", "liner_seams"
        ),
        preparation=p.LINER_STEPS,
        usual_wash=WashMethod.MACHINE,
        usual_dry=p.AIR_DRIED,
        mass=p.pounds("4.5", "5.5"),
    ),
)

_OTHER_WEAR = tuple(
    Kind(
        id=KindId(wear),
        element=Element.OTHER_WEAR,
        layer=Layer.OTHER_WEAR,
        touch_points=p.touch("cuffs", "collar"),
        preparation=(p.POCKETS, p.CLOSURES),
        usual_wash=WashMethod.MACHINE,
        usual_dry=(DryMethod.HANG,),
    )
    for wear in ("station-wear", "wildland-wear", "rescue-wear")
)

GARMENTS = (*_TROUSERS, *_COVERALL, *_OTHER_WEAR)
