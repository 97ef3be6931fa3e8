"""What went wrong, where, against which limit, and what to do next?"""

from collections.abc import Sequence
from dataclasses import dataclass

from sootline.core.basis.ids import MessageId


@dataclass(frozen=True, kw_only=True)
class Fault:
    """One thing wrong with an input.

    Args:
        place: where, as a reader of the file would point at it ("row 4, column made",
            "components[3].label.wash_temp").
        message: what is wrong, as a message id; the sentence and the next step live in words.
        values: what the sentence names, as (name, text) pairs.
    """

    place: str
    message: MessageId
    values: tuple[tuple[str, str], ...] = ()


class SootlineError(Exception):
    """Anything this project raises on purpose."""


class BadInputError(SootlineError, ValueError):
    """An input is refused whole; every fault found is listed, not only the first.

    Args:
        faults: at least one.
    """

    def __init__(self, faults: Sequence[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("; ".join(f"{fault.place}: {fault.message}" for fault in self.faults))


class UnreadableValueError(SootlineError, ValueError):
    """A text is not what it should be (a date, a quantity); the reader names the place.

    Args:
        message: what is wrong, as a message id.
        values: what the sentence names.
    """

    def __init__(self, message: str, **values: str) -> None:
        self.message = MessageId(message)
        self.values = tuple(values.items())
        super().__init__(f"{message} {values}")
