"""Is one entry in a record, and is an older record the beginning of a newer one?

The hash tree of RFC 9162, section 2.1, over the hashes of entries, which are its leaf hashes.
Whoever keeps one root can be shown that an entry is under it, without seeing any other entry.
"""

from collections.abc import Sequence
from hashlib import sha256

EMPTY_ROOT = sha256(b"").digest()


def node(left: bytes, right: bytes) -> bytes:
    """Return the hash over two hashes beside each other."""
    return sha256(b"\x01" + left + right).digest()


class Frontier:
    """The root of a record that is still being read, entry by entry.

    Keeps one hash for each full subtree, so a million entries need some twenty hashes.
    """

    def __init__(self) -> None:
        self.size = 0
        self._full: list[bytes] = []

    def add(self, leaf: bytes) -> None:
        """Take in the hash of the next entry."""
        pairs = self.size
        while pairs & 1:
            leaf = node(self._full.pop(), leaf)
            pairs >>= 1
        self._full.append(leaf)
        self.size += 1

    def root(self) -> bytes:
        """Return the root over what was taken in so far."""
        if not self._full:
            return EMPTY_ROOT
        whole = self._full[-1]
        for left in reversed(self._full[:-1]):
            whole = node(left, whole)
        return whole


class Tree:
    """The tree over a whole record, which gives proofs.

    Args:
        leaves: the hashes of all its entries, in order.
    """

    def __init__(self, leaves: Sequence[bytes]) -> None:
        self.size = len(leaves)
        self._levels = [list(leaves)]
        while len(self._levels[-1]) > 1:
            below = self._levels[-1]
            level = [node(*below[at : at + 2]) for at in range(0, len(below) - 1, 2)]
            # A last one without a neighbour goes up as it is.
            self._levels.append(level + below[len(below) - len(below) % 2 :])

    def root(self) -> bytes:
        """Return the tree's root."""
        return self._levels[-1][0] if self.size else EMPTY_ROOT

    def inclusion(self, at: int) -> tuple[bytes, ...]:
        """Return the hashes that lead from one entry to the root.

        Args:
            at: the entry's place, from 0.

        Raises:
            IndexError: there is no such place.
        """
        if not 0 <= at < self.size:
            raise IndexError(at)
        path = []
        for level in self._levels[:-1]:
            if at ^ 1 < len(level):
                path.append(level[at ^ 1])
            at >>= 1
        return tuple(path)

    def consistency(self, first: int) -> tuple[bytes, ...]:
        """Return the hashes that show the record's first entries to be its beginning.

        Args:
            first: how many entries the older record has, from 1.

        Raises:
            IndexError: the older one is empty, or the longer.
        """
        if not 0 < first <= self.size:
            raise IndexError(first)
        if first == self.size:
            return ()
        at, depth = first - 1, 0
        while at & 1:
            at, depth = at >> 1, depth + 1
        path = [self._levels[depth][at]] if at else []
        for level in self._levels[depth:-1]:
            if at ^ 1 < len(level):
                path.append(level[at ^ 1])
            at >>= 1
        return tuple(path)


def root_by_inclusion(leaf: bytes, at: int, size: int, path: Sequence[bytes]) -> bytes | None:
    """Return the root that an inclusion proof leads to, or None where its length is wrong.

    Source: RFC 9162, section 2.1.3.2.
    """
    if not 0 <= at < size:
        return None
    last, whole = size - 1, leaf
    for step in path:
        if last == 0:
            return None
        if at & 1 or at == last:
            whole = node(step, whole)
            while not at & 1 and at:
                at, last = at >> 1, last >> 1
        else:
            whole = node(whole, step)
        at, last = at >> 1, last >> 1
    return whole if last == 0 else None


def is_beginning(
    first: int, first_root: bytes, size: int, root: bytes, path: Sequence[bytes]
) -> bool:
    """Whether a consistency proof shows an older record to be the beginning of a newer one.

    Source: RFC 9162, section 2.1.4.2.

    Args:
        first, size: how many entries each has.
    """
    if first == size:
        return not path and first_root == root
    if not 0 < first < size or not path:
        return False
    steps = list(path)
    if first & (first - 1) == 0:
        steps.insert(0, first_root)
    at, last = first - 1, size - 1
    while at & 1:
        at, last = at >> 1, last >> 1
    old = new = steps[0]
    for step in steps[1:]:
        if last == 0:
            return False
        if at & 1 or at == last:
            old, new = node(step, old), node(step, new)
            while not at & 1 and at:
                at, last = at >> 1, last >> 1
        else:
            new = node(new, step)
        at, last = at >> 1, last >> 1
    return old == first_root and new == root and last == 0
