"""Which server answers browsers?"""

from pathlib import Path

from granian.constants import Interfaces
from granian.log import LogLevels
from granian.server import Server


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
        log_level=LogLevels.warning,
        ssl_cert=certificate,
        ssl_key=key,
    ).serve()
