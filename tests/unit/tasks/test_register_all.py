"""Everything of a file is registered as one act, or nothing."""

import pytest
from tests.unit.tasks.memory_book import act, book, coat

from sootline.core.basis import BadInputError, BagId, ComponentId
from sootline.core.job.things import Bag
from sootline.tasks.register_all import Things, register_all


def test_things_alone_gear_alone_and_both() -> None:
    """Each comes in with an entry of its own."""
    made = book()

    bags = register_all(made, act("a"), Things(bags=(Bag(id=BagId("B7")),)))
    gear = register_all(made, act("b"), Things(components=(coat(ComponentId("0413")),)))
    both = Things(bags=(Bag(id=BagId("B8")),), components=(coat(ComponentId("0414")),))

    assert (len(bags), len(gear), len(register_all(made, act("c"), both))) == (1, 1, 2)


def test_one_that_is_there_already_keeps_all_out() -> None:
    """The file is refused whole."""
    made = book()
    before = made.ledger.head()

    with pytest.raises(BadInputError):
        register_all(made, act("a"), Things(bags=(Bag(id=BagId("B7")),), components=(coat(),)))
    assert made.ledger.head() == before


def test_a_file_with_nothing_is_refused() -> None:
    """It says nothing."""
    with pytest.raises(BadInputError):
        register_all(book(), act("a"), Things())
