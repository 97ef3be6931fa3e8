"""Where on this machine does the record live, and what secret does it go with?"""

import os
import secrets
import sys
from collections.abc import Mapping
from pathlib import Path

_KEY_FILE = "secret-key"
_OWNER_ONLY = 0o600


def data_dir(environment: Mapping[str, str] = os.environ, *, platform: str = sys.platform) -> Path:
    """Return the data directory: SOOTLINE_DATA, else the usual place of the platform."""
    named = environment.get("SOOTLINE_DATA")
    if named:
        return Path(named).expanduser().absolute()
    home = Path.home()
    if platform == "win32":
        return Path(environment.get("LOCALAPPDATA") or home / "AppData" / "Local") / "Sootline"
    if platform == "darwin":
        return home / "Library" / "Application Support" / "Sootline"
    return Path(environment.get("XDG_DATA_HOME") or home / ".local" / "share") / "sootline"


def make_data_dir(folder: Path) -> Path:
    """Return the data directory, made for its owner alone if it was not there.

    Raises:
        OSError: it cannot be made.
    """
    folder.mkdir(parents=True, exist_ok=True, mode=0o700)
    return folder


def secret_key(folder: Path) -> str:
    """Return the installation's secret, made at the first start and readable by its owner alone.

    Raises:
        OSError: it can be neither read nor made.
    """
    place = make_data_dir(folder) / _KEY_FILE
    if not place.exists():
        fresh = place.with_name(f".{_KEY_FILE}.{os.getpid()}")
        with os.fdopen(os.open(fresh, os.O_WRONLY | os.O_CREAT | os.O_EXCL, _OWNER_ONLY), "w") as f:
            f.write(secrets.token_urlsafe(64))
            f.flush()
            os.fsync(f.fileno())
        _settle(fresh, place)
    return place.read_text(encoding="ascii").strip()


def _settle(fresh: Path, place: Path) -> None:
    """Give the file its name unless another process was first; one secret stays."""
    try:
        os.link(fresh, place)
    except FileExistsError:
        pass
    except OSError:  # a file system without links
        if not place.exists():
            fresh.replace(place)
            return
    finally:
        fresh.unlink(missing_ok=True)
