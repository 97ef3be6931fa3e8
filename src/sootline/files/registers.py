"""What does a register file hold: the members and their gear, as a part of a job?"""

from pathlib import Path

from sootline.core.job.codec import decode, encode
from sootline.files.reading import read_text
from sootline.tasks.import_roster import Register


def read_register(path: Path) -> Register:
    """Read a register.

    Raises:
        BadInputError: the file cannot be read, or is no register; every fault is listed.
    """
    return decode(Register, read_text(path))


def register_text(register: Register) -> str:
    """Return a register as the text of its file."""
    return encode(Register, register) + "\n"
