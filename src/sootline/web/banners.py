"""What must everybody see on every page?"""

import time
from functools import lru_cache

from django.conf import settings
from django.http import HttpRequest

from sootline.core.basis import Fault
from sootline.wiring.store import find_faults

_LOOK_AGAIN_S = 60


def banners(request: HttpRequest) -> dict[str, object]:
    """Return the messages of the banners: plain http, and a store that takes no entries."""
    shown = []
    if settings.PLAIN_HTTP and not request.is_secure():
        shown.append("store.banner.plain_http")
    if not settings.DEMO and _faults(int(time.monotonic() // _LOOK_AGAIN_S)):
        shown.append("store.banner.read_only")
    return {"banners": shown}


@lru_cache(maxsize=1)
def _faults(_minute: int) -> tuple[Fault, ...]:
    return find_faults()
