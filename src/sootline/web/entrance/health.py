"""Is the program well? For a monitor, without a word about anybody."""

from django.http import HttpRequest, JsonResponse

from sootline.wiring.signing import worker_is_silent
from sootline.wiring.store import find_faults


def healthz(_request: HttpRequest) -> JsonResponse:
    """Answer 200 while entries can be recorded, 503 with what is amiss otherwise.

    A silent worker is named and no reason to begin the web process anew: the supervisor sees to it.
    """
    amiss = sorted({fault.message for fault in find_faults()})
    silent = worker_is_silent()
    status = "read-only" if amiss else "slow-work-waits" if silent else "ok"
    body = {"status": status, "amiss": amiss, "web": "ok", "worker": "silent" if silent else "ok"}
    return JsonResponse(body, status=503 if amiss else 200)
