"""What can be wrong with a kept record, and what is only worth knowing?"""

from dataclasses import dataclass
from enum import StrEnum

from sootline.core.ledger.anchors import Anchor
from sootline.core.ledger.canonical import canonical


class DamageKind(StrEnum):
    """One way in which a record is not what was written."""

    UNREADABLE = "unreadable"
    VERSION = "version"
    INSTALLATION = "installation"
    SEQUENCE = "sequence"
    PREVIOUS = "previous"
    HASH = "hash"
    PAYLOAD = "payload"
    PAYLOAD_MISSING = "payload-missing"
    FOREIGN = "foreign"
    ERASURE = "erasure"
    ANCHOR_SHORT = "anchor-short"
    ANCHOR_HASH = "anchor-hash"
    ANCHOR_ROOT = "anchor-root"
    ANCHOR_INSTALLATION = "anchor-installation"
    PROOF = "proof"


@dataclass(frozen=True, kw_only=True)
class Damage:
    """One damage and the first entry it shows at.

    Args:
        seq: the entry's place; of an anchor, how many entries it speaks for.
        said, found: what the record or the anchor says, and what came out; short texts.
    """

    seq: int
    kind: DamageKind
    said: str = ""
    found: str = ""


@dataclass(frozen=True, kw_only=True)
class ErasedPayload:
    """A payload that two people had erased: shown with every verification, never in silence.

    Args:
        seq: whose payload.
        under: the entry that says so.
        people: the two of them.
    """

    seq: int
    under: int
    people: tuple[str, str]


@dataclass(frozen=True, kw_only=True)
class Verification:
    """What came out of reading a whole record.

    Args:
        entries: how many were read.
        head, root: of the last entry, and over all of them; hexadecimal.
        damages: in the order of their entries, up to a limit.
        more: how many more damages there are than are listed.
        not_carried_out: erasures whose payload is still there: (whose, under which entry).
        anchors: the anchors that agree with the record.
        foreign: entries of other installations among them.
    """

    entries: int
    head: str
    root: str
    damages: tuple[Damage, ...] = ()
    more: int = 0
    erased: tuple[ErasedPayload, ...] = ()
    not_carried_out: tuple[tuple[int, int], ...] = ()
    anchors: tuple[Anchor, ...] = ()
    foreign: int = 0

    @property
    def intact(self) -> bool:
        """Whether nothing is damaged; erased payloads are no damage, but they are told."""
        return not self.damages

    @property
    def first_bad(self) -> int | None:
        """The first entry at which a damage shows."""
        return self.damages[0].seq if self.damages else None


def report(verification: Verification) -> str:
    """Return what came out as one canonical text, which any other verifier can be held against."""
    return canonical(
        {
            "entries": verification.entries,
            "head": verification.head,
            "root": verification.root,
            "first_bad": verification.first_bad,
            "damages": [[damage.seq, damage.kind.value] for damage in verification.damages],
            "more": verification.more,
            "erased": [[one.seq, one.under, *one.people] for one in verification.erased],
            "not_carried_out": [list(pair) for pair in verification.not_carried_out],
            "anchors": [anchor.n for anchor in verification.anchors],
            "foreign": verification.foreign,
        },
        place="report",
    )
