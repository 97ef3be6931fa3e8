"""When are many batches dry at the earliest, likely, and at the latest?

One answer to a row, the same that `estimate_drying` gives to within the wider of a minute and half
a percent. What that code refuses, and air near freezing, is left to it.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sootline.core.basis import Assumptions, MinuteSpan, UnreadableValueError
from sootline.core.drying.arrays.air import Array
from sootline.core.drying.arrays.chances import tails
from sootline.core.drying.arrays.columns import Columns, Question, columns_of, cut
from sootline.core.drying.arrays.outcomes import Outcomes, outcomes
from sootline.core.drying.estimating import (
    DEFAULT,
    WEIGHED,
    DryingEstimate,
    bound_of,
    estimate_drying,
)
from sootline.core.drying.falling import Moistures

# So many rows at a time stay in the processor's nearest memory.
_ROWS = 1024


@dataclass(frozen=True, kw_only=True)
class EstimateColumns:
    """Answers, one to a row.

    Args:
        earliest, likely, late: [min], whole.
        water_kg: what has to leave.
        rate_kg_h, free_kg_h, highest_kg_h: in the constant period; if the room's air stayed; what
            no load exceeds (infinite in still air).
        start, end, equilibrium: water over bone-dry mass.
        answered: False where the readable code has to be asked.
    """

    earliest: Array
    likely: Array
    late: Array
    water_kg: Array
    rate_kg_h: Array
    free_kg_h: Array
    highest_kg_h: Array
    start: Array
    end: Array
    equilibrium: Array
    answered: NDArray[np.bool_]


def estimate_columns(asked: Columns, assumptions: Assumptions) -> EstimateColumns:
    """Estimate every row."""
    rows = len(asked.dry_kg)
    chunks = [
        _estimate(cut(asked, begin, begin + _ROWS), assumptions) for begin in range(0, rows, _ROWS)
    ]
    names = EstimateColumns.__dataclass_fields__
    return EstimateColumns(
        **{name: np.concatenate([getattr(one, name) for one in chunks]) for name in names}
    )


def estimate_many(
    asked: Sequence[Question], assumptions: Assumptions
) -> tuple[DryingEstimate | UnreadableValueError, ...]:
    """Estimate every question; what is refused comes back as the error that says why."""
    if not asked:
        return ()
    found = estimate_columns(columns_of(asked, assumptions), assumptions)
    return tuple(_answers(asked, found, assumptions))


def _estimate(asked: Columns, assumptions: Assumptions) -> EstimateColumns:
    out = outcomes(asked, assumptions)
    low, high = tails(out.hours[:, :-2], out.least[:, :-2], asked.factor)
    likely = np.maximum(out.hours[:, -2] * asked.factor[:, 1], out.least[:, -2])
    return EstimateColumns(
        earliest=np.maximum(1, np.floor(np.minimum(low, likely) * 60)),
        likely=np.maximum(1, np.rint(likely * 60)),
        late=np.maximum(1, np.ceil(np.maximum(high, likely) * 60)),
        water_kg=_water(out),
        rate_kg_h=out.rate[:, -1],
        free_kg_h=out.free[:, -1],
        highest_kg_h=out.stream[:, -1],
        start=out.start[:, -1],
        end=out.end[:, 0],
        equilibrium=out.equilibrium[:, -1],
        answered=out.answered,
    )


def _water(out: Outcomes) -> Array:
    return np.asarray(out.bone_kg[:, 0] * (out.start[:, -1] - out.end[:, 0]))


def _answers(
    asked: Sequence[Question], found: EstimateColumns, assumptions: Assumptions
) -> Iterator[DryingEstimate | UnreadableValueError]:
    critical = assumptions.band("dry.critical_moisture").likely
    for at, one in enumerate(asked):
        if not found.answered[at]:
            yield _readable(one, assumptions)
            continue
        rate, stream = float(found.rate_kg_h[at]), float(found.highest_kg_h[at])
        yield DryingEstimate(
            minutes=MinuteSpan(
                earliest=int(found.earliest[at]),
                likely=int(found.likely[at]),
                late=int(found.late[at]),
                rests_on=WEIGHED if one.wetness.measured else DEFAULT,
            ),
            water_kg=float(found.water_kg[at]),
            rate_kg_h=rate,
            highest_kg_h=None if math.isinf(stream) else stream,
            bound=bound_of(rate, float(found.free_kg_h[at]), stream),
            moistures=Moistures(
                start=float(found.start[at]),
                critical=critical,
                equilibrium=float(found.equilibrium[at]),
                end=float(found.end[at]),
            ),
        )


def _readable(one: Question, assumptions: Assumptions) -> DryingEstimate | UnreadableValueError:
    try:
        return estimate_drying(one.batch, one.wetness, one.around, one.factor, assumptions)
    except UnreadableValueError as error:
        return error
