"""`python -m sootline.wiring.warming`: compile the kernel now, at install, and keep the code."""

from itertools import count

from sootline.core.basis import ComponentId, MachineId, MemberId
from sootline.core.washplan import Instance, Member, Piece, Programme, Washer
from sootline.core.washplan.helps import Helps
from sootline.core.washplan.search import solve
from sootline.wiring.engines import kept_code, load_compiled


def warm() -> bool:
    """Compile what is not kept yet; False where nothing can compile."""
    folder = kept_code()
    if folder is None:
        return False
    folder.mkdir(parents=True, exist_ok=True)
    asked = count()
    # Any call compiles for every instance: the arrays are always of the same kind.
    solve(_one_piece(), stop=lambda: next(asked) > 50, helps=Helps(engine=load_compiled(folder)))
    (folder / "warm").touch()
    return True


def _one_piece() -> Instance:
    pieces = tuple(
        Piece(
            id=ComponentId(name), member=MemberId("m"), type="", size="", weight=1, family="f",
            max_temp=40, prep=1, inspect=1, units=1, dry_rack=9,
        )
        for name in ("a", "b")
    )  # fmt: skip
    run = Programme(cap=1, min=5, temp=40)
    return Instance(
        name="", members=(Member(id=MemberId("m")),), pieces=pieces,
        washers=(Washer(id=MachineId("w"), programmes={"f": run}),), load_min=1, unload_min=1,
        stations={}, rack_units=1, helpers=((0, 9999, 1),),
    )  # fmt: skip


if __name__ == "__main__":
    warm()
