"""How was a department's list read the last time?"""

from pathlib import Path

from sootline.core.job.codec import decode, encode
from sootline.core.roster import Mapping
from sootline.files.reading import read_text

_MOST_BYTES = 1024 * 1024


def read_mapping(path: Path) -> Mapping:
    """Read a remembered mapping.

    Raises:
        BadInputError: the file cannot be read, or is no mapping; every fault is listed.
    """
    return decode(Mapping, read_text(path, max_bytes=_MOST_BYTES))


def mapping_text(mapping: Mapping) -> str:
    """Return a mapping as the text of its file."""
    return encode(Mapping, mapping) + "\n"
