"""Does this process show that it is alive? A thread leaves the signs beside everything else."""

import threading

from django.conf import settings

from sootline.storage.alive import EVERY_S, is_silent, show_life

__all__ = ["begin_signs", "worker_is_silent"]


def begin_signs(process: str) -> None:
    """Leave signs of life from now on."""
    threading.Thread(target=_sign, args=(process,), daemon=True).start()


def worker_is_silent() -> bool:
    """Whether nobody does what takes long; a demonstration has no worker."""
    return not settings.DEMO and is_silent(settings.DATA_DIR, "worker")


def _sign(process: str) -> None:
    pause = threading.Event()
    while True:
        show_life(settings.DATA_DIR, process)
        pause.wait(EVERY_S)
