"""Is the program well? For a monitor, without a word about anybody."""

from django.http import HttpRequest, JsonResponse

from sootline.wiring.store import find_faults


def healthz(_request: HttpRequest) -> JsonResponse:
    """Answer 200 while entries can be recorded, 503 with what is amiss otherwise."""
    faults = find_faults()
    amiss = sorted({fault.message for fault in faults})
    body = {"status": "read-only" if amiss else "ok", "amiss": amiss}
    return JsonResponse(body, status=503 if amiss else 200)
