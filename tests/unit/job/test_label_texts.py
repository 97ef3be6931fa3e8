"""Care texts typed once for a style reach the components that carry its label."""

from typing import Any

import pytest

from sootline.core.basis import BadInputError
from sootline.core.job.label_texts import with_label_texts

WARM = {"wash": "machine", "wash_words": "warm"}
TEXTS = [{"style": "KN1", "kind": "hood", "care": WARM}]


def filled(component: object) -> object:
    """Return one component after the texts were filled in."""
    return with_label_texts({"label_texts": TEXTS, "components": [component]})["components"][0]


def test_a_label_of_the_style_takes_the_text_over() -> None:
    """The hood of style KN1 says "machine, warm"."""
    hood = {"id": "1", "kind": "hood", "label": {"style": "KN1"}}

    assert filled(hood) == hood | {"label": {"style": "KN1", "care": WARM}}


@pytest.mark.parametrize(
    "component",
    [
        pytest.param({"kind": "hood"}, id="no label"),
        pytest.param({"kind": "hood", "label": {"style": "KN2"}}, id="another style"),
        pytest.param({"kind": "gloves", "label": {"style": "KN1"}}, id="another kind"),
        pytest.param({"kind": "hood", "label": {"style": "KN1", "care": {}}}, id="its own text"),
        pytest.param(
            {"kind": "hood", "label": {"style": "KN1", "readable": False}}, id="unreadable"
        ),
        pytest.param("hood", id="no component at all"),
    ],
)
def test_everything_else_stays_as_it_is(component: object) -> None:
    """A text reaches only what carries its label, readable and silent."""
    assert filled(component) == component


@pytest.mark.parametrize(
    "whole", [{}, {"label_texts": TEXTS}, {"label_texts": TEXTS, "components": 5}]
)
def test_without_components_nothing_is_filled(whole: dict[str, Any]) -> None:
    """The texts themselves are no part of a job."""
    assert "label_texts" not in with_label_texts(whole)


def test_bad_texts_are_refused_with_their_place() -> None:
    """A misspelt field of a care text is named."""
    bad = [{"style": "KN1", "kind": "hood", "care": {"wahs": "machine"}}]

    with pytest.raises(BadInputError) as refused:
        with_label_texts({"label_texts": bad, "components": []})

    assert refused.value.faults[0].place == "label_texts[0].care.wahs"
