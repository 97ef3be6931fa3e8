"""On what terms may a component be washed and dried, value by value, with every source?

The result of resolving label, maker's guide, adopted edition and department policy:
limits take the strictest of all, prohibitions hold if any source forbids, intervals take the
shortest, for a method the first source that speaks counts.
"""

from dataclasses import dataclass

from sootline.core.basis import Ground, Limit, Quantity, Standing
from sootline.core.gear.kinds import DryMethod, WashMethod
from sootline.core.gear.labels import Act


@dataclass(frozen=True, kw_only=True)
class Voice:
    """One source speaking on one topic."""

    text: str
    ground: Ground


@dataclass(frozen=True, kw_only=True)
class ResolvedLimit:
    """A topic's limits from every source that states one, strictest first.

    Args:
        limits: every stated limit with its ground; all of them must permit a reading.
        unset: grounds of sources that speak on the topic without a known value.
        as_typed: words of a label without a number ("warm").
    """

    topic: str
    limits: tuple[tuple[Limit, Ground], ...]
    unset: tuple[Ground, ...] = ()
    as_typed: tuple[Voice, ...] = ()

    def stand(self, reading: Quantity | None) -> Standing:
        """Say where a reading stands: beyond if beyond any, within only if every source permits.

        A source that speaks without a known value leaves an otherwise permitted reading unknown
        only when no source gives a number.
        """
        standings = {limit.stand(reading) for limit, _ in self.limits}
        if Standing.BEYOND in standings:
            return Standing.BEYOND
        return Standing.WITHIN if standings == {Standing.WITHIN} else Standing.UNKNOWN

    @property
    def binding(self) -> tuple[Limit, Ground] | None:
        """The strictest limit and who states it; None when nobody gives a number."""
        return self.limits[0] if self.limits else None


@dataclass(frozen=True, kw_only=True)
class Ban:
    """Something some source forbids."""

    act: Act
    ground: Ground


@dataclass(frozen=True, kw_only=True)
class ResolvedMethod:
    """The method of the first source that speaks and is not overruled by a prohibition.

    Args:
        voices: every source that spoke, in order of precedence.
    """

    wash: WashMethod
    ground: Ground
    voices: tuple[Voice, ...] = ()


@dataclass(frozen=True, kw_only=True)
class CareTerms:
    """Everything label, guide, edition and policy together allow for one component."""

    limits: tuple[ResolvedLimit, ...]
    bans: tuple[Ban, ...]
    method: ResolvedMethod
    dry: tuple[DryMethod, ...]
    dry_ground: Ground
    barrier_outward: "ResolvedFlag"
    assembled: "ResolvedFlag"

    def limit(self, topic: str) -> ResolvedLimit:
        """Return the resolved limits of a topic; an unmentioned topic has none."""
        for resolved in self.limits:
            if resolved.topic == topic:
                return resolved
        return ResolvedLimit(topic=topic, limits=())

    def banned(self, act: Act) -> Ban | None:
        """Return the first source that forbids an act."""
        return next((ban for ban in self.bans if ban.act is act), None)


@dataclass(frozen=True, kw_only=True)
class ResolvedFlag:
    """A yes or no of the first source that speaks; None when all are silent."""

    value: bool | None
    ground: Ground | None = None
