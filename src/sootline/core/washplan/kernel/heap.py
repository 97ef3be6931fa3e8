"""Which key is the least? A heap in a stretch of a longer array."""

from sootline.core.washplan.kernel.arrays import Ints


def push(heap: Ints, base: int, size: int, key: int) -> int:
    """Add a key to the `size` ones from `base` on; return the new size."""
    at = size
    while at > 0:
        up = (at - 1) >> 1
        if heap[base + up] <= key:
            break
        heap[base + at] = heap[base + up]
        at = up
    heap[base + at] = key
    return size + 1


def drop(heap: Ints, base: int, size: int) -> int:
    """Take the least key away; return the new size."""
    size -= 1
    key = heap[base + size]
    at = 0
    while True:
        low = 2 * at + 1
        if low >= size:
            break
        if low + 1 < size and heap[base + low + 1] < heap[base + low]:
            low += 1
        if heap[base + low] >= key:
            break
        heap[base + at] = heap[base + low]
        at = low
    heap[base + at] = key
    return size
