"""Records that earlier versions wrote still verify against the anchors of their day.

The files of a version are never written again: a test that had to renew them would prove that
the old records are lost. Each later version that changes a form adds its own.
"""

from pathlib import Path

import pytest

from sootline.core.ledger import verify_chain
from sootline.core.ledger.exports import write_line
from sootline.core.ledger.folding import fold
from sootline.files.ledger_file import LedgerFile, read_anchor_file

GOLDEN = Path(__file__).parents[2] / "golden"
RECORDS = sorted(GOLDEN.glob("ledger-*.jsonl"))
ROOTS = {
    "ledger-0.1-life": "ed35426396ee21997b19186da17bb6a12b17de598c71541fde263a6a4ac382ff",
    "ledger-0.1-night": "44f6af2709fdcb904ca1b827cd20596419018712af3352f8e9b3a47238a05cab",
}


def test_every_kept_record_is_checked() -> None:
    """None is dropped in silence."""
    assert {path.stem for path in RECORDS} == ROOTS.keys()


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: str(path.stem))
def test_an_old_record_verifies_unrehashed(path: Path) -> None:
    """Byte for byte, with the anchor that was taken then."""
    (anchor,) = read_anchor_file(path.with_suffix(".anchor.json"))
    kept = list(LedgerFile(path).entries())
    result = verify_chain((one.entry for one in kept), [anchor])
    assert (result.intact, result.anchors, result.root) == (True, (anchor,), ROOTS[path.stem])
    lines = path.read_text(encoding="utf-8").splitlines()[1:]
    assert [write_line(one) for one in kept] == lines


@pytest.mark.parametrize("path", RECORDS, ids=lambda path: str(path.stem))
def test_an_old_record_can_still_be_folded(path: Path) -> None:
    """Every kind and form it uses is still understood."""
    assert fold(one.entry for one in LedgerFile(path).entries()).pieces
