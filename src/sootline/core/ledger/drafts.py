"""What does somebody want to have recorded?"""

import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from typing import cast

from sootline.core.basis import (
    BadInputError,
    DeviceId,
    Fault,
    ItemId,
    MemberId,
    MessageId,
)
from sootline.core.ledger.canonical import canonical, entered, read_canonical
from sootline.core.ledger.entries import Second
from sootline.core.ledger.forms import FORMS, Payload, check_payload
from sootline.core.ledger.items import parse_item
from sootline.core.ledger.kinds import EntryKind, Established
from sootline.core.ledger.times import Occurred

_LONGEST = 200
# A call of a hundred people is some fifty thousand signs; photographs are kept beside the record.
_LARGEST = 256 * 1024


@dataclass(frozen=True, kw_only=True)
class Draft:
    """An entry before it has its place.

    Args:
        idem: a key of the asker's choosing; the same key with the same words is the same request.
        payload: canonical JSON of an object; `write_payload` makes it.
        form: in which form the payload is written.
        corrects: the entry it corrects, of a correction.
        erases, second: the entry whose payload goes, and the other person, of an erasure.
        after: the last entry about the thing that the asker had seen; None does not say. Entries
            that came between are no error of the record, but the asker should see them first.
    """

    idem: str
    item: ItemId
    kind: EntryKind
    occurred: Occurred
    device: DeviceId
    actor: MemberId
    established: Established
    payload: str
    form: int | None = None
    corrects: int | None = None
    erases: int | None = None
    second: Second | None = None
    after: int | None = None

    def __post_init__(self) -> None:
        for name in ("idem", "item", "device", "actor"):
            # One spelling of an accent: the header is hashed as it stands.
            object.__setattr__(self, name, unicodedata.normalize("NFC", getattr(self, name)))
        faults = [
            _fault(name, "ledger.draft.blank", name=name, limit=str(_LONGEST))
            for name in ("idem", "device", "actor")
            if not 0 < len(str(getattr(self, name)).strip()) <= _LONGEST
        ]
        if len(self.payload) > _LARGEST:
            size = {"size": str(len(self.payload)), "limit": str(_LARGEST)}
            faults.append(_fault("payload", "ledger.draft.large", **size))
        faults += self._mismatches()
        if faults:
            raise BadInputError(faults)
        parse_item(self.item)
        check_payload(self.kind, self.item, read_payload(self.payload))

    def _mismatches(self) -> list[Fault]:
        """Hold corrections and erasures to what they need, and everything else to its form."""
        faults = []
        if (self.kind is EntryKind.CORRECTED) != (self.corrects is not None):
            faults.append(_fault("corrects", "ledger.draft.corrects"))
        erasing = self.kind is EntryKind.ERASED
        if erasing != (self.erases is not None) or erasing != (self.second is not None):
            faults.append(_fault("erases", "ledger.draft.erases"))
        if self.second is not None and self.second.person == self.actor:
            faults.append(_fault("second", "ledger.draft.same_person", person=self.actor))
        if self.form is not None and self.form != FORMS[self.kind]:
            values = {"kind": self.kind.value, "form": str(self.form)}
            faults.append(_fault("form", "ledger.draft.form", **values))
        return faults


def write_payload(document: Mapping[str, object] | None = None, /, **fields: object) -> str:
    """Return a payload's one text, composed (NFC).

    Fields that are None are left out.

    Raises:
        BadInputError: with everything in it that has no canonical form.
    """
    merged = {**(document or {}), **{k: v for k, v in fields.items() if v is not None}}
    return canonical(entered(merged), place="payload")


def read_payload(text: str) -> Payload:
    """Return what a payload says.

    Raises:
        BadInputError: it is not canonical, or no object.
    """
    value = read_canonical(text, place="payload")
    if not isinstance(value, dict):
        raise BadInputError([_fault("payload", "ledger.payload.no_object")])
    return cast("Payload", value)


def _fault(place: str, message: str, **values: str) -> Fault:
    return Fault(place=place, message=MessageId(message), values=tuple(values.items()))
