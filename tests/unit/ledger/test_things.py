"""What is known of members, calls and loads: the latest word, part by part."""

from tests.unit.tasks.memory_book import MAREN, act, book

from sootline.core.basis import ItemId
from sootline.core.ledger import Entry, EntryKind, ItemKind, item
from sootline.core.ledger.facts import read_facts
from sootline.core.ledger.things import ThingLife, fold_things
from sootline.tasks.correct_entry import correct

WHO = item(ItemKind.MEMBER, MAREN)


def _life(entries: list[Entry], thing: ItemId = WHO) -> ThingLife | None:
    lives = fold_things(read_facts(entries))
    return next((life for life in lives if life.item == thing), None)


def test_topics_have_a_latest_word_each() -> None:
    """A helper trained in two things is trained in both; the last time counts."""
    made = book()
    for at, (topic, on) in enumerate([("care", "2024"), ("lift", "2025"), ("care", "2026")]):
        said = {"topic": topic, "on": on}
        made.ledger.append([act(f"t{at}", minute=at).entry(EntryKind.TRAINED, WHO, said)])

    life = _life(list(made.ledger.entries()))

    assert life is not None
    assert life.facts["trained"] == {
        "care": {"topic": "care", "on": "2026"}, "lift": {"topic": "lift", "on": "2025"},
    }  # fmt: skip


def test_a_note_is_no_fact() -> None:
    """What is noted of somebody stands in the history alone."""
    made = book()
    made.ledger.append([act("n").entry(EntryKind.NOTED, WHO, {"said": "asked for gloves"})])

    life = _life(list(made.ledger.entries()))

    assert life is not None
    assert (life.facts, life.last_seq) == ({"crew": "E2"}, 3)


def test_what_never_happened_is_no_fact() -> None:
    """A withdrawn count leaves the one before; a thing of withdrawn entries alone is not there."""
    made = book()
    soap = item(ItemKind.SUPPLY, "soap")
    made.ledger.append([act("c").entry(EntryKind.SUPPLY_COUNTED, soap, {"stock": "4"})])

    correct(made, act("x"), 3, reason="other shelf", withdrawn=True)

    assert _life(list(made.ledger.entries()), soap) is None
