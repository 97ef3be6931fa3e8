"""How does a text become a code that phones and scanners read, and a code in a photo a text?"""

import io
import re

import segno
import zxingcpp
from PIL import Image, ImageOps

from sootline.core.basis import BadInputError, Fault, MessageId

_CODE_39 = re.compile(r"[0-9A-Z./ $+%-]+", re.ASCII)


def qr_code(text: str) -> str:
    """Return a QR code as SVG: middle error correction, with the quiet zone the standard asks for.

    Raises:
        ValueError: the text is longer than a code holds, or empty.
    """
    target = io.BytesIO()
    code = segno.make_qr(text, error="m", boost_error=False)
    code.save(target, kind="svg", border=4, xmldecl=False, light="#fff")
    return target.getvalue().decode()


def code_39(text: str) -> str | None:
    """Return a Code 39 as SVG, without the line of text; None when it has not every sign.

    Code 39 knows digits, capitals and `- . $ / + %` and the blank.
    """
    if not _CODE_39.fullmatch(text):
        return None
    code = zxingcpp.create_barcode(text, zxingcpp.BarcodeFormat.Code39)
    drawn = code.to_svg(scale=1, add_hrt=False, add_quiet_zones=True)
    return re.sub(r"^<\?xml.*?\?>|<!DOCTYPE.*?>", "", drawn, flags=re.DOTALL).strip()


def modules_of(text: str) -> int:
    """Return how many times its narrowest bar a Code 39 is wide, with start, stop, quiet zones."""
    return 13 * (len(text) + 2) + 19


# What a phone takes, and what is shrunk to before a code is looked for: finer is not read better.
MOST_BYTES = 20 * 2**20
MOST_PIXELS = 60_000_000
_WIDE_ENOUGH = 2400
_PHOTOS = ("JPEG", "PNG", "WEBP")
_BROKEN = (OSError, ValueError, SyntaxError, EOFError, MemoryError, Image.DecompressionBombError)


def read_codes(photo: bytes) -> tuple[str, ...]:
    """Return the texts of the codes in a photo, of the kinds we print; nothing of it is kept.

    Raises:
        BadInputError: it is no photo, is damaged, or is larger than a phone's.
    """
    if len(photo) > MOST_BYTES:
        raise _no_photo()
    try:
        with Image.open(io.BytesIO(photo), formats=_PHOTOS) as picture:
            if picture.width * picture.height > MOST_PIXELS:
                raise _no_photo()
            picture.draft("L", (_WIDE_ENOUGH, _WIDE_ENOUGH))
            grey = ImageOps.exif_transpose(picture).convert("L")
    except BadInputError:  # a value error too, and said already
        raise
    except _BROKEN:
        raise _no_photo() from None
    grey.thumbnail((_WIDE_ENOUGH, _WIDE_ENOUGH))
    kinds = (zxingcpp.BarcodeFormat.QRCode, zxingcpp.BarcodeFormat.Code39)
    found = zxingcpp.read_barcodes(grey, formats=kinds)  # type: ignore[arg-type]  # a tuple is what it asks for
    return tuple(dict.fromkeys(one.text for one in found if one.text))


def _no_photo() -> BadInputError:
    return BadInputError([Fault(place="photo", message=MessageId("find.no_photo"))])
