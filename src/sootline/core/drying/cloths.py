"""How does a piece hang while it dries?"""

from enum import StrEnum

from sootline.core.gear.kinds import Layer


class Cloth(StrEnum):
    """How a piece hangs: a shell or a liner on its own, or a liner left in its shell."""

    SHELL = "shell"
    LINER = "liner"
    ASSEMBLED = "assembled"


_LAYERS = {Layer.SHELL: Cloth.SHELL, Layer.SOFT: Cloth.SHELL, Layer.LINER: Cloth.LINER}


def cloth_of(layer: Layer) -> Cloth | None:
    """Return how a layer hangs on its own; None where no model speaks of it (gloves, boots)."""
    return _LAYERS.get(layer)
