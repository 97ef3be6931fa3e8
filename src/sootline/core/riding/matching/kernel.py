"""What is really contested? Whatever everybody can have is taken out first.

A stock with at least as many pieces as people who could use it never binds, so a need it meets is
met. Taking such needs out leaves fewer people on the other stocks, so it is repeated until nothing
changes. What remains falls apart into groups that share no contested stock and no crew.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from sootline.core.riding.matching.demand import Demand, Need, Seeker
from sootline.core.riding.matching.scale import Scale


@dataclass(frozen=True, kw_only=True)
class Mode:
    """One way for a person to ride: from a moment on, wanting one of each of these.

    Args:
        worth: what it adds to the aims, as one number.
        wants: per contested need, the stocks of which one piece is taken.
    """

    level: int
    worth: int
    wants: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, kw_only=True)
class Group:
    """People who compete with one another and with nobody else.

    Args:
        people: indices into the demand's seekers.
        modes: per person, best first; the last alternative, not to ride, is not listed.
        crews: per person, the crew whose minimum is still open; None otherwise.
        short: per open crew, how many of the group must ride now to bring it to strength.
    """

    people: tuple[int, ...]
    modes: tuple[tuple[Mode, ...], ...]
    crews: tuple[int | None, ...]
    short: dict[int, int]


@dataclass(frozen=True, kw_only=True)
class Kernel:
    """What is settled without a choice, and the groups that remain.

    Args:
        settled: per seeker, the mode that is free for the taking; None where there is none.
        met: how many crews reach their minimum without any choice.
    """

    settled: tuple[Mode | None, ...]
    met: int
    groups: tuple[Group, ...]


def reduce_demand(demand: Demand, scale: Scale) -> Kernel:
    """Settle what is not contested and split the rest into independent groups."""
    free = _free_stocks(demand)
    modes = [_modes(seeker, demand, free, scale) for seeker in demand.seekers]
    settled = tuple(ways[0] if ways and not ways[0].wants else None for ways in modes)
    open_people = [i for i, ways in enumerate(modes) if ways and settled[i] is None]
    short = _short(demand, settled)
    met = sum(1 for crew, lack in short.items() if lack <= 0)
    _drop_hopeless(short, demand, open_people, modes)
    groups = tuple(
        Group(
            people=tuple(people),
            modes=tuple(modes[i] for i in people),
            crews=tuple(
                crew if (crew := demand.seekers[i].crew) in short else None for i in people
            ),
            short={
                c: n for c, n in short.items() if any(demand.seekers[i].crew == c for i in people)
            },
        )
        for people in _split(demand, open_people, modes, short)
    )
    return Kernel(settled=settled, met=met, groups=groups)


def _useful(need: Need, demand: Demand) -> tuple[int, ...]:
    """List the stocks that come before the person's own gear does."""
    return tuple(
        stock
        for stock in need.stocks
        if demand.stocks[stock].count > 0
        and (need.own is None or demand.stocks[stock].level < need.own)
    )


def _free_stocks(demand: Demand) -> frozenset[int]:
    """List the stocks that never run out, by taking out met needs until nothing changes."""
    wanted = [
        options
        for seeker in demand.seekers
        if all(need.own is not None or _useful(need, demand) for need in seeker.needs)
        for need in seeker.needs
        if (options := _useful(need, demand))
    ]
    # A need is only gone when a free stock is there before every other option it has.
    free: set[int] = set()
    while True:
        asked: dict[int, int] = {}
        for options in wanted:
            for stock in options:
                asked[stock] = asked.get(stock, 0) + 1
        new = {s for s, people in asked.items() if people <= demand.stocks[s].count} - free
        if not new:
            return frozenset(free)
        free |= new
        wanted = [_still_asked(options, free, demand) for options in wanted]


def _still_asked(options: tuple[int, ...], free: set[int], demand: Demand) -> tuple[int, ...]:
    """List the options still worth asking for: those that come before a free one."""
    first = min((demand.stocks[s].level for s in options if s in free), default=demand.levels)
    return tuple(s for s in options if s in free or demand.stocks[s].level < first)


def _modes(seeker: Seeker, demand: Demand, free: frozenset[int], scale: Scale) -> tuple[Mode, ...]:
    """List the ways a person may ride, each earlier one dearer than the next."""
    ways: list[Mode] = []
    for level in range(demand.levels):
        mode = _mode(seeker, demand, free, scale, level)
        if mode and (not ways or mode.wants != ways[-1].wants):
            ways.append(mode)
        if mode and not mode.wants:
            break
    return tuple(ways)


def _mode(
    seeker: Seeker, demand: Demand, free: frozenset[int], scale: Scale, level: int
) -> Mode | None:
    """Say what riding from a level on would take; None when it cannot be."""
    wants, spares = [], 0
    for need in seeker.needs:
        if need.own is not None and need.own <= level:
            continue
        options = tuple(s for s in _useful(need, demand) if demand.stocks[s].level <= level)
        if not options:
            return None
        spares += 1
        if free.isdisjoint(options):
            wants.append(options)
    return Mode(level=level, worth=scale.worth(seeker, level, spares), wants=tuple(wants))


def _short(demand: Demand, settled: Sequence[Mode | None]) -> dict[int, int]:
    """Say per crew how many more must ride now, after those who ride anyway."""
    short = dict(enumerate(demand.minimums))
    for seeker, mode in zip(demand.seekers, settled, strict=True):
        if mode and mode.level == 0 and seeker.crew is not None:
            short[seeker.crew] -= 1
    return short


def _drop_hopeless(
    short: dict[int, int],
    demand: Demand,
    people: Iterable[int],
    modes: Sequence[tuple[Mode, ...]],
) -> None:
    """Leave only the crews whose minimum depends on a choice."""
    hopeful: dict[int, int] = {}
    for i in people:
        crew = demand.seekers[i].crew
        if crew is not None and modes[i][0].level == 0:
            hopeful[crew] = hopeful.get(crew, 0) + 1
    for crew in [c for c, lack in short.items() if lack <= 0 or hopeful.get(c, 0) < lack]:
        del short[crew]


def _split(
    demand: Demand,
    people: Sequence[int],
    modes: Sequence[tuple[Mode, ...]],
    short: dict[int, int],
) -> list[list[int]]:
    """Group the people who are linked by a contested stock or an open crew."""
    leader: dict[tuple[str, int], tuple[str, int]] = {}

    def find(node: tuple[str, int]) -> tuple[str, int]:
        while leader.setdefault(node, node) != node:
            leader[node] = node = leader[leader[node]]
        return node

    for i in people:
        links = [("stock", s) for mode in modes[i] for want in mode.wants for s in want]
        crew = demand.seekers[i].crew
        if crew in short:
            links.append(("crew", crew))
        for link in links:
            leader[find(link)] = find(("person", i))
    groups: dict[tuple[str, int], list[int]] = {}
    for i in people:
        groups.setdefault(find(("person", i)), []).append(i)
    return list(groups.values())
