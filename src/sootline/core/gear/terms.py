"""On what terms may a component be washed and dried, value by value, with every source?

The result of resolving label, maker's guide, adopted edition and department policy:
limits take the strictest of all, prohibitions hold if any source forbids, intervals take the
shortest, for a method the first source that speaks counts.
"""

from dataclasses import dataclass

from sootline.core.basis import Finding, Ground, Limit, Quantity, Standing
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
        set_aside: limits of the adopted edition that a recorded decision of the department
            loosens; shown, not applied.
        decided: who decided that and when, where something is set aside.
        unset: grounds of sources that speak on the topic without a known value.
        as_typed: words of a label without a number ("warm").
    """

    topic: str
    limits: tuple[tuple[Limit, Ground], ...]
    set_aside: tuple[tuple[Limit, Ground], ...] = ()
    decided: Ground | None = None
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
        wanted: what the first source that speaks asked for, before any prohibition.
        ground: who speaks first, or who forbids what that source asked for.
        voices: every source that spoke, in order of precedence.
    """

    wash: WashMethod
    wanted: WashMethod
    ground: Ground
    voices: tuple[Voice, ...] = ()


@dataclass(frozen=True, kw_only=True)
class ResolvedInterval:
    """An interval from every source that states one, shortest first.

    Args:
        months: every stated interval with its ground; the first one counts [months].
        unset: grounds of sources that speak on the topic without a known value.
    """

    topic: str
    months: tuple[tuple[int, Ground], ...] = ()
    unset: tuple[Ground, ...] = ()

    @property
    def shortest(self) -> tuple[int, Ground] | None:
        """The interval that counts and who states it; None when nobody gives a number."""
        return self.months[0] if self.months else None


@dataclass(frozen=True, kw_only=True)
class CareTerms:
    """Everything label, guide, edition and policy together allow for one component.

    Args:
        questions: what must be asked before the terms are complete; nothing is guessed meanwhile.
        notes: what a reader should see about how the sources were weighed.
    """

    limits: tuple[ResolvedLimit, ...]
    bans: tuple[Ban, ...]
    method: ResolvedMethod
    dry: tuple[DryMethod, ...]
    dry_ground: Ground
    barrier_outward: "ResolvedFlag"
    assembled: "ResolvedFlag"
    questions: tuple[Finding, ...] = ()
    notes: tuple[Finding, ...] = ()

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
