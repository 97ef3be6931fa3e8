"""Which step of a plan belongs to which piece, and is every piece's chain whole?"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from sootline.core.basis import Fault, MessageId
from sootline.core.washplan.facts import Member, Piece
from sootline.core.washplan.instance import Instance
from sootline.core.washplan.plan import Plan
from sootline.core.washplan.steps import Drying


def fault(place: str, message: str, **values: object) -> Fault:
    """Make a fault of a plan; the message is completed to "verify.…"."""
    named = tuple((name, str(value)) for name, value in values.items())
    return Fault(place=place, message=MessageId(f"verify.{message}"), values=named)


@dataclass(kw_only=True)
class Book:
    """The ends of each piece's steps as the plan lists them, one entry per listing."""

    pieces: dict[str, Piece]
    members: dict[str, Member]
    prep: dict[str, list[int]] = field(default_factory=lambda: defaultdict(list))
    washed: dict[str, list[int]] = field(default_factory=lambda: defaultdict(list))
    dried: dict[str, list[Drying]] = field(default_factory=lambda: defaultdict(list))
    inspected: dict[str, list[int]] = field(default_factory=lambda: defaultdict(list))

    def release(self, piece: str) -> int:
        """Return the minute before which nothing happens to the piece."""
        return self.members[self.pieces[piece].member].release

    def prepared(self, piece: str) -> int:
        """Return when the piece may be washed; preparation of no minutes may go unlisted."""
        return max([self.release(piece), *self.prep.get(piece, [])])

    def wet(self, piece: str) -> int:
        """Return when the piece may start to dry."""
        return max([self.prepared(piece), *self.washed.get(piece, [])])

    def dry(self, piece: str) -> int:
        """Return when the piece may be inspected."""
        return max([self.wet(piece), *(step.end for step in self.dried.get(piece, []))])

    def done(self, piece: str) -> int:
        """Return when the piece is inspected."""
        return max([self.dry(piece), *self.inspected.get(piece, [])])


def open_book(instance: Instance, plan: Plan) -> Book:
    """Sort a plan's steps by piece; the pieces must be known."""
    book = Book(
        pieces={piece.id: piece for piece in instance.pieces},
        members={member.id: member for member in instance.members},
    )
    for task in plan.prep:
        for piece in task.pieces:
            book.prep[piece].append(task.end)
    for load in plan.loads:
        for piece in load.pieces:
            book.washed[piece].append(load.unload_end)
    for hand in plan.hand:
        book.washed[hand.piece].append(hand.end)
    for drying in plan.dry:
        book.dried[drying.piece].append(drying)
    for task in plan.inspect:
        for piece in task.pieces:
            book.inspected[piece].append(task.end)
    return book


def unknown_names(instance: Instance, plan: Plan) -> Iterator[Fault]:
    """Find pieces, washers, stations and places that the instance does not have."""
    pieces: set[str] = {piece.id for piece in instance.pieces}
    places: set[str] = {"rack", *(cabinet.id for cabinet in instance.cabinets)}
    washers: set[str] = {washer.id for washer in instance.washers}
    named: list[tuple[str, Iterable[str], set[str]]] = [
        ("loads", [piece for load in plan.loads for piece in load.pieces], pieces),
        ("loads", [load.washer for load in plan.loads], washers),
        ("prep", [piece for task in plan.prep for piece in task.pieces], pieces),
        ("hand", [step.piece for step in plan.hand], pieces),
        ("hand", [step.station for step in plan.hand], set(instance.stations)),
        ("dry", [step.piece for step in plan.dry], pieces),
        ("dry", [step.where for step in plan.dry], places),
        ("inspect", [piece for task in plan.inspect for piece in task.pieces], pieces),
        ("spares", plan.spares, pieces),
    ]
    for place, values, known in named:
        for value in values:
            if value not in known:
                yield fault(place, "unknown", value=value)


def counts(book: Book) -> Iterator[Fault]:
    """Find steps that a piece lacks or has twice; only steps of no minutes may be missing."""
    for piece in book.pieces.values():
        by_hand_in_no_time = piece.hand_station is not None and piece.hand_min == 0
        for step, listed, least in (
            ("prep", book.prep, 1 if piece.prep else 0),
            ("wash", book.washed, 0 if by_hand_in_no_time else 1),
            ("dry", book.dried, 1),
            ("inspect", book.inspected, 1 if piece.inspect else 0),
        ):
            times = len(listed.get(piece.id, []))
            if not least <= times <= 1:
                yield fault(f"pieces.{piece.id}", f"{step}.once", value=times, limit=1)
