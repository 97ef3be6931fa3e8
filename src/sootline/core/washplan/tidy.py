"""Which loads could be washed as one?"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from sootline.core.washplan.choice import Choice
from sootline.core.washplan.shop import Shop


def merged(shop: Shop, choice: Choice) -> Iterator[Choice]:
    """Go through all choices with two loads of one family washed as one, in the earlier place."""
    loads = [list(one) for one in choice.loads]
    spots = [(w, k) for w, washer in enumerate(loads) for k in range(len(washer))]
    for (w, k), (v, j) in combinations(spots, 2):
        family, inside = loads[w][k]
        both = (*inside, *loads[v][j][1])
        if loads[v][j][0] == family and shop.fits(w, family, both):
            less = [list(one) for one in choice.loads]
            less[w][k] = family, both
            del less[v][j]
            yield replace(choice, loads=tuple(tuple(one) for one in less))
