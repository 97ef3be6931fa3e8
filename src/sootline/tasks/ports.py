"""What does a task need from outside, whoever answers?"""

from typing import Protocol

from sootline.core.basis import EditionId
from sootline.core.rulebook import ContaminantRule, Edition


class Rules(Protocol):
    """The rule texts there are."""

    def editions(self) -> tuple[EditionId, ...]:
        """List the editions of standards, common practice apart."""
        ...

    def edition(self, edition: EditionId) -> Edition:
        """Return one edition.

        Raises:
            BadInputError: there is no such edition.
        """
        ...

    def practice(self) -> Edition:
        """Return common practice."""
        ...

    def contaminants(self) -> tuple[ContaminantRule, ...]:
        """Return what common practice asks for, contaminant by contaminant."""
        ...
