"""Where is a photo kept that somebody took of a finding? In the record's folder, or in memory."""

from collections import OrderedDict

from django.conf import settings
from django.core.exceptions import ObjectDoesNotExist

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.storage.attachments import PDF, clean, digest_of
from sootline.wiring.people import shows_attachment
from sootline.wiring.store import attachments, now

# A demonstration forgets the oldest.
_MOST = 24
_shown: "OrderedDict[str, tuple[bytes, str]]" = OrderedDict()


def keep_photo(data: bytes) -> str:
    """Keep a photo, written anew without what a camera adds; return its name.

    Raises:
        BadInputError: too large, no picture, or damaged.
    """
    if data.startswith(b"%PDF-"):
        fault = Fault(place="photo", message=MessageId("store.attachment.kind"),
                      values=(("allowed", "JPEG, PNG, WebP"),))  # fmt: skip
        raise BadInputError([fault])
    if not settings.DEMO:
        return attachments().keep(data, now=now()).sha256
    cleaned, media_type = clean(data)
    name = digest_of(cleaned)
    _shown[name] = (cleaned, media_type)
    while len(_shown) > _MOST:
        _shown.popitem(last=False)
    return name


def read_photo(user: object, name: str) -> tuple[bytes, str] | None:
    """Return a photo's bytes and media type; None where there is none for this person."""
    if settings.DEMO:
        return _shown.get(name)
    if not shows_attachment(user, name):
        return None
    try:
        data, media_type = attachments().read(name)
    except (ObjectDoesNotExist, OSError):
        return None
    return None if media_type == PDF else (data, media_type)
