"""How does a text become a code that phones and hand scanners read?"""

import io
import re

import segno
import zxingcpp

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
