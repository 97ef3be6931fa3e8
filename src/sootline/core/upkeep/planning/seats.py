"""Does it need the whole question of who rides, to tell whether a seat stays filled?

Twice it does not. What nobody wears in an answer can be taken without changing it. And where no
chain of spares that fit leads from whoever gives something up to a spare nobody wears, no other
answer fills all the seats of this one: an answer fills as many seats as possible exactly when no
such chain is left. Source: C. Berge, Proc. Nat. Acad. Sci. USA 1957, 43:842 (maximum matchings and
alternating paths).
"""

from collections.abc import Collection, Iterator

from sootline.core.basis import MemberId
from sootline.core.riding import Riding, Situation, Slot, Unit, check_fit, failures
from sootline.core.upkeep.planning.bundles import Bundle


class Seats:
    """One situation, asked many times."""

    def __init__(self, situation: Situation) -> None:
        self._situation = situation
        self._riders = {rider.id: rider for rider in situation.riders}
        self._spares: dict[Slot, list[Unit]] = {}
        for unit in situation.units:
            if unit.holder is None and unit.there_by(0):
                self._spares.setdefault(unit.slot, []).append(unit)
        self._fits: dict[tuple[MemberId, str], bool] = {}

    def may_keep(self, riding: Riding, bundle: Bundle, gone: Collection[str]) -> bool:
        """Whether another answer may fill the seats of this one without a bundle.

        Args:
            riding: the answer in which the bundle is worn.
            gone: units that are taken already.
        """
        worn = {
            one.unit.id: rides.member
            for rides in riding.now.can
            for one in rides.outfit
            if one.slot is bundle.slot
        }
        assert bundle.slot is not None  # what fills no place is worn by nobody
        start = worn[bundle.unit]
        waiting, seen = [start], {start}
        while waiting:
            for unit in self._fitting(waiting.pop(), bundle.slot):
                if unit.id == bundle.unit or unit.id in gone:
                    continue
                wearer = worn.get(unit.id)
                if wearer is None:
                    return True
                if wearer not in seen:
                    seen.add(wearer)
                    waiting.append(wearer)
        return False

    def _fitting(self, member: MemberId, slot: Slot) -> Iterator[Unit]:
        for unit in self._spares.get(slot, ()):
            key = (member, unit.id)
            if key not in self._fits:
                dimensions = check_fit(self._situation, self._riders[member], unit)
                self._fits[key] = not failures(dimensions)
            if self._fits[key]:
                yield unit


def is_worn(riding: Riding, bundle: Bundle) -> bool:
    """Whether anybody rides in a bundle, in an answer."""
    return any(one.unit.id == bundle.unit for rides in riding.now.can for one in rides.outfit)
