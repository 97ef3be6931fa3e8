"""Which kinds of component are there, and what is true of each?"""

from sootline.core.basis import BadInputError, Fault, KindId, MessageId
from sootline.core.gear.catalogue_coat import COAT
from sootline.core.gear.catalogue_garments import GARMENTS
from sootline.core.gear.catalogue_helmet import HELMET
from sootline.core.gear.catalogue_worn import WORN
from sootline.core.gear.kinds import Kind

KINDS: tuple[Kind, ...] = (*COAT, *GARMENTS, *WORN, *HELMET)
_BY_ID = {kind.id: kind for kind in KINDS}


def find_kind(kind_id: KindId) -> Kind:
    """Return the facts of a kind.

    Raises:
        BadInputError: no such kind; the fault names it and lists the known ones.
    """
    kind = _BY_ID.get(kind_id)
    if kind is None:
        raise BadInputError([unknown_kind("kind", kind_id)])
    return kind


def unknown_kind(place: str, kind_id: str) -> Fault:
    """Build the fault for a kind that is not in the catalogue."""
    known = ", ".join(sorted(_BY_ID))
    return Fault(
        place=place,
        message=MessageId("gear.kind.unknown"),
        values=(("given", kind_id), ("known", known)),
    )
