"""How hot is a programme, and how hot may a piece be washed, on the plan's own scale?

Laundry has already held every programme against every text in its own units; this lets the plan's
verifier see it again. Programmes round down and limits up, by less than a tenth of a degree, so
that what laundry admits the verifier admits.
"""

from collections.abc import Iterable
from math import ceil, floor

from sootline.core.basis import Limit, Quantity


def programme_temp(reading: Quantity) -> int:
    """Return a programme's bath temperature [0.1 °C]."""
    return floor(reading.to("°C") * 10)


def hottest(limits: Iterable[Limit]) -> int:
    """Return the hottest bath that all limits allow [0.1 °C]; 0 where none is stated."""
    each = (max(ceil(value.to("°C") * 10) for value in limit.values) for limit in limits)
    return min(each, default=0)
