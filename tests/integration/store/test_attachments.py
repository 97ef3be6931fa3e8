"""Photos are written anew without what a camera adds; papers stay; everything else is refused."""

import io
import struct
import zlib
from collections.abc import Callable

import pytest
from PIL import Image
from tests.integration.store_acts import NOON
from tests.integration.store_databases import Database, Databases

from sootline.core.basis import BadInputError
from sootline.storage.attachments import MOST_BYTES, AttachmentStore, clean
from sootline.storage.models import Attachment


def _bytes(picture: Image.Image, form: str, **options: object) -> bytes:
    target = io.BytesIO()
    picture.save(target, form, **options)
    return target.getvalue()


def _sideways() -> bytes:
    exif = Image.Exif()
    exif[0x0112] = 6  # turned by a quarter
    exif[0x010F] = "Camera of 118"
    return _bytes(Image.new("RGB", (20, 10), "blue"), "JPEG", exif=exif)


def test_a_photo_loses_what_the_camera_added() -> None:
    """It is turned the way it was held, and says nothing of place, time or owner."""
    data, media_type = clean(_sideways())

    picture = Image.open(io.BytesIO(data))
    assert (picture.size, media_type) == ((10, 20), "image/jpeg")
    assert (dict(picture.getexif()), b"118" in data) == ({}, False)


PICTURES = [
    *(("PNG", mode) for mode in ("RGB", "L", "P", "RGBA", "LA", "1")),
    *(("WEBP", mode) for mode in ("RGB", "RGBA")),
    *(("JPEG", mode) for mode in ("RGB", "L", "CMYK")),
]


@pytest.mark.parametrize(("form", "mode"), PICTURES)
def test_kinds_of_pictures(form: str, mode: str) -> None:
    """Each of the three formats is taken in whatever colours it comes."""
    assert clean(_bytes(Image.new(mode, (4, 4)), form))[1] == f"image/{form.lower()}"


def test_a_paper_stays_as_it_is() -> None:
    """A PDF is kept byte for byte."""
    assert clean(b"%PDF-1.7 ...") == (b"%PDF-1.7 ...", "application/pdf")


def _wide_png() -> bytes:
    def part(name: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + name + data + struct.pack(
            ">I", zlib.crc32(name + data)
        )  # fmt: skip

    head = struct.pack(">IIBBBBB", 8000, 6000, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + part(b"IHDR", head) + part(b"IDAT", b"") + part(b"IEND", b"")


BAD: dict[str, Callable[[], bytes]] = {
    "store.attachment.kind": lambda: b"<svg xmlns='http://www.w3.org/2000/svg'/>",
    "store.attachment.large": lambda: b"x" * (MOST_BYTES + 1),
    "store.attachment.pixels": _wide_png,
    "store.attachment.damaged": lambda: _sideways()[:200],
}


@pytest.mark.parametrize("message", BAD)
def test_bad_files_are_refused(message: str) -> None:
    """Another kind, too large, too many pixels (48 million), cut short: each says which."""
    with pytest.raises(BadInputError) as raised:
        clean(BAD[message]())

    assert raised.value.faults[0].message == message


@pytest.mark.parametrize("form", ["EPS", "GIF", "BMP", "TIFF"])
def test_other_picture_formats_are_refused(form: str) -> None:
    """Formats that are not named are not opened, whatever the library could read."""
    with pytest.raises(BadInputError):
        clean(_bytes(Image.new("RGB", (4, 4)), form))


def test_the_same_photo_is_kept_once(database: Database) -> None:
    """Handed in twice it is one file, and comes back as it was kept."""
    store = AttachmentStore(folder=database.folder)

    first, again = (store.keep(_sideways(), now=NOON) for _ in range(2))

    assert (first, Attachment.objects.count()) == (again, 1)
    data, media_type = store.read(first.sha256)
    assert (len(data), media_type) == (first.bytes, "image/jpeg")
    assert first.original_sha256 != first.sha256


def test_a_changed_file_shows(databases: Databases) -> None:
    """A file that was changed, or is gone, is named."""
    database = databases.fresh("sqlite")
    store = AttachmentStore(folder=database.folder)
    kept = store.keep(b"%PDF-1.7 a", now=NOON)
    gone = store.keep(b"%PDF-1.7 b", now=NOON)
    place = database.folder / "attachments"
    (place / kept.sha256[:2] / kept.sha256).write_bytes(b"%PDF-1.7 c")
    (place / gone.sha256[:2] / gone.sha256).unlink()

    assert set(store.damaged()) == {kept.sha256, gone.sha256}
