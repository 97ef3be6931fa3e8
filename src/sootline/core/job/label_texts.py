"""What do the labels of one style say, typed once for every component that carries them?

An officer reads one label of a style and types it once. While a job is put together, each
component of that style and kind whose own label holds no care text takes it over.
"""

import json
from dataclasses import dataclass
from typing import Any

from sootline.core.basis import KindId
from sootline.core.gear.labels import CareText
from sootline.core.job.codec import decode

FIELD = "label_texts"


@dataclass(frozen=True, kw_only=True)
class LabelText:
    """The care text of one style's labels, for one kind of component."""

    style: str
    kind: KindId
    care: CareText


@dataclass(frozen=True, kw_only=True)
class LabelTexts:
    """A document of care texts by style."""

    label_texts: tuple[LabelText, ...] = ()


def with_label_texts(whole: dict[str, Any]) -> dict[str, Any]:
    """Return a job document with its components' label texts filled in by style.

    A label that could not be read takes nothing over, whatever style somebody wrote down.

    Raises:
        BadInputError: the texts are not what they should be, with every fault.
    """
    rows = whole.get(FIELD, [])
    decode(LabelTexts, json.dumps({FIELD: rows}))
    rest = {name: value for name, value in whole.items() if name != FIELD}
    components = rest.get("components")
    if not rows or not isinstance(components, list):
        return rest
    cares = {(row["style"], row["kind"]): row["care"] for row in rows}
    return rest | {"components": [_filled(component, cares) for component in components]}


def _filled(component: object, cares: dict[tuple[str, str], Any]) -> object:
    """Fill one component's label; anything that is no component is left for the reader to name."""
    if not isinstance(component, dict):
        return component
    label = component.get("label")
    if not isinstance(label, dict) or "care" in label or label.get("readable") is False:
        return component
    key = (str(label.get("style")), str(component.get("kind")))
    return component | {"label": label | {"care": cares[key]}} if key in cares else component
