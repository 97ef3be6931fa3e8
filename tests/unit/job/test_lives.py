"""A component of a job follows from its register and its history, whatever those hold."""

from tests.unit.tasks.memory_book import COAT, act, book

from sootline.core.basis import ComponentId
from sootline.core.job.lives import component_of, offered_to, station_of
from sootline.core.ledger import EntryKind, component
from sootline.core.ledger.folding import fold
from sootline.core.ledger.lives import PieceLife
from sootline.tasks.correct_entry import correct
from sootline.tasks.recording import Book
from sootline.tasks.transfer_gear import offer


def _piece(made: Book, identity: str) -> PieceLife:
    return fold(made.ledger.entries()).piece(component(identity))


def test_a_register_of_nonsense() -> None:
    """Facts that make no component leave its number and state; the kind is not known."""
    made = book()
    said = {"kind": 7, "owner": ["x"], "station": 3}
    made.ledger.append([act("x").entry(EntryKind.REGISTERED, component("9"), said)])

    found = component_of(_piece(made, "9"))

    assert (found.id, found.kind, found.owner) == (ComponentId("9"), "unknown", None)
    assert station_of(_piece(made, "9")) is None


def test_a_wrong_owner_leaves_the_kind() -> None:
    """What can be read of the kind is kept."""
    made = book()
    said = {"kind": "hood", "owner": 7}
    made.ledger.append([act("x").entry(EntryKind.REGISTERED, component("9"), said)])

    assert component_of(_piece(made, "9")).kind == "hood"


def test_an_offer_taken_back() -> None:
    """An offer that was withdrawn is none."""
    made = book()
    (done,) = offer(made, act("a", minute=1), COAT, to="3", by="200")

    correct(made, act("b", minute=2), done.entry.seq, reason="wrong coat", withdrawn=True)

    assert offered_to(_piece(made, COAT)) is None
