"""What may a new member be given from the stores on the first day, and what is missing?"""

from dataclasses import dataclass

from sootline.core.basis import ComponentId, MemberId
from sootline.core.job.jobs import Job
from sootline.core.riding import Slot
from sootline.core.upkeep.people.fitting import offer_first_day
from sootline.tasks.list_due import due_gear
from sootline.tasks.ports import Rules
from sootline.tasks.who_can_ride import ride_situation


@dataclass(frozen=True, kw_only=True)
class Proposal:
    """What fills one place of the outfit.

    Args:
        unit: the spare that fits best; None is none that fits for certain.
        pieces: what belongs to it.
        others: further spares that fit.
    """

    slot: Slot
    unit: str | None
    pieces: tuple[ComponentId, ...]
    others: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class FirstDay:
    """The proposals, and the measures without which nothing can be said to fit."""

    proposals: tuple[Proposal, ...]
    not_measured: tuple[str, ...]

    @property
    def missing(self) -> tuple[Slot, ...]:
        """The places that nothing on the rack fills for certain."""
        return tuple(one.slot for one in self.proposals if one.unit is None)


def first_day(rules: Rules, job: Job, member: MemberId) -> FirstDay:
    """Propose an outfit from what is on the rack; places the member has filled are left out.

    Raises:
        BadInputError: the job names an edition, a kind, a member or a piece that does not exist.
        StopIteration: there is no such member.
    """
    dues = tuple(item.due for item in due_gear(rules, job).items)
    situation = ride_situation(rules, job, dues)
    rider = next(one for one in situation.riders if one.id == member)
    units = {one.id: one for one in situation.units}
    filled = {one.slot for one in situation.units if one.holder == member}
    measured = {name for name, _ in rider.measures}
    wanted = dict.fromkeys(rule.dimension for rule in situation.fit)
    return FirstDay(
        proposals=tuple(
            Proposal(
                slot=offer.slot,
                unit=offer.unit,
                pieces=units[offer.unit].components if offer.unit else (),
                others=offer.others,
            )
            for offer in offer_first_day(rider, situation)
            if offer.slot not in filled
        ),
        not_measured=tuple(one for one in wanted if one not in measured),
    )
