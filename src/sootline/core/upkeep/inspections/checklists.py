"""What is looked at on a component of a kind, point by point?

Routine points: published inspection sheets (2008), in our own words; gloves and footwear partly
from memory. Points the advanced inspection adds: an equipment maker's table (undated), in our own
words. Points of the complete liner inspection, drag device, straps: common practice, no published
source.
"""

from sootline.core.basis import KindId, MessageId
from sootline.core.gear import Layer, find_kind
from sootline.core.upkeep.inspections.facts import InspectionKind

_BASE = ("soil", "contamination", "tears", "heat")
_ROUTINE: dict[Layer, tuple[str, ...]] = {
    Layer.SHELL: (*_BASE, "hardware", "seams", "trim", "assembly"),
    Layer.LINER: (*_BASE, "seams", "assembly"),
    Layer.SOFT: (*_BASE, "opening", "seams"),
    Layer.STRAP: ("soil", "strap_cuts", "stitching", "strap_seated"),
    Layer.PAD: (*_BASE, "foam"),
    Layer.PADDING: ("soil", "suspension", "retention", "foam"),
    Layer.GLOVE: (*_BASE, "glove_lining", "glove_stiff"),
    Layer.BOOT: (*_BASE, "boot_exposed", "boot_closure", "boot_water"),
    Layer.HARD: ("soil", "contamination", "cracks", "shell_heat", "scratches", "trim"),
    Layer.KIT: ("soil", "strap_cuts", "stitching", "kit_text"),
    Layer.MASK: (),
    Layer.OTHER_WEAR: (*_BASE, "seams"),
}
_ADVANCED: dict[Layer, tuple[str, ...]] = {
    Layer.SHELL: (
        "weathered",
        "trim_shines",
        "label",
        "hook_and_loop",
        "closures",
        "liner_attachment",
        "overlap",
    ),
    Layer.LINER: ("weathered", "label", "liner_attachment", "wristlets", "liner_shift"),
    Layer.SOFT: ("weathered", "label"),
    Layer.STRAP: ("label",),
    Layer.GLOVE: ("label",),
    Layer.BOOT: ("label", "sole"),
    Layer.HARD: ("label",),
}
_LINER = ("opened", "inner_faces", "quilting", "barrier_film", "seam_tape", "label", "reclosed")


def list_points(kind: KindId, inspection: InspectionKind) -> tuple[MessageId, ...]:
    """List the points of one inspection of a component of a kind, in the order of looking.

    The complete liner inspection is of liners only; the list of any other kind is empty. A mask is
    looked after elsewhere.

    Raises:
        BadInputError: the kind is unknown.
    """
    layer = find_kind(kind).layer
    points: tuple[str, ...]
    if inspection is InspectionKind.LINER:
        points = _LINER if layer is Layer.LINER else ()
    else:
        more = _ADVANCED.get(layer, ()) if inspection is InspectionKind.ADVANCED else ()
        points = (*_ROUTINE[layer], *more)
    return tuple(MessageId(f"inspection.point.{point}") for point in points)
