"""Who gets which spare, so that the most ride? Exact, or with a stated bound."""

from sootline.core.riding.matching.demand import Demand, Need, Outcome, Seeker, Stock
from sootline.core.riding.matching.handing import hand_out
from sootline.core.riding.matching.solve import match

__all__ = ["Demand", "Need", "Outcome", "Seeker", "Stock", "hand_out", "match"]
