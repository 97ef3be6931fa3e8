"""`python -m sootline.wiring.server`: the process that answers browsers."""

import argparse
from pathlib import Path

from granian.constants import Interfaces
from granian.log import LogLevels
from granian.server import Server

from sootline.wiring.leash import end_with_parent

_GRACE_S = 5


def serve(
    *, host: str, port: int, certificate: Path | None, key: Path | None, workers: int
) -> None:
    """Serve the app until the process is told to stop; a worker that dies is started anew.

    Args:
        workers: processes; on one machine a second helps only while a first is busy.
    """
    Server(
        "sootline.project.wsgi:application",
        address=host,
        port=port,
        interface=Interfaces.WSGI,
        workers=workers,
        blocking_threads=1,
        respawn_failed_workers=True,
        workers_kill_timeout=_GRACE_S,
        log_level=LogLevels.warning,
        ssl_cert=certificate,
        ssl_key=key,
    ).serve()


def words_of(
    *, host: str, port: int, certificate: Path | None, key: Path | None, workers: int
) -> tuple[str, ...]:
    """Return the words after which `main` serves so."""
    tls = ("--certificate", str(certificate), "--key", str(key)) if certificate and key else ()
    return ("--host", host, "--port", str(port), "--workers", str(workers), *tls)


def main() -> None:
    """Serve as the words of the command say."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--host", required=True)
    parser.add_argument("--port", type=int, required=True)
    parser.add_argument("--workers", type=int, default=1)
    parser.add_argument("--certificate", type=Path)
    parser.add_argument("--key", type=Path)
    options = vars(parser.parse_args())
    end_with_parent()
    serve(**options)


if __name__ == "__main__":
    main()
