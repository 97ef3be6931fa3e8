"""Which washer runs which programme for which sort, and what stands between two loads?"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from sootline.core.basis import MachineId, Quantity
from sootline.core.laundry.rooms import Programme as RoomProgramme
from sootline.core.laundry.rooms import WashRoom
from sootline.core.laundry.sorts import Setting, Sort
from sootline.core.washplan.durations import Pace
from sootline.core.washplan.facts import Changeover, Programme, Washer
from sootline.core.washplan.handled import Handled
from sootline.core.washplan.temperatures import programme_temp
from sootline.core.washplan.weights import Scale


@dataclass(frozen=True, kw_only=True)
class Chosen:
    """The setting a washer uses for one sort.

    Args:
        limit: the most its load may weigh there.
    """

    sort: str
    washer: MachineId
    programme: str
    limit: Quantity


def choose_settings(sorts: Iterable[Sort], room: WashRoom) -> tuple[Chosen, ...]:
    """Choose for each sort and washer the shortest of its permitted programmes."""
    programmes = _programmes(room)
    chosen: dict[tuple[str, MachineId], Setting] = {}
    for sort in sorts:
        for setting in sorted(
            sort.settings, key=lambda one: programmes[one.washer, one.programme].minutes.late
        ):
            chosen.setdefault((sort.id, setting.washer), setting)
    return tuple(
        Chosen(sort=sort, washer=washer, programme=setting.programme, limit=setting.limit)
        for (sort, washer), setting in chosen.items()
    )


def _programmes(room: WashRoom) -> dict[tuple[MachineId, str], RoomProgramme]:
    return {
        (washer.id, programme.id): programme
        for washer in room.washers
        for programme in washer.programmes
    }


def make_washers(
    chosen: Sequence[Chosen],
    room: WashRoom,
    handled: Sequence[Handled],
    scale: Scale,
    pace: Pace,
) -> Iterator[Washer]:
    """Give every washer that some sort may use its programme per family."""
    programmes = _programmes(room)
    for washer in room.washers:
        runs: dict[str, Programme] = {}
        for one in chosen:
            if one.washer != washer.id:
                continue
            programme = programmes[washer.id, one.programme]
            assert programme.bath_temp is not None  # unknown baths are no setting
            runs[one.sort] = Programme(
                cap=scale.down(one.limit),
                min=max(1, pace.of(programme.minutes)),
                temp=programme_temp(programme.bath_temp),
                max_pieces=_most_pieces(washer.pieces, one.sort, handled),
            )
        if runs:
            yield Washer(id=washer.id, programmes=runs)


def _most_pieces(pieces: int | None, sort: str, handled: Iterable[Handled]) -> int | None:
    """Turn a limit in components into one in neutral pieces, by the largest of them."""
    if pieces is None:
        return None
    return pieces // max(len(one.components) for one in handled if one.sort.id == sort)


def changeovers(sorts: Iterable[Sort], room: WashRoom) -> Iterator[Changeover]:
    """Flush or wipe a drum between sorts that hazards set apart from each other."""
    washed = [sort for sort in sorts if sort.settings]
    if not room.between_min:
        return
    for before in washed:
        for after in washed:
            pair = (before.separation, after.separation)
            if before is not after and (pair[0] != pair[1] or pair[0].alone):
                yield Changeover(before=before.id, after=after.id, minutes=room.between_min)
