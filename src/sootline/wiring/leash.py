"""Does a process end when the one that keeps it at work is gone? It holds the end of a pipe."""

import os
import signal
import sys
import threading


def end_with_parent() -> None:
    """End this process, and what it began, once its parent has ended; a kill is noticed too."""
    threading.Thread(target=_watch, daemon=True).start()


def _watch() -> None:
    # Unbuffered: whoever reads a buffer holds its lock, for which a forked worker would wait.
    while os.read(sys.stdin.fileno(), 1):
        pass
    if sys.platform == "win32":
        os._exit(1)
    else:
        # It leads a group of its own; whatever was acknowledged stands on the disk.
        os.killpg(0, signal.SIGKILL)
