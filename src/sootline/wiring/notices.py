"""Who reads a recall notice from a file for a command."""

from pathlib import Path

from sootline.core.job.codec import decode
from sootline.core.upkeep.recalls import Notice
from sootline.files.reading import read_text


def read_notice(path: Path) -> Notice:
    """Return the notice a file holds, written as in a job's list of notices.

    Raises:
        BadInputError: the file cannot be read, or is no notice; every fault is listed.
    """
    return decode(Notice, read_text(path))
