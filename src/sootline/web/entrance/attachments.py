"""A photo or a paper of the record goes out: never as something a browser would run."""

from django.core.exceptions import ObjectDoesNotExist
from django.http import Http404, HttpRequest, HttpResponse

from sootline.wiring.people import shows_attachment
from sootline.wiring.store import attachments

_ENDINGS = {"image/jpeg": "jpg", "image/png": "png", "image/webp": "webp"}


def attachment(request: HttpRequest, digest: str) -> HttpResponse:
    """Return an attachment by the hash of its bytes; papers only as a download.

    Raises:
        Http404: there is none, or it was attached to what another station has.
    """
    if not shows_attachment(request.user, digest):
        raise Http404
    try:
        data, media_type = attachments().read(digest)
    except (ObjectDoesNotExist, OSError):
        raise Http404 from None
    shown = "inline" if media_type in _ENDINGS else "attachment"
    ending = _ENDINGS.get(media_type, "pdf")
    response = HttpResponse(data, content_type=media_type)
    response.headers["Content-Disposition"] = f'{shown}; filename="{digest[:12]}.{ending}"'
    response.headers["Content-Security-Policy"] = "sandbox; default-src 'none'"
    return response
