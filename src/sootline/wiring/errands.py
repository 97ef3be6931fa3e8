"""Of whom is long work asked: of the worker beside the server, or of a demonstration's thread?"""

from functools import cache

from django.conf import settings

from sootline.storage.errands import ErrandStore
from sootline.tasks.errands import Errands
from sootline.wiring.demo_errands import ThreadErrands
from sootline.wiring.store import now


@cache
def _threads() -> ThreadErrands:
    return ThreadErrands()


def errands() -> Errands:
    """Return where errands of the running app are asked for and followed."""
    return _threads() if settings.DEMO else ErrandStore(now=now)
