"""How is a photo or a paper kept so that it is still the one that was handed in?

Photos are written anew: turned the way they were held, and without what a camera adds (place,
time, owner). The hash of what was handed in is kept beside. Papers stay as they are and are only
ever handed out as a download.
"""

import datetime as dt
import io
import os
from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from django.db import IntegrityError, transaction
from PIL import Image, ImageOps, UnidentifiedImageError

from sootline.core.basis import BadInputError, Fault, MessageId
from sootline.storage.models import Attachment

MOST_PIXELS = 40_000_000
MOST_BYTES = 20 * 2**20
PDF = "application/pdf"
_IMAGES = {"JPEG": "image/jpeg", "PNG": "image/png", "WEBP": "image/webp"}
_MODES = {"JPEG": ("L", "RGB"), "PNG": ("L", "RGB", "RGBA"), "WEBP": ("RGB", "RGBA")}
_BROKEN = (OSError, ValueError, SyntaxError, EOFError, MemoryError, Image.DecompressionBombError)


@dataclass(frozen=True, kw_only=True)
class Kept:
    """One attachment as it is kept.

    Args:
        sha256: of the kept bytes; its name.
        original_sha256: of what was handed in.
    """

    sha256: str
    original_sha256: str
    media_type: str
    bytes: int


class AttachmentStore:
    """The folder of attachments, and the table that lists them.

    Args:
        folder: the data directory.
    """

    def __init__(self, *, folder: Path, alias: str = "default") -> None:
        self._folder = folder / "attachments"
        self._alias = alias

    def keep(self, data: bytes, *, now: dt.datetime) -> Kept:
        """Keep a photo or a paper; the same one again is kept once.

        Raises:
            BadInputError: too large, of another kind, or damaged.
        """
        cleaned, media_type = clean(data)
        kept = Kept(
            sha256=sha256(cleaned).hexdigest(),
            original_sha256=sha256(data).hexdigest(),
            media_type=media_type,
            bytes=len(cleaned),
        )
        self.write(kept.sha256, cleaned)
        self._list(kept, now)
        return kept

    def read(self, digest: str) -> tuple[bytes, str]:
        """Return an attachment's bytes and media type.

        Raises:
            Attachment.DoesNotExist: none is listed by that name.
            OSError: its file cannot be read.
        """
        row = Attachment.objects.using(self._alias).get(sha256=digest)
        return self._place(row.sha256).read_bytes(), row.media_type

    def write(self, digest: str, data: bytes) -> None:
        """Write a file under its name, onto the disk before anything cites it."""
        place = self._place(digest)
        if place.exists() and sha256(place.read_bytes()).hexdigest() == digest:
            return
        place.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        beside = place.with_name(f".{place.name}.{os.getpid()}")
        with os.fdopen(os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        beside.replace(place)
        _settle(place.parent)

    def damaged(self) -> Iterator[str]:
        """Name the attachments whose file is missing or is not what was kept."""
        names = Attachment.objects.using(self._alias).order_by("sha256")
        for digest in names.values_list("sha256", flat=True):
            place = self._place(digest)
            if not place.is_file() or sha256(place.read_bytes()).hexdigest() != digest:
                yield digest

    def _place(self, digest: str) -> Path:
        return self._folder / digest[:2] / digest

    def _list(self, kept: Kept, now: dt.datetime) -> None:
        try:
            with transaction.atomic(using=self._alias):
                Attachment.objects.using(self._alias).create(
                    sha256=kept.sha256,
                    original_sha256=kept.original_sha256,
                    media_type=kept.media_type,
                    bytes=kept.bytes,
                    added_at=now,
                )
        except IntegrityError:
            # It is there already; anything else would raise here again.
            Attachment.objects.using(self._alias).get(sha256=kept.sha256)


def digest_of(data: bytes) -> str:
    """Return the name of kept bytes."""
    return sha256(data).hexdigest()


def clean(data: bytes) -> tuple[bytes, str]:
    """Return the bytes to keep and their media type.

    Raises:
        BadInputError: too large, of another kind, or damaged.
    """
    if len(data) > MOST_BYTES:
        raise _refused("store.attachment.large", value=str(len(data)), limit=str(MOST_BYTES))
    if data.startswith(b"%PDF-"):
        return data, PDF
    try:
        with Image.open(io.BytesIO(data), formats=list(_IMAGES)) as picture:
            return _anew(picture)
    except BadInputError:  # a value error too, and said already
        raise
    except UnidentifiedImageError:
        raise _refused("store.attachment.kind", allowed="JPEG, PNG, WebP, PDF") from None
    except _BROKEN as error:
        raise _refused("store.attachment.damaged", what=type(error).__name__) from None


def _anew(picture: Image.Image) -> tuple[bytes, str]:
    form = str(picture.format)
    if picture.width * picture.height > MOST_PIXELS:
        size = f"{picture.width} x {picture.height}"
        raise _refused("store.attachment.pixels", value=size, limit=str(MOST_PIXELS))
    turned = ImageOps.exif_transpose(picture)
    modes = _MODES[form]
    mode = turned.mode if turned.mode in modes else modes[-1]
    bare = Image.new(mode, turned.size)
    bare.paste(turned.convert(mode))
    target = io.BytesIO()
    bare.save(target, format=form, quality=90) if form != "PNG" else bare.save(target, format=form)
    return target.getvalue(), _IMAGES[form]


def _settle(folder: Path) -> None:
    """Put a new name in a folder onto the disk, where the system lets folders be opened."""
    if os.name == "nt":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def _refused(message: str, **values: str) -> BadInputError:
    fault = Fault(place="attachment", message=MessageId(message), values=tuple(values.items()))
    return BadInputError([fault])
