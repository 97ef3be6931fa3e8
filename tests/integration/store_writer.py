"""Processes that write entries one after another and say so: killed at any moment by tests.

Run as `python -m tests.integration.store_writer`: it loads the program once, then starts a writer
for each line it reads ("NAME FIRST FILE") and prints the writer's process id. A writer puts a line
"KEY PLACE HASH" into its file for each entry it was told of. Keys count up from FIRST, so that the
next one tried is known. Works where processes can be forked.
"""

import os
import signal
import sys


def write(name: str, first: int, file: str) -> None:
    """Write until killed."""
    from tests.integration.store_acts import worn  # noqa: PLC0415

    from sootline.wiring.store import open_store  # noqa: PLC0415

    store, number = open_store(), first
    told = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_APPEND, 0o600)
    while True:
        (done,) = store.append([worn(f"{name}-{number}", f"piece-{number % 7}", actor=name)])
        os.write(told, f"{number} {done.entry.seq} {done.entry.hash}\n".encode())
        number += 1


def main() -> None:
    """Start writers until nobody asks for more."""
    from sootline.wiring.framework import start  # noqa: PLC0415

    start()
    # Loaded before forking, so that writers start at once.
    import tests.integration.store_acts  # noqa: F401, PLC0415

    import sootline.wiring.store  # noqa: F401, PLC0415

    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # whoever dies is gone at once
    for line in sys.stdin:
        name, first, file = line.split()
        child = os.fork()
        if child == 0:
            try:
                write(name, int(first), file)
            finally:
                os._exit(1)
        sys.stdout.write(f"{child}\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main()
