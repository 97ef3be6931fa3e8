"""Which scanned texts are tags."""

import pytest

from sootline.core.basis import ComponentId
from sootline.core.job.tags import LONGEST_TAG, read_tag, tag_of


@pytest.mark.parametrize("text", ["0412", "S-1", "0412/coat-liner", "A.1", "a" * LONGEST_TAG])
def test_a_component_id_is_a_tag(text: str) -> None:
    """Letters and digits in groups, one mark between two."""
    assert read_tag(text) == ComponentId(text)
    assert tag_of(ComponentId(text)) == text


@pytest.mark.parametrize(
    "text",
    [
        "",
        " 0412",
        "0412\n",
        "0412\r\nSet-Cookie: x=1",
        "0412\x00",
        "\u202e0412",
        "SN-１２３",  # digits that only look like ours
        "javascript:alert(1)",
        "data:text/html,<script>alert(1)</script>",
        "https://example.invalid/items/12",
        "//example.invalid/x",
        "/items/12",
        "../../etc/passwd",
        "items/12/../../admin",
        "'; DROP TABLE x;--",
        "<img src=x onerror=alert(1)>",
        "WIFI:S:x;T:WPA;P:y;;",
        "tel:+15550100",
        "S-1&status=retired",
        "=1+1",
        '{"serial":"S-1"}',
        "S--1",
        "S-",
        "A" * (LONGEST_TAG + 1),
        "A" * 5000,
    ],
)
def test_whatever_else_is_scanned_is_no_tag(text: str) -> None:
    """It may be shown as text; nothing is opened or done by it."""
    assert read_tag(text) is None
    assert tag_of(ComponentId(text)) is None
