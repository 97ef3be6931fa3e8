"""Which line pictures are there, and what does each say in words?"""

from dataclasses import dataclass

from sootline.core.basis import MessageId
from sootline.paper.engine import PICTURES


@dataclass(frozen=True, kw_only=True)
class Picture:
    """One of our own line pictures, by the name of its file."""

    name: str

    @property
    def drawn(self) -> bool:
        """Whether there is a picture of this name."""
        return (PICTURES / f"{self.name}.svg").is_file()

    @property
    def message(self) -> MessageId:
        """The message that says what it shows."""
        return MessageId(f"paper.picture.{self.name}")


def picture_of(step: MessageId) -> Picture | None:
    """Return the picture of a step of preparation: it has the step's own name."""
    picture = Picture(name=step.rpartition(".")[2])
    return picture if picture.drawn else None
