"""Which leaf of a long list does somebody look at?"""

from dataclasses import dataclass

_LONGEST = 6


@dataclass(frozen=True, kw_only=True)
class Leaf:
    """One leaf of so many.

    Args:
        number: from 1.
        query: what else the address asks for, before the number.
    """

    number: int
    of: int
    query: str = ""

    @property
    def before(self) -> int | None:
        """The leaf before it; None is the first."""
        return self.number - 1 or None

    @property
    def after(self) -> int | None:
        """The leaf after it; None is the last."""
        return self.number + 1 if self.number < self.of else None


def leaf_asked(text: str, of: int, query: str = "") -> Leaf:
    """Return the leaf an address asks for, or the nearest there is."""
    number = int(text) if text.isdecimal() and len(text) < _LONGEST else 1
    return Leaf(number=min(max(number, 1), max(of, 1)), of=max(of, 1), query=query)
