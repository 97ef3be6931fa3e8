"""A photo of a finding: how does it come in, and how is it shown?"""

from typing import Protocol

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from sootline.core.basis import BadInputError
from sootline.wiring.photos import keep_photo, read_photo


class TakesPhoto(Protocol):
    """A form that a photo comes with."""

    def refuse_photo(self) -> None:
        """Say that what came as a photo cannot be kept as one."""
        ...


def photo_of(request: HttpRequest, form: TakesPhoto) -> str:
    """Return the name of the photo that came with a finding, kept by now; nothing where none did.

    What cannot be kept stands among the form's faults.
    """
    file = request.FILES.get("photo")
    if file is None:
        return ""
    try:
        return keep_photo(file.read())
    except BadInputError:
        form.refuse_photo()
        return ""


@require_safe
def photo(request: HttpRequest, name: str) -> HttpResponse:
    """Show a photo by its name."""
    found = read_photo(request.user, name)
    if found is None:
        raise Http404
    data, media_type = found
    response = HttpResponse(data, content_type=media_type)
    response.headers["Content-Disposition"] = "inline"
    response.headers["Content-Security-Policy"] = "sandbox; default-src 'none'"
    return response
