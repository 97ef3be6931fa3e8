"""What does the serving process do by itself, day by day?"""

import logging
import threading

from django.db import DatabaseError, connections

from sootline.core.basis import SootlineError
from sootline.storage.ledger import LedgerStore

_LOG = logging.getLogger(__name__)
_LOOK_S = 3600.0


def begin_daily(store: LedgerStore, *, every_s: float = _LOOK_S) -> threading.Event:
    """Keep today's anchor, and the next days' beside whatever the process does.

    Args:
        every_s: how often to look whether another day has begun [s].

    Returns:
        What ends it.
    """
    stop = threading.Event()
    _keep(store)
    threading.Thread(target=_daily, args=(store, stop, every_s), daemon=True).start()
    return stop


def _daily(store: LedgerStore, stop: threading.Event, every_s: float) -> None:
    while not stop.wait(every_s):
        _keep(store)


def _keep(store: LedgerStore) -> None:
    """Add the day's anchor to the file; serving goes on whatever is amiss, and the log says so."""
    try:
        store.keep_anchor(once_a_day=True)
    except (DatabaseError, OSError, SootlineError) as error:
        _LOG.error("no anchor could be kept: %s", type(error).__name__)
    finally:
        connections.close_all()
