"""One batch machine with incompatible families: members with one piece each, nothing but washing.

The construction follows the literature's: jobs of a family share their processing time, weights and
sizes are free, a batch holds one family up to a size. The numbers are drawn here.
"""

from itertools import combinations

from sootline.core.basis import MachineId, MemberId
from sootline.core.washplan import Instance, Member, Programme, Washer
from tests.instances.chance import seeded
from tests.instances.small import piece, small

CAP = 12
FAMILIES = ("S", "L", "T")


def batch_machine(jobs: int, *, seed: int, most_size: int) -> Instance:
    """Draw jobs with weights 1 to 10, sizes from 1, processing times 20 to 90."""
    chance = seeded(seed)
    people = tuple(
        Member(id=MemberId(f"m{j:03}"), priority=chance.randrange(1, 11)) for j in range(jobs)
    )
    return small(
        members=people,
        pieces=tuple(
            piece(
                f"p{person.id}", member=person.id, family=chance.choice(FAMILIES),
                weight=chance.randrange(1, most_size + 1), prep=0, inspect=0, units=0, dry_rack=0,
                dry_cab=None,
            )
            for person in people
        ),
        washers=(
            Washer(
                id=MachineId("w"),
                programmes={
                    family: Programme(cap=CAP, min=chance.randrange(20, 91), temp=40)
                    for family in FAMILIES
                },
            ),
        ),
        load_min=0,
        unload_min=0,
    )  # fmt: skip


def best_of_unit_sizes(instance: Instance) -> int:
    """Fill batches by falling weight within a family, then order them by weight over time."""
    waiting: dict[str, list[int]] = {}
    priority = {member.id: member.priority for member in instance.members}
    for one in instance.pieces:
        waiting.setdefault(one.family, []).append(priority[one.member])
    batches = []
    for family, weights in waiting.items():
        falling = sorted(weights, reverse=True)
        minutes = instance.washers[0].programmes[family].min
        batches += [(sum(falling[k : k + CAP]), minutes) for k in range(0, len(falling), CAP)]
    total = clock = 0
    for weight, minutes in sorted(batches, key=lambda batch: batch[1] / batch[0]):
        clock += minutes
        total += weight * clock
    return total


def best_by_subsets(instance: Instance) -> int:
    """Try every sequence of batches that nothing more fits into, set by set of what is left.

    A batch costs its minutes times the weight of all that waits for it, so what is left is all
    that the rest depends on.
    """
    priority = {member.id: member.priority for member in instance.members}
    jobs = [(one.family, one.weight, priority[one.member]) for one in instance.pieces]
    run = instance.washers[0].programmes
    least = {0: 0}

    def cost(left: int) -> int:
        if left not in least:
            inside = [j for j in range(len(jobs)) if left >> j & 1]
            waiting = sum(jobs[j][2] for j in inside)
            least[left] = min(
                run[family].min * waiting + cost(left & ~batch)
                for family in {jobs[j][0] for j in inside}
                for batch in _full([j for j in inside if jobs[j][0] == family], jobs)
            )
        return least[left]

    return cost((1 << len(jobs)) - 1)


def _full(mine: list[int], jobs: list[tuple[str, int, int]]) -> list[int]:
    """List the batches of one family that nothing left over would fit into."""
    found = []
    for count in range(1, len(mine) + 1):
        for batch in combinations(mine, count):
            room = CAP - sum(jobs[j][1] for j in batch)
            rest = [jobs[j][1] for j in mine if j not in batch]
            if room >= 0 and all(size > room for size in rest):
                found.append(sum(1 << j for j in batch))
    return found
