"""Do these entries of one thing stand in the record an anchor speaks for?"""

from collections.abc import Iterable

from sootline.core.ledger.anchors import Anchor
from sootline.core.ledger.canonical import read_strictly
from sootline.core.ledger.checks import Checks
from sootline.core.ledger.damage import DamageKind, Verification
from sootline.core.ledger.exports import Exported
from sootline.core.ledger.merkle import root_by_inclusion
from sootline.core.ledger.verifying import differing, verification


def verify_item(
    exported: Iterable[Exported], anchor: Anchor, anchors: Iterable[Anchor] = ()
) -> Verification:
    """Check each entry of one thing's export by itself, and its proof against the root.

    Args:
        anchor: the one inside the export; worth as much as whoever keeps the same one elsewhere.
        anchors: those kept elsewhere. One of the same length must be the same; others say
            nothing about this export.
    """
    checks, count = Checks(), 0
    for count, one in enumerate(exported, start=1):  # noqa: B007  # the last one is the number
        _check(checks, one, anchor)
    agreed = []
    for other in anchors:
        if other.n == anchor.n:
            wrong = differing(other, anchor.installation, anchor.hash, anchor.root)
            for kind, said, found in wrong:
                checks.damage(anchor.n, kind, said, found)
            agreed += [] if wrong else [other]
    return verification(checks, count, anchor.hash, anchor.root, agreed)


def _check(checks: Checks, one: Exported, anchor: Anchor) -> None:
    fields = read_strictly(one.entry.header) or {}
    said = fields.get("seq")
    seq = said if type(said) is int else one.entry.seq
    leaf, _ = checks.check_header(one.entry, seq)
    if fields.get("installation") != anchor.installation:
        installation = str(fields.get("installation"))
        checks.damage(seq, DamageKind.INSTALLATION, installation, anchor.installation)
    root = root_by_inclusion(leaf, seq - 1, anchor.n, one.proof)
    if root is None or root.hex() != anchor.root:
        checks.damage(seq, DamageKind.PROOF, anchor.root, "" if root is None else root.hex())
