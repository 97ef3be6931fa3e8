"""Which choice lies next to this one? Random changes of loads, runs, spares and targets."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import combinations
from random import Random

from sootline.core.washplan.cabinets import legal_runs
from sootline.core.washplan.dispatch import Choice, DrumLoad, Timetable
from sootline.core.washplan.shop import NEVER, Shop, Stage

Loads = list[list[DrumLoad]]


@dataclass(frozen=True, kw_only=True)
class At:
    """Where the search stands: a choice, what it led to, and the chance to draw from."""

    shop: Shop
    choice: Choice
    table: Timetable
    chance: Random


Move = Callable[[At], Choice | None]


def neighbour(at: At) -> Choice | None:
    """Change one thing; None if the drawn change is not possible here."""
    move = at.chance.choice(_MOVES_BOXED if at.shop.cabinets else _MOVES)
    return move(at)


def _with_loads(at: At, loads: Loads) -> Choice:
    """Put the loads back, empty ones dropped, dangerous families last in each washer."""
    if at.shop.late:
        for washer in loads:
            washer.sort(key=lambda load: load[0] in at.shop.late)
    return replace(at.choice, loads=tuple(tuple(load for load in one if load[1]) for one in loads))


def _spots(loads: Loads, family: int | None = None) -> list[tuple[int, int]]:
    return [
        (w, k)
        for w, washer in enumerate(loads)
        for k, load in enumerate(washer)
        if family is None or load[0] == family
    ]


def _hurry(at: At) -> Choice | None:
    """Bring the piece a member waits for into an earlier drum, in place of one with time."""
    shop, choice, table, chance = at.shop, at.choice, at.table, at.chance
    member = chance.randrange(len(table.ready))
    loads = [list(one) for one in choice.loads]
    waits = [
        (w, k, i)
        for w, k in _spots(loads)
        for i in loads[w][k][1]
        if shop.items[i].member == member and table.done[i] >= table.ready[member] - 5
    ]
    if not waits:
        return None
    w, k, item = chance.choice(waits)
    out = {drum.items: drum.unload_end for drum in table.drums}
    now_out = out[loads[w][k][1]]
    earlier = [
        (v, j)
        for v, j in _spots(loads, loads[w][k][0])
        if out[loads[v][j][1]] < now_out and v in shop.items[item].washers
    ]
    if not earlier:
        return None
    return _trade(at, loads, (w, k, item), chance.choice(earlier))


def _trade(
    at: At, loads: Loads, source: tuple[int, int, int], goal: tuple[int, int]
) -> Choice | None:
    """Move an item into a load; what no longer fits there goes back the other way."""
    shop, table = at.shop, at.table
    (w, k, item), (v, j) = source, goal
    family, inside = loads[v][j]
    kept = [*inside, item]
    back: list[int] = []
    slack = sorted(
        inside,
        key=lambda i: table.done[i] - table.ready[shop.items[i].member] + at.chance.random() * 60,
    )
    while not shop.fits(v, family, kept):
        # It ends: the item alone fits, or the load would not have been drawn.
        giving = slack.pop(0)
        kept.remove(giving)
        back.append(giving)
    left = [i for i in loads[w][k][1] if i != item] + back
    if left and not shop.fits(w, family, left):
        return None
    loads[v][j] = family, tuple(kept)
    loads[w][k] = family, tuple(left)
    return _with_loads(at, loads)


def _exchange(at: At) -> Choice | None:
    """Move one item into any other load of its family, or exchange it for what it displaces."""
    shop, choice, chance = at.shop, at.choice, at.chance
    loads = [list(one) for one in choice.loads]
    spots = _spots(loads)
    if not spots:
        return None
    w, k = chance.choice(spots)
    item = chance.choice(loads[w][k][1])
    others = [spot for spot in _spots(loads, loads[w][k][0]) if spot != (w, k)]
    others = [(v, j) for v, j in others if v in shop.items[item].washers]
    if not others:
        return None
    return _trade(at, loads, (w, k, item), chance.choice(others))


def _shift_load(at: At) -> Choice | None:
    """Take one load elsewhere, most often near, sometimes to another washer."""
    shop, choice, chance = at.shop, at.choice, at.chance
    loads = [list(one) for one in choice.loads]
    spots = _spots(loads)
    if not spots:
        return None
    w, k = chance.choice(spots)
    load = loads[w].pop(k)
    v = w if chance.random() < 0.7 else chance.randrange(len(loads))
    if not shop.fits(v, *load):
        return None
    near = max(0, min(len(loads[v]), k + chance.choice((-3, -2, -1, 1, 2, 3))))
    loads[v].insert(near if v == w else chance.randrange(len(loads[v]) + 1), load)
    return _with_loads(at, loads)


def _split(at: At) -> Choice | None:
    """Make two loads of one: by drying minutes, or anywhere."""
    shop, choice, chance = at.shop, at.choice, at.chance
    loads = [list(one) for one in choice.loads]
    spots = [(w, k) for w, k in _spots(loads) if len(loads[w][k][1]) > 1]
    if not spots:
        return None
    w, k = chance.choice(spots)
    family, inside = loads[w][k]
    longest = max(shop.items[i].drying for i in inside)
    later = [i for i in inside if shop.items[i].drying < longest]
    if not later or chance.random() < 0.3:
        later = list(inside[chance.randrange(1, len(inside)) :])
    loads[w][k] = family, tuple(i for i in inside if i not in later)
    loads[w].insert(chance.randrange(k, len(loads[w]) + 1), (family, tuple(later)))
    return _with_loads(at, loads)


def _merge(at: At) -> Choice | None:
    """Wash two loads of one family as one."""
    shop, choice, chance = at.shop, at.choice, at.chance
    loads = [list(one) for one in choice.loads]
    spots = _spots(loads)
    if not spots:
        return None
    w, k = chance.choice(spots)
    family, inside = loads[w][k]
    fitting = [
        (v, j)
        for v, j in _spots(loads, family)
        if (v, j) != (w, k) and shop.fits(v, family, (*inside, *loads[v][j][1]))
    ]
    if not fitting:
        return None
    v, j = chance.choice(fitting)
    loads[v][j] = family, (*loads[v][j][1], *inside)
    loads[w][k] = family, ()
    return _with_loads(at, loads)


def merged(shop: Shop, choice: Choice) -> Iterator[Choice]:
    """Go through all choices with two loads of one family washed as one, in the earlier place."""
    loads = [list(one) for one in choice.loads]
    for (w, k), (v, j) in combinations(_spots(loads), 2):
        family, inside = loads[w][k]
        both = (*inside, *loads[v][j][1])
        if loads[v][j][0] == family and shop.fits(w, family, both):
            less = [list(one) for one in choice.loads]
            less[w][k] = family, both
            del less[v][j]
            yield replace(choice, loads=tuple(tuple(one) for one in less))


def _aim(at: At) -> Choice | None:
    """Aim one member's gear earlier or later."""
    choice, chance = at.choice, at.chance
    member = chance.randrange(len(choice.target))
    target = list(choice.target)
    target[member] += chance.randrange(-120, 121)
    return replace(choice, target=tuple(target))


def _guard(at: At) -> Choice | None:
    """Change whether the last free helper waits for the drum."""
    choice = at.choice
    return replace(choice, reserve=not choice.reserve)


def _lend(at: At) -> Choice | None:
    """Hand a spare to somebody else who can use it."""
    shop, choice, chance = at.shop, at.choice, at.chance
    given = [i for i in sorted(choice.covered) if shop.items[i].pieces[0].id not in shop.given]
    if not given:
        return None
    one = chance.choice(given)
    others = [
        i
        for i, item in enumerate(shop.items)
        if item.kind == shop.items[one].kind and i not in choice.covered and item.stage < Stage.DONE
    ]
    if not others:
        return None
    return replace(choice, covered=choice.covered - {one} | {chance.choice(others)})


def _box(at: At) -> Choice | None:
    """Put an item into a run, into a new run, or take it out onto the rack."""
    shop, choice, chance = at.shop, at.choice, at.chance
    allowed = [
        i
        for i, item in enumerate(shop.items)
        if item.cab < NEVER and item.units and item.stage <= Stage.WET
    ]
    if not allowed:
        return None
    item = chance.choice(allowed)
    runs = [[list(run) for run in one] for one in choice.runs]
    was_in = False
    for one in runs:
        for run in one:
            if item in run:
                run.remove(item)
                was_in = True
    if not was_in or chance.random() < 0.5:
        _put(at, runs, item)
    kept = tuple(tuple(tuple(run) for run in one if run) for one in runs)
    moved = replace(choice, runs=kept)
    return moved if legal_runs(shop, moved) else None


def _put(at: At, runs: list[list[list[int]]], item: int) -> None:
    """Hang an item, and often what is wet with it, in a run of some cabinet."""
    shop, table, chance = at.shop, at.table, at.chance
    c = chance.randrange(len(runs))
    if runs[c] and chance.random() < 0.7:
        chance.choice(runs[c]).append(item)
        return
    inside = {i for one in runs for run in one for i in run}
    units = shop.cabinets[c] - shop.items[item].units
    new, within = [item], chance.choice((15, 60, 150))
    for i, other in enumerate(shop.items):
        alike = other.cab == shop.items[item].cab and i not in inside and i != item
        near = abs(table.dry[i] - table.dry[item]) <= within
        if alike and near and 0 < other.units <= units and other.stage <= Stage.WET:
            units -= other.units
            new.append(i)
    runs[c].insert(chance.randrange(len(runs[c]) + 1), new)


def _reorder_runs(at: At) -> Choice | None:
    """Exchange two runs that follow each other, or open one up onto the rack."""
    shop, choice, chance = at.shop, at.choice, at.chance
    runs = [list(one) for one in choice.runs]
    c = chance.randrange(len(runs))
    if not runs[c]:
        return None
    r = chance.randrange(len(runs[c]))
    if r and chance.random() < 0.6:
        runs[c][r - 1], runs[c][r] = runs[c][r], runs[c][r - 1]
    else:
        del runs[c][r]
    moved = replace(choice, runs=tuple(tuple(one) for one in runs))
    return moved if legal_runs(shop, moved) else None


_MOVES: tuple[Move, ...] = (
    _hurry, _hurry, _hurry, _exchange, _exchange, _shift_load, _shift_load, _split, _merge, _aim,
    _guard, _lend,
)  # fmt: skip
_MOVES_BOXED: tuple[Move, ...] = (*_MOVES, _box, _box, _box, _box, _reorder_runs, _reorder_runs)
