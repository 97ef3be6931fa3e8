"""How long does a contractor keep gear? A distribution, with how many pieces it rests on.

What is still out is not left out: it counts as not yet back after the days it has been away.
Source: the product-limit estimate of Kaplan and Meier, J. Am. Stat. Assoc. 1958, 53:457.
"""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from sootline.core.upkeep.contractor.receipts import Arrival, Reconciled

_BACK = (Arrival.RETURNED, Arrival.CONFIRMED)
QUANTILES = (Fraction(1, 2), Fraction(9, 10))


@dataclass(frozen=True, kw_only=True)
class Stay:
    """How long one piece was away, or has been so far [d]."""

    days: int
    back: bool


@dataclass(frozen=True, kw_only=True)
class Turnaround:
    """How long pieces are away.

    Args:
        n: pieces it rests on, those still out among them.
        out: how many of these are still out.
        curve: (days, share of pieces not yet back after them), at each day something came back.
        quantiles: (share of pieces, days within which so many are back); None when so many have
            not come back yet.
    """

    n: int
    out: int
    curve: tuple[tuple[int, float], ...]
    quantiles: tuple[tuple[float, int | None], ...]


def stays_of(
    shipments: Iterable[Reconciled], receipt_days: tuple[dt.date, ...], today: dt.date
) -> tuple[Stay, ...]:
    """List how long each sent piece was away, in whole days.

    Args:
        receipt_days: the day of each receipt, by its place.
    """
    stays = []
    for one in shipments:
        sent = one.manifest.at.date()
        came = {
            piece.component: receipt_days[piece.receipt]
            for piece in one.arrived
            if piece.arrival in _BACK
        }
        stays += [
            Stay(days=max(0, (came.get(name, today) - sent).days), back=name in came)
            for name in (*one.back, *one.missing)
        ]
    return tuple(stays)


def estimate_turnaround(stays: Iterable[Stay]) -> Turnaround:
    """Estimate the distribution of stays."""
    every = tuple(stays)
    share = Fraction(1)
    curve: list[tuple[int, Fraction]] = []
    for days in sorted({one.days for one in every if one.back}):
        at_risk = sum(1 for one in every if one.days >= days)
        ended = sum(1 for one in every if one.back and one.days == days)
        share *= 1 - Fraction(ended, at_risk)
        curve.append((days, share))
    return Turnaround(
        n=len(every),
        out=sum(1 for one in every if not one.back),
        curve=tuple((days, float(left)) for days, left in curve),
        quantiles=tuple(
            (float(wanted), next((days for days, left in curve if left <= 1 - wanted), None))
            for wanted in QUANTILES
        ),
    )
